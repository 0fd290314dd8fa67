using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>That every action is reached and done by keyboard alone, the focus always seen (WCAG 2.2, 2.1.1, 2.4.7 and 2.4.11).</summary>
public sealed class KeyboardTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Units_machines_files_and_history_by_keyboard()
    {
        await using Visit visit = await site.DeskAsync();
        IPage page = visit.Page;
        Keys keys = new(page);
        await page.GotoAsync("/visits");
        await keys.FollowAsync("Units and decimals");
        await keys.PressAsync("unit", "ArrowRight");
        await keys.PressAsync("sign", "ArrowRight");
        await keys.FollowAsync("Save");
        await Expect(page.GetByLabel("inches")).ToBeCheckedAsync();

        await keys.FollowAsync("Machines");
        await keys.FollowAsync("Small desktop…");
        await keys.TypeAsync("name", "by keys");
        await keys.PressAsync("Reminder, scatter of pulses");
        await keys.PressAsync("leg1-upperLeft", "ArrowDown");
        await keys.FollowAsync("save");
        await Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept.");
        await Expect(page.Locator("#leg1-nearPath")).ToHaveValueAsync("3,1496");
        FilePayload file = await keys.DownloadAsync("Export as a file");
        await keys.FollowAsync("All machines");
        await keys.ChooseAsync("file", file);
        await keys.FollowAsync("Read the file");
        await keys.FollowAsync("Open by keys");
        await keys.ShouldBeAtAsync("by keys");

        await keys.FollowAsync("Begin a visit");
        await keys.ReachAsync("machine");
        await keys.TypeAsync("doneBy", "A. Turner");
        await keys.FollowAsync("Begin");
        await Expect(page.Locator("#now")).ToHaveTextAsync("Fire one pulse: leg 1, near station");
        await keys.FollowAsync("Machines");
        await keys.FollowAsync("History: by keys");
        await keys.ShouldBeAtAsync("History: by keys");
        await keys.FollowAsync("The machine");
        await keys.PressAsync("Delete this machine");
        await keys.FollowAsync("Yes, delete it");
        await Expect(page).ToHaveURLAsync(new Regex("/machines$"));
        visit.ShouldBeQuiet("409");
    }

    [Fact]
    public async Task Marks_and_work_entries_taken_back_skipped_and_again_and_the_record_by_keyboard()
    {
        await using Visit visitor = await site.DeskAsync();
        IPage page = visitor.Page;
        Keys keys = new(page);
        string machine = Machines.Named("press").Replace("\"washers\"", "\"aperture\": { \"diameter\": 12, \"beamDiameter\": 4 }, \"washers\"", StringComparison.Ordinal);
        long id = (await (await site.Client.SendAsync(HttpMethod.Post, "/api/machines", machine)).JsonAsync()).GetProperty("id").GetInt64();
        JsonElement visit = await (await site.Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{id}} }""")).JsonAsync();
        string address = $"/visits/{visit.GetProperty("id").GetInt64()}";

        await page.GotoAsync(address);
        await keys.PressAsync("Why");
        await Expect(page.GetByText("No mark yet.")).ToBeVisibleAsync();
        await TypeMarkAsync(keys, "0", "-1.5");
        await Expect(page.Locator("#now")).ToHaveTextAsync("Fire one pulse: leg 1, far station");
        await keys.PressAsync("Take back 1:…");
        await Expect(page.Locator("#now")).ToHaveTextAsync("Fire one pulse: leg 1, near station");

        // The frame's far right corner is low; then the tube; then the plate.
        await UntilAsync(address, a => a.Text("kind") == "survey" && a.GetProperty("x").GetDouble() == 0 && a.GetProperty("y").GetDouble() > 0, -1.5, farRight: 3);
        await page.GotoAsync(address);
        await TypeMarkAsync(keys, "0", "-1.5");
        await Expect(page.Locator("#now")).ToHaveTextAsync("Put 3.00 mm of shims under the far right corner");
        await keys.PressAsync("I used another height");
        await keys.TypeAsync("height", "3.2");
        await keys.PressAsync("Enter it");
        await Expect(page.Locator(".events li").First).ToContainTextAsync("3.20 mm of shims");

        await UntilAsync(address, a => a.Text("kind") == "raiseTube", -1.5);
        await page.GotoAsync(address);
        await keys.PressAsync("It is raised", "Space");
        await Expect(page.Locator(".events li").First).ToContainTextAsync("Tube raised by 1.50 mm");

        await UntilAsync(address, a => a.Text("kind") == "moveTarget", 1.5);
        await page.GotoAsync(address);
        await keys.PressAsync("I moved it otherwise");
        await keys.TypeAsync("up", "1.5");
        await keys.PressAsync("Enter it");
        await Expect(page.Locator(".events li").First).ToContainTextAsync("Plate moved by");

        await keys.PressAsync("Skip this step");
        await keys.TypeAsync("reason", "no time left");
        await keys.PressAsync("Skip Centring");
        await Expect(page.Locator(".chip.skipped")).ToContainTextAsync("Centring");
        await keys.PressAsync("Do a step again");
        await keys.PressAsync("again-step", "ArrowDown");
        await keys.PressAsync("Do it again");
        await Expect(page.Locator(".events li").First).ToContainTextAsync("Leg 2 done again");
        await keys.PressAsync("Note and name");
        await keys.TypeAsync("note", "by keys");
        await keys.PressAsync("Save");
        await Expect(page.Locator(".visit-note")).ToHaveTextAsync("by keys");

        await keys.FollowAsync("Web page");
        await Expect(page.GetByText("no time left").First).ToBeVisibleAsync();
        await page.GotoAsync(address);
        await keys.PressAsync("Other files");
        Assert.EndsWith(".csv", (await keys.DownloadAsync("Table of all numbers (CSV)")).Name, StringComparison.Ordinal);
        FilePayload bundle = await keys.DownloadAsync("Whole visit with photos…");
        await keys.PressAsync("Delete this visit");
        await keys.FollowAsync("Delete visit…");
        await Expect(page).ToHaveURLAsync(new Regex("/visits$"));
        await keys.PressAsync("Take in a visit…");
        await keys.ChooseAsync("Choose file", bundle);
        await Expect(page.Locator(".visit-note")).ToHaveTextAsync("by keys", new() { Timeout = Patience });
        visitor.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_practice_visit_is_begun_and_a_mark_shown_with_the_arrow_keys()
    {
        await using Visit visitor = await site.DeskAsync();
        IPage page = visitor.Page;
        Keys keys = new(page);
        await page.GotoAsync("/visits");
        await keys.TypeAsync("seed", "6");
        await keys.FollowAsync("Begin practice");
        await Expect(page.Locator("#now")).ToBeVisibleAsync();
        string address = new Uri(page.Url).AbsolutePath;
        byte[] photo = await site.Client.GetByteArrayAsync($"/api{address}/pulse", Cancellation);
        await keys.ChooseAsync("photo", new() { Name = "a.jpg", MimeType = "image/jpeg", Buffer = photo });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Use this mark" })).ToBeVisibleAsync(new() { Timeout = Patience });

        JsonElement spots = await (await site.Client.GetAsync($"/api/photos/{page.Url.Split("photo=")[1]}/spots", Cancellation)).JsonAsync();
        JsonElement[] corners = [.. spots.GetProperty("zone").EnumerateArray()];
        JsonElement mark = spots.GetProperty("marks")[0];
        await keys.PressAsync("Tap the mark");
        await keys.PressAsync("Tap the mark");
        await Expect(page.Locator("#tap-spots button").First).ToBeVisibleAsync(new() { Timeout = Patience });
        await keys.PressAsync("tapView", "ArrowRight");
        await keys.ReachAsync("tap-photo");
        foreach ((string axis, string less, string more) in new[] { ("x", "ArrowLeft", "ArrowRight"), ("y", "ArrowUp", "ArrowDown") })
        {
            double way = mark.GetProperty(axis).GetDouble() - corners.Average(corner => corner.GetProperty(axis).GetDouble());
            for (int step = 0; step < Math.Round(Math.Abs(way) / 10); step++)
                await page.Keyboard.PressAsync("Shift+" + (way < 0 ? less : more));
        }

        Assert.Equal(mark.GetProperty("x").GetDouble(), double.Parse(await page.InputValueAsync("#tap-x"), CultureInfo.InvariantCulture), 6.0);
        await keys.PressAsync("tap-use");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Is this the mark?" })).ToBeFocusedAsync(new() { Timeout = Patience });
        await keys.PressAsync("Use this mark");
        await Expect(page.Locator(".events li").First).ToContainTextAsync("Mark on leg 1");
        JsonElement entered = (await (await site.Client.GetAsync("/api" + address, Cancellation)).JsonAsync()).GetProperty("events")[0].GetProperty("event");
        Assert.True(entered.TryGetProperty("tap", out _));
        Assert.Equal(mark.GetProperty("u").GetDouble(), entered.GetProperty("u").GetDouble(), 0.1);
        visitor.ShouldBeQuiet();
    }

    private static async Task TypeMarkAsync(Keys keys, string u, string v)
    {
        await keys.PressAsync("Type the mark instead");
        await keys.TypeAsync("u", u);
        await keys.TypeAsync("v", v);
        await keys.PressAsync("Add this mark");
    }

    // Goes on through the interface for programs, every mark at this height, until the visit asks for what is looked for.
    private async Task UntilAsync(string address, Func<JsonElement, bool> wanted, double v, double farRight = 0)
    {
        for (int step = 0; step < 20; step++)
        {
            JsonElement action = (await (await site.Client.GetAsync("/api" + address, Cancellation)).JsonAsync()).GetProperty("advice").GetProperty("action");
            if (wanted(action))
                return;
            bool survey = action.Text("kind") == "survey";
            Assert.True(survey || action.Text("kind") == "fire", action.ToString());
            double extra = survey && action.GetProperty("x").GetDouble() > 0 && action.GetProperty("y").GetDouble() > 0 ? farRight : 0;
            string e = survey
                ? JsonSerializer.Serialize(new { kind = "survey", x = action.GetProperty("x").GetDouble(), y = action.GetProperty("y").GetDouble(), u = 0, v = v + extra, uncertainty = 0.05 })
                : JsonSerializer.Serialize(new { kind = "mark", leg = action.Text("leg"), path = action.GetProperty("path").GetDouble(), u = 0, v, uncertainty = 0.05 });
            using HttpResponseMessage added = await site.Client.SendAsync(HttpMethod.Post, $"/api{address}/events", e, ("Idempotency-Key", $"until-{Guid.NewGuid():N}"));
            Assert.True(added.IsSuccessStatusCode, await added.Content.ReadAsStringAsync(Cancellation));
        }

        Assert.Fail("it is not asked for");
    }
}
