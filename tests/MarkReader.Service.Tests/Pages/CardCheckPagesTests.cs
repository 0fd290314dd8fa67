using System.Text;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>The check of a printed card in a browser.</summary>
public sealed class CardCheckPagesTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task A_card_is_checked_from_the_cameras_page_and_the_result_is_kept()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/cameras");
        await page.SetInputFilesAsync("#file", new FilePayload { Name = "camera.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(CardPhotos.Profile("card phone")) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).TapAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Check a printed card" }).TapAsync();
        await Expect(page.Locator("#camera option:checked")).ToHaveTextAsync("card phone");
        await CheckAsync(visit, "card-check-form");

        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Bent));
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync(new Regex("Not good\\s+Because of this card"), new() { Timeout = Patience });
        await Expect(page.Locator("main")).ToContainTextAsync("Tape the card flat along all four sides");
        await Expect(page.Locator("main")).ToContainTextAsync("Photos do not tell how large a print is");
        await Expect(page.Locator(".task-picture")).ToHaveAttributeAsync("alt", new Regex("The zone of the card.*marks are read wrong by up to 0\\.\\d+ mm"));
        Assert.True(await page.EvaluateAsync<bool>("() => document.querySelector('.verdict').getBoundingClientRect().bottom <= document.querySelector('.task-picture').getBoundingClientRect().top"));
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        await CheckAsync(visit, "card-check");

        await page.GetByRole(AriaRole.Link, new() { Name = "Check a printed card" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new("plate: not good.*card phone", RegexOptions.Singleline) })).ToBeVisibleAsync();
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Without_scripts_a_refusal_keeps_what_was_typed_and_inches_and_commas_are_read_and_shown()
    {
        await using Visit visit = await site.PhoneAsync(scripts: false);
        IPage page = visit.Page;
        await page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-comma", Url = site.Address.ToString() }]);
        await page.GotoAsync("/cameras");
        await page.SetInputFilesAsync("#file", new FilePayload { Name = "camera.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(CardPhotos.Profile("inch phone")) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("inch phone");
        await page.GotoAsync("/cameras/card-checks");
        await page.Locator("#rulerU").FillAsync("1,575");
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("No photo was chosen");
        await Expect(page.Locator("#rulerU")).ToHaveValueAsync("1,575");

        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Flat));
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator("#rulerV-error")).ToContainTextAsync("length of the upright ruler");
        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Flat));
        await page.Locator("#rulerV").FillAsync("1,5745");
        await page.Locator("#rulerUncertainty").FillAsync("0,0004");
        await page.Locator("#camera").SelectOptionAsync(new SelectOptionValue { Label = "inch phone" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Good", Exact = true })).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(page.Locator("main")).ToContainTextAsync(new Regex(@"Size: the rulers are 1,57\d+ in|Size: the rulers are 1,57\d+ along u and 1,57\d+ in"));
        await page.GetByText("Delete this check").TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete", Exact = true }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/cameras/card-checks$"));
    }

    private static IEnumerable<FilePayload> Payloads(IReadOnlyList<byte[]> photos) => photos.Select((p, i) => new FilePayload { Name = $"view-{i}.jpg", MimeType = "image/jpeg", Buffer = p });

    private static Task CheckAsync(Visit visit, string name) => visit.Page.AtEachWidthAsync(async width =>
    {
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = width == 768 ? ColorScheme.Dark : ColorScheme.Light });
        await visit.Page.ShouldFitAsync();
        await visit.Page.ShouldBeAccessibleAsync();
        await visit.PictureAsync($"{name}-{width}");
    });
}
