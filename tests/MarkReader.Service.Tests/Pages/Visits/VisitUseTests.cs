using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages.Visits;

/// <summary>That the visit pages can be used on narrow and wide screens, by keyboard, by those who cannot see them, without scripts.</summary>
public sealed class VisitUseTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Theory]
    [InlineData(360)]
    [InlineData(768)]
    [InlineData(1280)]
    public async Task Nothing_overflows_and_no_fault_is_found_by_the_accessibility_checker(int width)
    {
        await using PracticePage page = new(site, width == 1280 ? await site.DeskAsync() : await site.PhoneAsync(width, dark: width == 768));
        async Task CheckAsync(string name)
        {
            await page.Page.ShouldFitAsync();
            await page.Page.ShouldBeAccessibleAsync();
            await page.Visitor.PictureAsync($"{name}-{width}");
        }

        await page.Page.GotoAsync("/display");
        await CheckAsync("display");
        await page.Page.GotoAsync("/visits");
        await CheckAsync("visits");
        await page.BeginAsync(6);
        await CheckAsync("visit-first");
        await page.UploadAsync();
        await CheckAsync("visit-pick");
        await page.PressAsync("Use this mark");
        await Expect(page.Page.Locator("#now")).ToContainTextAsync("far station");
        await page.StepAsync();
        await page.Page.EvaluateAsync("() => { for (const folded of document.querySelectorAll('main details')) folded.open = true; }");
        await CheckAsync("visit-turn");
        page.Visitor.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_pulse_is_entered_and_a_screw_turned_by_keyboard_alone()
    {
        await using PracticePage page = new(site, await site.DeskAsync());
        await page.BeginAsync(6);
        for (int pulse = 0; pulse < 2; pulse++)
        {
            int version = await page.VersionAsync();
            await ReachAsync(page.Page, "Fire the practice pulse");
            await page.Page.Keyboard.PressAsync("Enter");
            await Expect(page.Page.GetByRole(AriaRole.Button, new() { Name = "Use this mark" })).ToBeVisibleAsync(new() { Timeout = Patience });
            await ReachAsync(page.Page, "Use this mark");
            await page.Page.Keyboard.PressAsync("Enter");
            await page.GoneOnAsync(version);
            await Expect(page.Page.Locator("#now")).ToBeFocusedAsync();
        }

        int before = await page.VersionAsync();
        await ReachAsync(page.Page, "I have turned it");
        await page.Page.Keyboard.PressAsync("Space");
        await page.GoneOnAsync(before);
        page.Visitor.ShouldBeQuiet();
    }

    [Fact]
    public async Task Without_scripts_a_photo_is_sent_a_mark_chosen_and_a_screw_turned()
    {
        await using Visit visitor = await site.PhoneAsync(scripts: false);
        await using PracticePage page = new(site, visitor);
        await page.BeginAsync(6);
        await page.PressAsync("Fire the practice pulse");
        await page.PressAsync("Use this mark");
        byte[] photo = await site.Client.GetByteArrayAsync($"/api{page.Address}/pulse", TestContext.Current.CancellationToken);
        await page.Page.SetInputFilesAsync("#photo", new FilePayload { Name = "IMG_2.jpg", MimeType = "image/jpeg", Buffer = photo });
        await page.PressAsync("Send the photo");
        await page.PressAsync("Use this mark");
        Assert.Contains("turn screw", await page.NowAsync(), StringComparison.Ordinal);
        await page.PressAsync("I have turned it");
        Assert.Equal(3, (await page.VisitAsync()).GetProperty("events").GetArrayLength());
        visitor.ShouldBeQuiet();
    }

    // Tabs on from where the focus is until the button is reached.
    private static async Task ReachAsync(IPage page, string button)
    {
        for (int step = 0; step < 60; step++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<string>("() => document.activeElement.textContent.trim()") == button)
            {
                Assert.True(await page.EvaluateAsync<bool>("() => document.activeElement.matches(':focus-visible')"));
                return;
            }
        }

        Assert.Fail($"'{button}' is not reached by Tab");
    }
}
