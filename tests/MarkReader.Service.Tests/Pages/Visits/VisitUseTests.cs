using System.Globalization;
using System.Text.Json;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages.Visits;

/// <summary>That the visit pages can be used on narrow and wide screens, by keyboard, by those who cannot see them, without scripts.</summary>
public sealed class VisitUseTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task Nothing_overflows_and_no_fault_is_found_by_the_accessibility_checker_at_any_width()
    {
        await using PracticePage page = new(site, await site.PhoneAsync());
        Task CheckAsync(string name) => page.Page.AtEachWidthAsync(async width =>
        {
            await page.Page.EmulateMediaAsync(new() { ColorScheme = width == 768 ? ColorScheme.Dark : ColorScheme.Light });
            await page.Page.ShouldFitAsync();
            // The smallest phone differs from the usual one by its width alone.
            if (width > 320)
                await page.Page.ShouldBeAccessibleAsync();
            await page.Visitor.PictureAsync($"{name}-{width}");
        });

        await page.Page.GotoAsync("/display");
        await CheckAsync("display");
        await page.BeginAsync(6);
        await CheckAsync("visit-first");
        await page.UploadAsync();
        await CheckAsync("visit-pick");
        await page.PressAsync("Use this mark");
        await Expect(page.Page.Locator("#now")).ToContainTextAsync("far station");
        await page.StepAsync();
        await page.Page.EvaluateAsync("() => { for (const folded of document.querySelectorAll('main details')) folded.open = true; }");
        await CheckAsync("visit-turn");
        await page.Page.GotoAsync("/visits");
        await CheckAsync("visits");
        page.Visitor.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_pulse_is_entered_and_a_screw_turned_by_keyboard_alone()
    {
        await using PracticePage page = new(site, await site.DeskAsync());
        Keys keys = new(page.Page);
        await page.BeginAsync(6);
        for (int pulse = 0; pulse < 2; pulse++)
        {
            int version = await page.VersionAsync();
            await keys.PressAsync("Fire the practice pulse");
            await Expect(page.Page.GetByRole(AriaRole.Button, new() { Name = "Use this mark" })).ToBeVisibleAsync(new() { Timeout = Patience });
            await keys.PressAsync("Use this mark");
            await page.GoneOnAsync(version);
            await Expect(page.Page.Locator("#now")).ToBeFocusedAsync();
        }

        int before = await page.VersionAsync();
        await keys.PressAsync("I have turned it", "Space");
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

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_time_is_the_readers_own_or_says_that_it_is_UTC_and_a_list_says_how_a_visit_stands(bool scripts)
    {
        await using Visit visitor = await Visit.StartAsync(site, new() { TimezoneId = "Asia/Kolkata", JavaScriptEnabled = scripts });
        await using PracticePage page = new(site, visitor);
        await page.BeginAsync(6);
        ILocator begun = page.Page.Locator(".visit-head time");
        DateTimeOffset at = DateTimeOffset.Parse((await begun.GetAttributeAsync("datetime"))!, CultureInfo.InvariantCulture);
        // India keeps UTC + 5:30 all the year.
        await Expect(begun).ToHaveTextAsync(scripts
            ? at.ToOffset(TimeSpan.FromHours(5.5)).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)
            : at.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture));
        await page.Page.GotoAsync("/visits");
        await Expect(page.Page.Locator($".rows a[href='{page.Address}'] .standing")).ToHaveTextAsync("not finished");
        visitor.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_turn_that_goes_beyond_on_purpose_says_so_without_unfolding_the_reason()
    {
        // Loose screws, and the last turn was clockwise and too far.
        const string Frame = """
            "frame": { "pivot": "lowerLeft", "screws": [{ "name": "A", "at": "lowerRight" }, { "name": "B", "at": "upperLeft" }], "arm": 30, "thread": "M4",
              "response": [{ "screw": "A", "u": 46, "v": 0, "uncertainty": 0.5 }, { "screw": "B", "u": 0, "v": -33, "uncertainty": 0.5 }], "backlashDegrees": 30, "backlashUncertaintyDegrees": 15 },
            """;
        string machine = Machines.Named("loose").Replace("\"name\": \"1\",", "\"name\": \"1\"," + Frame, StringComparison.Ordinal);
        JsonElement kept = await (await site.Client.SendAsync(HttpMethod.Post, "/api/machines", machine)).JsonAsync();
        JsonElement visit = await (await site.Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{kept.GetProperty("id").GetInt64()}} }""")).JsonAsync();
        string address = $"/visits/{visit.GetProperty("id").GetInt64()}";
        string[] events =
        [
            """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""",
            """{ "kind": "mark", "leg": "1", "path": 480, "u": 2.24, "v": 0.2, "uncertainty": 0.05 }""",
            """{ "kind": "turn", "leg": "1", "screw": "A", "turns": 0.25 }""",
            """{ "kind": "mark", "leg": "1", "path": 480, "u": 6.3, "v": 0.2, "uncertainty": 0.05 }""",
        ];
        foreach (string e in events)
            (await site.Client.SendAsync(HttpMethod.Post, $"/api{address}/events", e, ("Idempotency-Key", Guid.NewGuid().ToString("N")))).Dispose();
        await using PracticePage page = new(site, await site.PhoneAsync());
        await page.OpenAsync(address);
        Assert.Contains("turn screw A", await page.NowAsync(), StringComparison.Ordinal);
        await Expect(page.Page.GetByText("goes beyond the place on purpose")).ToBeVisibleAsync();
        await page.Visitor.PictureAsync("visit-beyond");
        page.Visitor.ShouldBeQuiet();
    }
}
