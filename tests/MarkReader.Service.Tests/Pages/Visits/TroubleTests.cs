using System.Text.Json;
using MarkReader.Service.Tests.Support;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages.Visits;

/// <summary>What goes wrong on a visit: bad marks, earlier steps touched, lost connections, reloads, two phones.</summary>
public sealed class TroubleTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int Patience = 60_000;

    [Fact]
    public async Task A_mark_is_taken_back_and_made_again_and_leg_one_touched_later_makes_leg_two_stale()
    {
        await using PracticePage page = new(site, await site.PhoneAsync());
        await page.BeginAsync(6);
        await page.StepAsync();
        await page.StepAsync();
        Assert.Contains("turn screw", await page.NowAsync(), StringComparison.Ordinal);

        int version = await page.VersionAsync();
        await page.Page.GetByRole(AriaRole.Button, new() { Name = "Take back 1: Mark on leg 1" }).TapAsync();
        await page.GoneOnAsync(version);
        Assert.Equal("Fire one pulse: leg 1, near station", await page.NowAsync());
        await page.StepAsync();
        Assert.Contains("turn screw", await page.NowAsync(), StringComparison.Ordinal);
        JsonElement visit = await page.VisitAsync();
        Assert.Equal([2, 3], visit.GetProperty("events").EnumerateArray().Select(e => e.GetProperty("number").GetInt32()));
        Assert.Equal(1, visit.GetProperty("takenBack")[0].GetProperty("number").GetInt32());

        while (!(await page.NowAsync()).Contains("leg 2, far", StringComparison.Ordinal))
            Assert.True(await page.StepAsync());
        version = await page.VersionAsync();
        await page.Page.GetByText("Do a step again").TapAsync();
        await page.Page.GetByLabel("Step", new() { Exact = true }).SelectOptionAsync("1");
        await page.PressAsync("Do it again");
        await page.GoneOnAsync(version);
        Assert.StartsWith("Fire one pulse: leg 1", await page.NowAsync(), StringComparison.Ordinal);
        await Expect(page.Page.Locator(".chip.stale")).ToContainTextAsync("Leg 2");
        await Expect(page.Page.Locator(".task .reopened")).ToHaveTextAsync("Leg 1 is open again: its earlier marks no longer count.");
        await page.Visitor.PictureAsync("visit-stale");

        version = await page.VersionAsync();
        await page.Page.GetByText("Skip this step").TapAsync();
        await page.Page.GetByLabel("Reason").FillAsync("no access today");
        await page.PressAsync("Skip Leg 1");
        await page.GoneOnAsync(version);
        Assert.StartsWith("Fire one pulse: leg 2", await page.NowAsync(), StringComparison.Ordinal);
        await Expect(page.Page.Locator(".chip.skipped")).ToContainTextAsync("Leg 1");
        page.Visitor.ShouldBeQuiet();
    }

    [Fact]
    public async Task A_photo_whose_upload_breaks_off_is_sent_again_and_outlives_a_reload()
    {
        await using PracticePage page = new(site, await site.PhoneAsync());
        await page.BeginAsync(7);
        bool cut = true;
        await page.Page.RouteAsync("**/api/photos", route => cut ? route.AbortAsync("connectionreset") : route.ContinueAsync());
        byte[] photo = await site.Client.GetByteArrayAsync($"/api{page.Address}/pulse", TestContext.Current.CancellationToken);
        await page.Page.SetInputFilesAsync("#photo", new FilePayload { Name = "IMG_2.jpg", MimeType = "image/jpeg", Buffer = photo });
        await Expect(page.Page.Locator("#photo-status")).ToContainTextAsync("No connection");

        await page.Page.ReloadAsync();
        await Expect(page.Page.Locator("#photo-status")).ToContainTextAsync("still to be sent");
        cut = false;
        await page.PressAsync("Send it again");
        await Expect(page.Page.GetByRole(AriaRole.Button, new() { Name = "Use this mark" })).ToBeVisibleAsync(new() { Timeout = Patience });

        // The photo that was measured is still there after another reload.
        await page.Page.ReloadAsync();
        int version = await page.VersionAsync();
        await page.PressAsync("Use this mark");
        await page.GoneOnAsync(version);
        Assert.Single((await page.VisitAsync()).GetProperty("events").EnumerateArray());
        page.Visitor.ShouldBeQuiet("ERR_CONNECTION_RESET");
    }

    [Fact]
    public async Task An_answer_that_is_lost_doubles_no_mark()
    {
        await using PracticePage page = new(site, await site.PhoneAsync());
        await page.BeginAsync(8);
        await page.UploadAsync();
        int lost = 0;
        await page.Page.RouteAsync("**/visits/*?handler=Mark", async route =>
        {
            if (lost++ > 0)
            {
                await route.ContinueAsync();
                return;
            }

            // It arrives and is kept; the answer does not come back.
            await route.FetchAsync(new() { MaxRedirects = 0 });
            await route.AbortAsync("connectionreset");
        });
        int version = await page.VersionAsync();
        await page.PressAsync("Use this mark");
        await page.GoneOnAsync(version);
        Assert.Equal(2, lost);
        Assert.Single((await page.VisitAsync()).GetProperty("events").EnumerateArray());
        Assert.Equal("Fire one pulse: leg 1, far station", await page.NowAsync());
        page.Visitor.ShouldBeQuiet("ERR_CONNECTION_RESET");
    }

    [Fact]
    public async Task Two_phones_see_each_other_and_what_was_meant_for_an_earlier_state_is_not_entered()
    {
        await using PracticePage first = new(site, await site.PhoneAsync());
        await using PracticePage second = new(site, await site.PhoneAsync());
        await first.BeginAsync(9);
        await second.OpenAsync(first.Address);
        int version = await second.VersionAsync();
        await first.StepAsync();

        // The second one shows it by itself.
        await second.GoneOnAsync(version);
        Assert.Equal(await first.NowAsync(), await second.NowAsync());

        // Someone who types is not interrupted, but told; and nothing typed is lost when it comes too late.
        await second.Page.GetByText("Type the mark instead").TapAsync();
        await second.Page.GetByLabel("u", new() { Exact = true }).FillAsync("1.25");
        await first.StepAsync();
        await Expect(second.Page.Locator("#changed")).ToBeVisibleAsync(new() { Timeout = Patience });
        await second.Page.GetByLabel("v", new() { Exact = true }).FillAsync("-0.5");
        await second.PressAsync("Add this mark");
        await Expect(second.Page.GetByText("has changed meanwhile")).ToBeVisibleAsync();
        await Expect(second.Page.GetByText("You had typed: u 1.25, v -0.5")).ToBeVisibleAsync();
        Assert.Equal(await first.NowAsync(), await second.NowAsync());
        Assert.Equal(2, (await first.VisitAsync()).GetProperty("events").GetArrayLength());
        second.Visitor.ShouldBeQuiet("412");
    }

    [Fact]
    public async Task Marks_are_typed_in_inches_with_a_comma_and_a_place_is_tapped()
    {
        await using PracticePage page = new(site, await site.DeskAsync());
        await page.Page.GotoAsync("/display");
        await page.Page.GetByLabel("inches").CheckAsync();
        await page.Page.GetByLabel("comma").CheckAsync();
        await page.PressAsync("Save");
        await page.BeginAsync(10);
        await page.Page.GetByText("Type the mark instead").ClickAsync();
        await page.Page.GetByLabel("u", new() { Exact = true }).FillAsync("0,1");
        await page.Page.GetByLabel("v", new() { Exact = true }).FillAsync("-1,25");
        await page.Page.GetByLabel("Uncertainty").FillAsync("0,01");
        // Beside the card of 50 mm: asked, not entered.
        await page.PressAsync("Add this mark");
        await Expect(page.Page.Locator("#typed-error")).ToContainTextAsync("lies beside the card, whose edge is 0,9843 in from its middle");
        await Expect(page.Page.GetByLabel("The mark really is there")).ToBeVisibleAsync();
        await page.Page.GetByLabel("v", new() { Exact = true }).FillAsync("-0,125");
        int version = await page.VersionAsync();
        await page.PressAsync("Add this mark");
        await page.GoneOnAsync(version);
        JsonElement mark = (await page.VisitAsync()).GetProperty("events")[0].GetProperty("event");
        Assert.Equal((2.54, -3.175, 0.254), (mark.GetProperty("u").GetDouble(), mark.GetProperty("v").GetDouble(), mark.GetProperty("uncertainty").GetDouble()));
        await Expect(page.Page.Locator(".events")).ToContainTextAsync("+0,1000");
        await Expect(page.Page.Locator(".events")).ToContainTextAsync("in");

        await page.UploadAsync();
        await page.Page.GetByText("Tap the mark").First.ClickAsync();
        await page.PressAsync("Tap the mark");
        await page.Page.Locator("#tap-spots button").First.ClickAsync();
        version = await page.VersionAsync();
        await page.PressAsync("Use this place");

        // It is shown with its values first, also after a reload; nothing is entered yet.
        await Expect(page.Page.GetByRole(AriaRole.Heading, new() { Name = "Is this the mark?" })).ToBeFocusedAsync(new() { Timeout = Patience });
        await page.Visitor.PictureAsync("visit-shown");
        await page.Page.ReloadAsync();
        Assert.Equal(version, await page.VersionAsync());
        await page.PressAsync("Use this mark");
        await page.GoneOnAsync(version);
        JsonElement tapped = (await page.VisitAsync()).GetProperty("events")[1].GetProperty("event");
        Assert.True(tapped.TryGetProperty("tap", out _) && tapped.TryGetProperty("u", out _), tapped.ToString());
        page.Visitor.ShouldBeQuiet("400", "422");
    }

    [Fact]
    public async Task What_is_entered_while_the_entry_before_is_under_way_is_told_and_not_lost()
    {
        await using PracticePage page = new(site, await site.PhoneAsync());
        await page.BeginAsync(12);
        TaskCompletionSource open = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await page.Page.RouteAsync("**/visits/*?handler=Typed", async route =>
        {
            await open.Task;
            await route.ContinueAsync();
        });
        await page.Page.GetByText("Type the mark instead").TapAsync();
        await page.Page.GetByLabel("v", new() { Exact = true }).FillAsync("0.5");
        int version = await page.VersionAsync();
        foreach (string u in (string[])["1.25", "1.5"])
        {
            await page.Page.GetByLabel("u", new() { Exact = true }).FillAsync(u);
            await page.Page.GetByRole(AriaRole.Button, new() { Name = "Add this mark" }).DispatchEventAsync("click");
        }

        await Expect(page.Page.Locator("#held")).ToContainTextAsync("still being sent. Not entered yet: u 1.5, v 0.5");
        open.SetResult();
        await page.GoneOnAsync(version);
        await Expect(page.Page.Locator("#held")).ToContainTextAsync("Not entered, because the entry before was still being sent: u 1.5, v 0.5");
        JsonElement entered = Assert.Single((await page.VisitAsync()).GetProperty("events").EnumerateArray().ToArray());
        Assert.Equal(1.25, entered.GetProperty("event").GetProperty("u").GetDouble());
        page.Visitor.ShouldBeQuiet();
    }
}
