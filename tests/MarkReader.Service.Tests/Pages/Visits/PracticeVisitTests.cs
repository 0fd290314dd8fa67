using System.Text.Json;
using MarkReader.Service.Tests.Support;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages.Visits;

/// <summary>A whole visit on the pages, from a misaligned machine to within.</summary>
public sealed class PracticeVisitTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_practice_machine_is_brought_to_within_by_doing_what_the_page_asks(bool phone)
    {
        await using PracticePage page = new(site, phone ? await site.PhoneAsync() : await site.DeskAsync());
        await page.BeginAsync(phone ? 6 : 11);
        await page.Visitor.PictureAsync($"visit-begin-{phone}");
        int steps = await page.ToTheEndAsync();

        JsonElement visit = await page.VisitAsync();
        Assert.Equal(steps, visit.GetProperty("events").GetArrayLength());
        Assert.Equal("done", visit.GetProperty("advice").GetProperty("action").Text("kind"));
        Assert.Equal("within", visit.GetProperty("advice").GetProperty("state").GetProperty("machine").Text("verdict"));
        await Expect(page.Page.Locator(".chip.within")).ToHaveCountAsync(4);
        await page.Visitor.PictureAsync($"visit-end-{phone}");
        page.Visitor.ShouldBeQuiet();
    }
}
