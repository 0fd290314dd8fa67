using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>Reference photos and the check after an update in a browser.</summary>
public sealed partial class InterimPagesTests(BrowserSite site) : IClassFixture<BrowserSite>, IDisposable
{
    private const int Patience = 60_000;

    private static readonly string s_name = Usability.Long("shop_wall");

    private readonly string _folder = Directory.CreateTempSubdirectory("interim-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_set_is_kept_and_after_an_update_a_notice_leads_to_the_check_that_flags_what_differs()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/results");
        await page.GetByRole(AriaRole.Link, new() { Name = "Does an update read marks as before? Check it" }).TapAsync();
        await page.Locator("#name").FillAsync(s_name);
        await page.SetInputFilesAsync("#photos", [Photos.NearPath, Photos.FarPath, Path.Combine(Photos.Folder, "no-card.jpg")]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and measure" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Kept by this version." })).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(s_name);
        await Expect(page.Locator("main")).ToContainTextAsync("Not measured: No card is seen in the photo.");
        await CheckAsync(visit, "interim-kept");

        long id = long.Parse(Id().Match(page.Url).Groups["id"].Value, CultureInfo.InvariantCulture);
        site.Age(id, photo: 1, moved: 0.2);
        await page.GotoAsync("/");
        await visit.PictureAsync("interim-notice");
        await page.GetByRole(AriaRole.Link, new() { Name = "The program was updated. Have the reference photos measured again." }).TapAsync();
        await Expect(page.Locator(".overdue")).ToContainTextAsync("has not measured all sets yet");
        await CheckAsync(visit, "interim-due");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new(s_name) }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Not yet measured by this version." })).ToBeVisibleAsync();

        // Held back once, to see what the page says while the browser waits.
        await page.WaitForLoadStateAsync();
        await page.EvaluateAsync("() => document.querySelector('form[data-measuring]').addEventListener('submit', (e) => e.preventDefault(), { once: true })");
        ILocator measure = page.GetByRole(AriaRole.Button, new() { Name = "Measure again" });
        await measure.TapAsync();
        await Expect(page.Locator("form[data-measuring]").GetByRole(AriaRole.Status)).ToHaveTextAsync("In work …");
        await Expect(measure).ToBeDisabledAsync();
        await page.ReloadAsync();
        await measure.TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Differs." })).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(page.Locator(".verdict")).ToContainTextAsync("1 of 3 photos are not measured as they were.");
        await Expect(page.Locator(".interim-photos li").First).ToContainTextAsync("Differs beyond the stated uncertainty.");
        await Expect(page.Locator(".interim-photos li").First.Locator(".beyond")).ToHaveCountAsync(1);
        await Expect(page.Locator(".interim-photos li").First).ToContainTextAsync("0.2000");
        await Expect(page.Locator(".interim-photos li").Nth(1)).ToContainTextAsync("As before, to the last digit.");
        await CheckAsync(visit, "interim-differs");
        await page.ShouldKeepToInchesAndCommasAsync(site, [.. await page.Locator("main").EvaluateAsync<string[]>(@"main => main.textContent.match(/[0-9]+\.[0-9]+\.[0-9]+\S*/g) ?? []")]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the set anew" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Kept by this version." })).ToBeVisibleAsync();
        await page.GotoAsync("/results");
        await Expect(page.Locator(".overdue")).ToHaveCountAsync(0);
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Without_scripts_a_set_is_kept_measured_again_shown_in_inches_and_deleted()
    {
        await using Visit visit = await site.PhoneAsync(scripts: false);
        IPage page = visit.Page;
        await page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-comma", Url = site.Address.ToString() }]);
        await page.GotoAsync("/interim");
        await page.Locator("#name").FillAsync("plain");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and measure" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("No photo was chosen");
        await Expect(page.Locator("#name")).ToHaveValueAsync("plain");

        // What is too large is refused by the service, and by the browser's own button the form is as it was.
        string large = Path.Combine(_folder, "large.jpg");
        await File.WriteAllBytesAsync(large, new byte[42 << 20], TestContext.Current.CancellationToken);
        await page.SetInputFilesAsync("#photos", large);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and measure" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("The photos are larger than 40 MB together.", new() { Timeout = Patience });
        await visit.PictureAsync("interim-large");
        await page.GoBackAsync();
        await Expect(page.Locator("#name")).ToHaveValueAsync("plain");
        await page.GotoAsync("/interim");
        await page.Locator("#name").FillAsync("plain");

        // What is no photo is refused and not held; the photo beside it need not be chosen again.
        await page.SetInputFilesAsync("#photos", [Payload("near.jpg", "image/jpeg", await File.ReadAllBytesAsync(Photos.NearPath, TestContext.Current.CancellationToken)), Payload("note.txt", "text/plain", "no photo"u8.ToArray())]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and measure" }).TapAsync();
        await Expect(page.Locator("#photos-error")).ToContainTextAsync("note.txt", new() { Timeout = Patience });
        await Expect(page.Locator(".held")).ToContainTextAsync(new Regex("1 photo is still here\\s*near.jpg"));
        await page.GotoAsync("/interim");
        await Expect(page.Locator(".held input[type=checkbox]:checked")).ToHaveCountAsync(1);
        await page.Locator("#name").FillAsync("plain");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and measure" }).TapAsync();
        await Expect(page.Locator(".interim-photos")).ToContainTextAsync(InchesAndComma(), new() { Timeout = Patience });
        await page.GetByRole(AriaRole.Button, new() { Name = "Measure again" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "As before." })).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Keep the set anew" })).ToHaveCountAsync(0);

        await page.GetByText("Delete this set").TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete", Exact = true }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/interim$"));
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new("plain") })).ToHaveCountAsync(0);
    }

    private static Task CheckAsync(Visit visit, string name) => visit.Page.AtEachWidthAsync(async width =>
    {
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = width == 768 ? ColorScheme.Dark : ColorScheme.Light });
        await visit.Page.ShouldFitAsync();
        await visit.Page.ShouldBeAccessibleAsync();
        await visit.PictureAsync($"{name}-{width}");
    });

    private static FilePayload Payload(string name, string type, byte[] bytes) => new() { Name = name, MimeType = type, Buffer = bytes };

    [GeneratedRegex(@"/interim/(?<id>\d+)")]
    private static partial Regex Id();

    [GeneratedRegex(@"0,\d{6}\sin")]
    private static partial Regex InchesAndComma();
}
