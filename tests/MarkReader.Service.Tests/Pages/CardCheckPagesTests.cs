using System.Net;
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

    private static readonly string s_camera = Usability.Long("card_phone"), s_check = Usability.Long("bent_one");

    [Fact]
    public async Task A_card_is_checked_from_the_cameras_page_and_the_result_is_kept()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/cameras");
        await page.SetInputFilesAsync("#file", new FilePayload { Name = "camera.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(CardPhotos.Profile(s_camera)) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).TapAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Check a printed card" }).TapAsync();
        await Expect(page.Locator("#camera option:checked")).ToHaveTextAsync(s_camera);
        await CheckAsync(visit, "card-check-form");

        // Photos that are too much together are refused before they are sent, and what was typed stays.
        await page.Locator("#name").FillAsync(s_check);
        await page.EvaluateAsync(
            """
            () => {
              const photos = new DataTransfer(), input = document.getElementById('photos');
              for (const name of ['a.jpg', 'b.jpg', 'c.jpg']) photos.items.add(new File([new Uint8Array(14 * 1048576)], name, { type: 'image/jpeg' }));
              input.files = photos.files;
            }
            """);
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("The 3 photos have 42 MB together, the limit is 40 MB.");
        await Expect(page.Locator("#name")).ToHaveValueAsync(s_check);
        await visit.PictureAsync("card-check-large");

        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Bent).Take(1));
        await Expect(page.Locator("#photos-error")).ToBeEmptyAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator(".held")).ToContainTextAsync("view-0.jpg", new() { Timeout = Patience });
        await CheckAsync(visit, "card-check-held");
        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Bent).Skip(1));
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync(new Regex("Not good\\s+Because of this card"), new() { Timeout = Patience });
        await Expect(page.Locator("main")).ToContainTextAsync("Tape the card flat along all four sides");
        await Expect(page.Locator("main")).ToContainTextAsync("Photos do not tell how large a print is");
        await Expect(page.Locator(".task-picture")).ToHaveAttributeAsync("alt", new Regex("The zone of the card.*marks are read wrong by up to 0\\.\\d+ mm"));
        await page.WaitForLoadStateAsync();
        Assert.True(await page.EvaluateAsync<bool>("() => document.querySelector('.verdict').getBoundingClientRect().bottom <= document.querySelector('.task-picture').getBoundingClientRect().top"));
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        await CheckAsync(visit, "card-check");
        await page.ShouldKeepToInchesAndCommasAsync(site);

        await page.GetByRole(AriaRole.Link, new() { Name = "Check a printed card" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new($"{s_check}: not good.*plate · {s_camera}", RegexOptions.Singleline) })).ToBeVisibleAsync();
        await page.ShouldFitAtEachWidthAsync();
        visit.ShouldBeQuiet("422");
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

        // What was sent once need not be chosen again, whatever was wrong, nor after another page.
        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Flat).Take(2));
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator("#rulerV-error")).ToContainTextAsync("length of the upright ruler");
        await Expect(page.Locator(".held")).ToContainTextAsync(new Regex("2 photos are still here.*view-0.jpg.*view-1.jpg", RegexOptions.Singleline));
        await page.Locator("#rulerV").FillAsync("1,5745");
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("Of the photos of the card, 2 can be used, 3 are needed", new() { Timeout = Patience });
        await page.GotoAsync("/cameras");
        await page.GotoAsync("/cameras/card-checks");
        await Expect(page.Locator(".held input[type=checkbox]:checked")).ToHaveCountAsync(2);

        // More are added to them; one that is chosen twice counts once.
        await page.SetInputFilesAsync("#photos", Payloads(CardPhotos.Flat).Skip(1));
        await page.Locator("#rulerU").FillAsync("1,575");
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.Locator("#rulerV-error")).ToContainTextAsync("length of the upright ruler");
        await Expect(page.Locator(".held input[type=checkbox]:checked")).ToHaveCountAsync(CardPhotos.Flat.Count);
        await page.Locator("#rulerV").FillAsync("1,5745");
        await page.Locator("#name").FillAsync("card of leg 1");
        await page.Locator("#rulerUncertainty").FillAsync("0,0004");
        await page.Locator("#camera").SelectOptionAsync(new SelectOptionValue { Label = "inch phone" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Check the card" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Good", Exact = true })).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(page.Locator("main")).ToContainTextAsync(new Regex(@"Size: the rulers are 1,57\d+ in|Size: the rulers are 1,57\d+ along u and 1,57\d+ in"));
        await Expect(page.Locator("main")).ToContainTextAsync($"{CardPhotos.Flat.Count} of {CardPhotos.Flat.Count} photos used");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("card of leg 1");
        string check = new Uri(page.Url).AbsolutePath;
        await page.GotoAsync("/cameras/card-checks");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new("card of leg 1: good\\s.*plate · inch phone", RegexOptions.Singleline) }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex(check));
        await page.GetByText("Delete this check").TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete", Exact = true }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/cameras/card-checks$"));
        await Expect(page.Locator(".held")).ToHaveCountAsync(0);
    }

    /// <summary>Whatever a form names: no photos come of it, the new ones stay, and the page says what to do.</summary>
    [Theory]
    [InlineData("0123456789abcdef0123456789abcdef")]
    [InlineData("../markreader.db")]
    [InlineData("<b>")]
    public async Task Photos_that_are_held_no_longer_are_asked_for_again(string token)
    {
        using HttpResponseMessage answer = await site.Client.PostAsync(
            "/cameras/card-checks", Forms.Form(("held", token), ("use", 0), ("use", "-1"), ("photos", CardPhotos.Flat[0])), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Gone, answer.StatusCode);
        string page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("Photos that were here are here no longer", page, StringComparison.Ordinal);
        Assert.Contains("1 photo is still here", page, StringComparison.Ordinal);
        Assert.DoesNotContain(token, page, StringComparison.Ordinal);
        string cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.Matches("^held=[0-9a-f]{32}; max-age=1800; path=/cameras/card-checks; samesite=strict; httponly$", cookie);
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
