using System.Globalization;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

public sealed class MeasureTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task Two_photos_in_give_overlay_and_numbers_on_a_telephone()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await visit.PictureAsync("phone-start");
        await visit.FillAsync(Photos.NearPath, Photos.FarPath);
        await Expect(page.Locator("#near-status")).ToContainTextAsync("1 mark seen", new() { Timeout = Patience });
        await Expect(page.Locator("#far-status")).ToContainTextAsync("2 marks seen", new() { Timeout = Patience });
        await page.Locator("#find").TapAsync();

        await Expect(page.Locator("#outcome .aim-move")).ToContainTextAsync("Move the beam", new() { Timeout = Patience });
        await Expect(page.Locator("#outcome")).ToBeFocusedAsync();
        await visit.PictureAsync("phone-result");
        // True aim −1.2, 0.8 and far mark 5.76, 5.12.
        await Expect(page.Locator("#outcome .aim-move")).ToContainTextAsync("7.0 mm left and 4.3 mm down");
        string aim = await page.Locator(".readings dd").First.InnerTextAsync();
        Assert.Equal(Photos.Aim.U, double.Parse(aim.Split(' ')[0].Replace('−', '-'), CultureInfo.InvariantCulture), 0.05);
        foreach (string part in (string[])["near", "far", "aim"])
            Assert.True(await page.Locator($"#outcome .aim-card [data-part='{part}']").CountAsync() > 0, part);
        LocatorBoundingBoxResult? box = await page.Locator("#outcome .aim-card").BoundingBoxAsync();
        Assert.True(box is { Width: > 250, Height: > 150 });
        Assert.True(await OverlayLiesOnPhotoAsync(page));
        await page.Locator("#outcome .aim-view").GetByText("Whole photo").TapAsync();
        await Expect(page.Locator("#outcome .aim-photo")).ToBeVisibleAsync();
        await Expect(page.Locator("#outcome .aim-card")).ToBeHiddenAsync();
        await visit.PictureAsync("phone-result-whole");
        await Expect(page.Locator("#earlier-list li").First).ToContainTextAsync("paths 80 mm and 480 mm");
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_photo_that_is_chosen_before_the_script_has_loaded_is_sent()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        TaskCompletionSource chosen = new();
        await page.RouteAsync("**/js/main.js*", async route =>
        {
            await chosen.Task;
            await route.ContinueAsync();
        });
        await page.GotoAsync("/", new() { WaitUntil = WaitUntilState.Commit });
        await page.SetInputFilesAsync("#near", Photos.NearPath);
        chosen.SetResult();
        await Expect(page.Locator("#near-status")).ToContainTextAsync("1 mark seen", new() { Timeout = Patience });
        visit.ShouldBeQuiet();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task One_click_shows_the_whole_job_on_sample_photos(bool scripts)
    {
        await using Visit visit = await site.PhoneAsync(scripts: scripts);
        await visit.Page.GotoAsync("/");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).TapAsync();
        await Expect(visit.Page.Locator(".aim-move")).ToContainTextAsync("Move the beam", new() { Timeout = Patience });
        if (scripts)
            Assert.Equal("80", await visit.Page.InputValueAsync("#nearPath"));
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task Both_marks_on_one_photo_give_the_aim_point()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByText("Both marks on one", new() { Exact = true }).ClickAsync();
        await Expect(page.Locator("[data-slot='near']")).ToBeHiddenAsync();
        await page.SetInputFilesAsync("#photo", Photos.FarPath);
        await page.GetByRole(AriaRole.Radio, new() { Name = "left", Exact = true }).CheckAsync();
        await page.FillAsync("#nearPath", "80,0");
        await page.FillAsync("#farPath", "480");
        await page.Locator("#find").ClickAsync();
        await Expect(page.Locator(".aim-move")).ToContainTextAsync("7.0 mm left and 4.3 mm down", new() { Timeout = Patience });
        await visit.PictureAsync("desk-result");
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_result_is_marked_once_the_form_says_something_else_and_lengths_keep_their_meaning_in_inches()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Load sample photos" }).ClickAsync();
        await Expect(page.Locator(".aim-move")).ToContainTextAsync("Move the beam", new() { Timeout = Patience });
        await Expect(page.Locator("#stale")).ToBeHiddenAsync();

        await page.GetByText("inches", new() { Exact = true }).ClickAsync();
        Assert.Equal("3.14961", await page.InputValueAsync("#nearPath"));
        Assert.Equal("18.8976", await page.InputValueAsync("#farPath"));
        await Expect(page.Locator("#stale")).ToBeVisibleAsync();
        await visit.PictureAsync("desk-stale");

        await page.Locator("#find").ClickAsync();
        await Expect(page.Locator("#stale")).ToBeHiddenAsync(new() { Timeout = Patience });
        await Expect(page.Locator(".aim-move")).ToContainTextAsync("7.0 mm left and 4.3 mm down");
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task An_error_stands_beside_its_field_and_nothing_entered_is_lost()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await visit.FillAsync(Photos.NearPath, Photos.FarPath, "480", "80");
        await page.Locator("#find").TapAsync();

        await Expect(page.Locator("#farPath-error")).ToContainTextAsync("swapped", new() { Timeout = Patience });
        await Expect(page.Locator("#farPath")).ToBeFocusedAsync();
        await Expect(page.Locator("#farPath")).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(page.Locator("#farPath-error")).ToBeInViewportAsync();
        await visit.PictureAsync("phone-error");
        Assert.Equal("480", await page.InputValueAsync("#nearPath"));
        await Expect(page.Locator("[data-slot='near'] .slot-frame img")).ToBeVisibleAsync();

        await page.FillAsync("#nearPath", "80");
        await page.FillAsync("#farPath", "480");
        await Expect(page.Locator("#farPath-error")).ToBeEmptyAsync();
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator(".aim-move")).ToBeVisibleAsync(new() { Timeout = Patience });
        visit.ShouldBeQuiet("400");
    }

    [Fact]
    public async Task A_photo_without_a_card_is_refused_as_soon_as_it_is_chosen()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await page.SetInputFilesAsync("#near", new FilePayload { Name = "wall.png", MimeType = "image/png", Buffer = PlainPng.Grey(900, 700) });
        await Expect(page.Locator("#near-error")).ToContainTextAsync("card", new() { Timeout = Patience });
        await page.SetInputFilesAsync("#far", new FilePayload { Name = "notes.jpg", MimeType = "image/jpeg", Buffer = "no photo"u8.ToArray() });
        await Expect(page.Locator("#far-error")).ToContainTextAsync("JPEG", new() { Timeout = Patience });

        await page.FillAsync("#nearPath", "80");
        await page.FillAsync("#farPath", "480");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#near-error")).ToBeInViewportAsync();
        await Expect(page.Locator("#near-error")).Not.ToBeEmptyAsync();

        await page.SetInputFilesAsync("#near", Photos.NearPath);
        await Expect(page.Locator("#near-error")).ToBeEmptyAsync();
        await page.Locator("[data-slot='far'] .slot-remove").TapAsync();
        await Expect(page.Locator("#far-error")).ToBeEmptyAsync();
        visit.ShouldBeQuiet("422", "415");
    }

    [Fact]
    public async Task Without_scripts_the_form_works_and_keeps_what_was_entered()
    {
        await using Visit visit = await site.PhoneAsync(scripts: false);
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await visit.FillAsync(Photos.NearPath, Photos.FarPath, "80", "");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator("#farPath-error")).ToContainTextAsync("missing", new() { Timeout = Patience });
        Assert.Equal("80", await page.InputValueAsync("#nearPath"));
        await Expect(page.Locator("[data-slot='near'] .slot-frame img")).ToBeVisibleAsync();

        await page.FillAsync("#farPath", "480");
        await page.Locator("#find").TapAsync();
        await Expect(page.Locator(".aim-move")).ToContainTextAsync("7.0 mm left", new() { Timeout = Patience });
        visit.ShouldBeQuiet("400");
    }

    [Fact]
    public async Task A_result_can_be_deleted_from_its_page()
    {
        await using Visit visit = await site.PhoneAsync();
        IPage page = visit.Page;
        await page.GotoAsync("/");
        await visit.FillAsync(Photos.NearPath, Photos.FarPath, "80", "479");
        await page.Locator("#find").TapAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Permanent page" }).TapAsync();
        await visit.PictureAsync("phone-permanent");
        await page.GetByText("Delete this result").TapAsync();
        string address = page.Url;
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete result" }).TapAsync();
        await page.WaitForURLAsync("**/results");
        await visit.PictureAsync("phone-results");
        IResponse? gone = await page.GotoAsync(address);
        Assert.Equal(404, gone?.Status);
        visit.ShouldBeQuiet("404");
    }

    /// <summary>Whether the drawing's photo has the size in pixels for which the overlay was drawn.</summary>
    private static Task<bool> OverlayLiesOnPhotoAsync(IPage page) => page.EvaluateAsync<bool>(
        """
        async () => {
          const image = document.querySelector('#outcome .aim-photo image');
          const photo = new Image();
          photo.src = image.getAttribute('href');
          await photo.decode();
          return photo.naturalWidth === Number(image.getAttribute('width')) && photo.naturalHeight === Number(image.getAttribute('height'));
        }
        """);
}
