using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>The cameras' pages in a browser: from the printed board to a profile in use.</summary>
public sealed class CameraPagesTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    private static readonly string s_name = Usability.Long("bench_phone");
    private static readonly int[] s_parameters = [3000, 3000, 2000, 1500, 0, 0, 0, 0, 0];

    // Words of the views' drawing that lie over the place of a camera.
    private const string CoveredWords =
        """
        () => {
          const places = [...document.querySelectorAll('.coverage .stood')].map((place) => place.getBoundingClientRect());
          return [...document.querySelectorAll('.coverage text')].filter((text) => {
            const box = text.getBoundingClientRect();
            return places.some((p) => p.left < box.right && box.left < p.right && p.top < box.bottom && box.top < p.bottom);
          }).map((text) => text.textContent);
        }
        """;

    [Fact]
    public async Task A_new_user_goes_from_the_printed_board_to_a_profile_in_use_by_the_pages_alone()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Contentinfo).GetByRole(AriaRole.Link, new() { Name = "Cameras" }).TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Calibrate a camera" }).TapAsync();

        IDownload board = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "A4 (PDF)" }).TapAsync());
        Assert.Equal("markreader-board-a4.pdf", board.SuggestedFilename);
        await Expect(page.Locator("#next")).ToContainTextAsync("First: one from straight above");
        await Expect(page.Locator("#make")).ToContainTextAsync("5 are needed");
        await visit.PictureAsync("calibrate-begun");
        string begun = page.Url;
        await page.GotoAsync("/cameras");
        await page.GetByRole(AriaRole.Button, new() { Name = "Calibrate a camera" }).TapAsync();
        await Expect(page).ToHaveURLAsync(begun);
        await page.Locator("#name").FillAsync(s_name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the profile" }).TapAsync();
        await Expect(page.Locator("#make-error")).ToContainTextAsync("0 can be used, 5 are needed");
        await Expect(page.Locator("#name")).Not.ToHaveAttributeAsync("aria-invalid", "true");

        // One that shows no board, and then all others, chosen at once.
        await ChooseAsync(page, ("card.jpg", BoardPhotos.Card));
        await Expect(page.Locator("#boards-status")).ToHaveTextAsync("Photo 1 is not used.", new() { Timeout = Patience });
        await Expect(page.Locator("#board-photos")).ToContainTextAsync("calibration board is not seen");
        await Expect(page.Locator("#make-error")).ToContainTextAsync("0 can be used");
        await StayAsync(page, () => ChooseAsync(page, ("board-0.jpg", BoardPhotos.Boards[0])));
        await Expect(page.Locator("#boards-status")).ToHaveTextAsync("Done: photo 2 is used.", new() { Timeout = Patience });
        await Expect(page.Locator("#make-error")).ToBeEmptyAsync();
        await Expect(page.Locator("#next")).ToContainTextAsync("tilted by about 30°");
        await Expect(page.Locator(".cell.missing")).Not.ToHaveCountAsync(0);
        await ChooseAsync(page, [.. BoardPhotos.Boards.Select((b, i) => ($"board-{i}.jpg", b)).Skip(1)]);
        await Expect(page.Locator("#boards-status")).ToHaveTextAsync("Done: photo 13 is used.", new() { Timeout = Patience });
        await Expect(page.Locator("#make")).ToContainTextAsync("12 photos can be used");
        await CheckAsync(visit, "calibrate");
        Assert.Empty(await page.EvaluateAsync<string[]>(CoveredWords));

        await page.Locator("#name").FillAsync("");
        // What was wrong is no longer said once it is being mended.
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the profile" }).TapAsync();
        await Expect(page.Locator("#make-error")).ToContainTextAsync("name is empty");
        await page.Locator("#name").FillAsync(s_name);
        await Expect(page.Locator("#make-error")).ToBeEmptyAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the profile" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("In use: photos of this camera", new() { Timeout = Patience });
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(s_name);
        await Expect(page.Locator(".notices")).ToContainTextAsync("Photo 1: The calibration board is not seen", new() { IgnoreCase = true });
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        await CheckAsync(visit, "camera");
        await page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-comma", Url = site.Address.ToString() }]);
        await page.ReloadAsync();
        Assert.DoesNotMatch(@".{0,40}\d\.\d.{0,20}", await page.Locator("main").InnerTextAsync());
        await page.Context.ClearCookiesAsync(new() { Name = "display" });
        await page.ReloadAsync();
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");

        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "focal length along x" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Its calibration" }).TapAsync();
        await page.ShouldFitAtEachWidthAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = $"The profile made so far: {s_name}" }).TapAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Measure a photo" }).TapAsync();
        await page.WaitForFunctionAsync("() => location.pathname === '/' && document.readyState === 'complete'");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = $"Camera profile in use: {s_name}" })).ToBeVisibleAsync();
        await page.ShouldFitAtEachWidthAsync();
        await page.SetInputFilesAsync("#near", Payload("near.jpg", BoardPhotos.Card));
        await page.SetInputFilesAsync("#far", Payload("far.jpg", BoardPhotos.Far));
        await visit.FillAsync(null, null);
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator(".aim-camera")).ToHaveTextAsync($"Measured with the camera profile {s_name}.", new() { Timeout = Patience });
        await page.ShouldFitAtEachWidthAsync();

        await page.GotoAsync("/cameras");
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new($"{s_name}.*800 × 600 px, focal length.*Last used", RegexOptions.Singleline) })).ToBeVisibleAsync();
        await CheckAsync(visit, "cameras");
        visit.ShouldBeQuiet("422", "400");
    }

    [Fact]
    public async Task Without_scripts_photos_are_sent_and_removed_and_a_file_goes_out_and_comes_in()
    {
        await using Visit visit = await site.PhoneAsync(scripts: false);
        IPage page = visit.Page;
        await page.GotoAsync("/cameras");
        await page.GetByRole(AriaRole.Button, new() { Name = "Calibrate a camera" }).TapAsync();
        await ChooseAsync(page, ("a.jpg", BoardPhotos.Boards[0]), ("b.jpg", BoardPhotos.Boards[1]));
        await page.GetByRole(AriaRole.Button, new() { Name = "Send" }).TapAsync();
        await Expect(page.Locator("#make")).ToContainTextAsync("can be used so far: 2.", new() { Timeout = Patience });
        await page.Locator("#name").FillAsync("too few");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the profile" }).TapAsync();
        await Expect(page.Locator("#make-error")).ToContainTextAsync("Of the photos of the board, 2 can be used, 5 are needed");
        await Expect(page.Locator("#name")).ToHaveValueAsync("too few");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("Remove.*Photo 1") }).TapAsync();
        await Expect(page.Locator("#make")).ToContainTextAsync("can be used so far: 1.");
        await page.GetByText("Delete this calibration").TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Yes, delete it" }).TapAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/cameras$"));

        // Nothing in its file names the camera.
        await ReadAsync(page, Profile("from a file"), "");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("name it on the command line");
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Export as a file" }).TapAsync());
        Assert.Equal("from-a-file.json", download.SuggestedFilename);
        string file = await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        await page.GotoAsync("/cameras");
        await Expect(page.Locator("h2:text-is('Not in use') ~ ul")).ToContainTextAsync("from a file");
        await ReadAsync(page, file, "a copy");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("is kept already; nothing was added");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("from a file");
        await page.GotoAsync("/cameras");
        await ReadAsync(page, file.Replace("\"views\": 12", "\"views\": 11", StringComparison.Ordinal), "");
        await Expect(page.Locator("#file-error")).ToContainTextAsync("is kept already");
        await ReadAsync(page, file.Replace("\"views\": 12", "\"views\": 11", StringComparison.Ordinal), "the same");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("the same");
        await page.GetByText("Delete this camera").TapAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Yes, delete it" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new("from a file") })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new("the same") })).ToHaveCountAsync(0);
        visit.ShouldBeQuiet("409", "422");
    }

    // Leaves the page while a photo is on its way: the browser asks, and whoever stays loses nothing. Later the page is left without a question, else it would stay.
    private static async Task StayAsync(IPage page, Func<Task> choose)
    {
        TaskCompletionSource<string> asked = new();
        TaskCompletionSource goOn = new();
        page.Dialog += async (_, dialog) =>
        {
            asked.TrySetResult(dialog.Type);
            await dialog.DismissAsync();
        };
        await page.RouteAsync("**/photos", async route =>
        {
            await goOn.Task;
            await route.ContinueAsync();
        });
        await choose();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the profile" }).TapAsync();
        Assert.Equal(DialogType.BeforeUnload, await asked.Task.WaitAsync(TimeSpan.FromMilliseconds(Patience), TestContext.Current.CancellationToken));
        goOn.SetResult();
        await page.UnrouteAllAsync();
    }

    private static Task ChooseAsync(IPage page, params (string Name, byte[] Bytes)[] photos) =>
        page.SetInputFilesAsync("#boards", photos.Select(p => Payload(p.Name, p.Bytes)));

    private static FilePayload Payload(string name, byte[] bytes) => new() { Name = name, MimeType = "image/jpeg", Buffer = bytes };

    private static async Task ReadAsync(IPage page, string file, string name)
    {
        await page.SetInputFilesAsync("#file", new FilePayload { Name = "camera.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(file) });
        await page.FillAsync("#name", name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).TapAsync();
    }

    private static Task CheckAsync(Visit visit, string name) => visit.Page.AtEachWidthAsync(async width =>
    {
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = width == 360 ? ColorScheme.Dark : ColorScheme.Light });
        await visit.Page.ShouldFitAsync();
        await visit.Page.ShouldBeAccessibleAsync();
        await visit.PictureAsync($"{name}-{width}");
    });

    private static string Profile(string name) => $$"""
        { "name": "{{name}}", "made": "2026-01-05T09:00:00Z", "photo": { "width": 4000, "height": 3000, "zoom": 1 },
          "parameters": [ {{string.Join(", ", s_parameters.Select(v => $$"""{ "name": "p", "value": {{v}}, "standardUncertainty": 0.5 }"""))}} ],
          "lensDoubtPx": 0.1, "residualPx": 0.1, "views": 12 }
        """;
}
