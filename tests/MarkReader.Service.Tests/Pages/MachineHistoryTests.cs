using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Service.Tests.Support;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Pages;

/// <summary>A machine with four visits: what its history says on the page and through the interface.</summary>
public sealed class MachineHistoryTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Theory]
    [InlineData(360)]
    [InlineData(768)]
    [InlineData(1280)]
    public async Task A_drift_is_told_first_then_shown_and_an_overdue_visit_is_said_wherever_machines_stand(int width)
    {
        long id = await VisitedAsync($"drifts {width}");
        await using Visit visit = width == 1280 ? await site.DeskAsync() : await site.PhoneAsync(width, dark: width == 768);
        IPage page = visit.Page;
        await page.GotoAsync("/machines");
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new($"drifts {width}.*Overdue: a visit was due on 2020-0") })).ToBeVisibleAsync();
        await page.ShouldFitAsync();
        await page.ShouldBeAccessibleAsync();
        await visit.PictureAsync($"machines-overdue-{width}");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new($"^History.*drifts {width}$") }).ClickAsync();

        await Expect(page.Locator(".findings li").First).ToContainTextAsync("Leg 1's slope is steady: over 4 visits");
        await Expect(page.Locator(".findings li").Nth(1)).ToContainTextAsync("Leg 2's slope is drifting: about 0.8");
        await Expect(page.GetByText("Overdue: a visit was due on 2020-0")).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("Leg 2: slope.*2020-02") })).ToBeVisibleAsync();
        await page.WaitForLoadStateAsync();
        Assert.True(await page.EvaluateAsync<bool>("() => [...document.images].every(image => image.complete && image.naturalWidth > 0)"));
        Assert.Equal(4, await page.Locator("table.history").Nth(1).Locator("tbody tr").CountAsync());
        await page.ShouldFitAsync();
        await page.ShouldBeAccessibleAsync();
        await visit.PictureAsync($"history-{width}");

        await page.GotoAsync($"/machines/{id}");
        await page.GetByRole(AriaRole.Link, new() { Name = "History", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Begin a visit" }).ClickAsync();
        await Expect(page.Locator("#machine option:checked")).ToHaveTextAsync($"drifts {width} (visit overdue)");
        visit.ShouldBeQuiet();
    }

    [Fact]
    public async Task The_interface_gives_numbers_sentences_and_charts()
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        long id = await VisitedAsync("by interface");
        JsonElement history = await (await site.Client.GetAsync($"/api/machines/{id}/history", stop)).JsonAsync();
        Assert.True(history.GetProperty("reminder").GetProperty("isOverdue").GetBoolean());
        JsonElement slope = history.GetProperty("quantities")[1];
        Assert.Equal(("slope-2", "mrad", "drifting"), (slope.Text("name"), slope.Text("unit"), slope.Text("verdict")));
        Assert.InRange(slope.GetProperty("rate").GetProperty("value").GetDouble(), 0.75, 0.9);
        Assert.Equal(4, slope.GetProperty("points").GetArrayLength());
        Assert.StartsWith("<svg", await site.Client.GetStringAsync(slope.Text("svg"), stop), StringComparison.Ordinal);
        Assert.Equal("image/png", (await site.Client.GetAsync(slope.Text("png"), stop)).Content.Headers.ContentType!.MediaType);
        await (await site.Client.GetAsync($"/api/machines/{id}/history/slope-9.svg", stop)).ProblemAsync(HttpStatusCode.NotFound, "NOT_FOUND");
        await (await site.Client.GetAsync("/api/machines/9999/history", stop)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        Assert.Equal(HttpStatusCode.NotFound, (await site.Client.GetAsync("/machines/9999/history", stop)).StatusCode);
    }

    [Fact]
    public async Task A_machine_without_visits_says_how_its_history_begins()
    {
        long id = await AddAsync("new");
        string page = await site.Client.GetStringAsync($"/machines/{id}/history", TestContext.Current.CancellationToken);
        Assert.Contains("Its history begins with two.", page, StringComparison.Ordinal);
    }

    private async Task<long> AddAsync(string name)
    {
        string machine = Machines.Named(name).Replace("\"legs\"", "\"remindDays\": 60, \"legs\"", StringComparison.Ordinal).Replace("\"incidenceDegrees\": 45", "\"incidenceDegrees\": 0", StringComparison.Ordinal);
        return (await (await site.Client.SendAsync(HttpMethod.Post, "/api/machines", machine)).JsonAsync()).GetProperty("id").GetInt64();
    }

    // Leg 1 stays, leg 2 drifts by 0.8 mrad in 30 days; nobody turns a screw.
    private async Task<long> VisitedAsync(string name)
    {
        long id = await AddAsync(name);
        Database database = site.Services.GetRequiredService<Database>();
        for (int i = 0; i < 4; i++)
        {
            VisitStore visits = new(database, new FixedClock(new DateTimeOffset(2020, 1, 5, 12, 0, 0, TimeSpan.Zero).AddDays(30 * i)));
            VisitDesk desk = new(visits, site.Services.GetRequiredService<PhotoStore>(), site.Services.GetRequiredService<CameraStore>());
            long visit = visits.Begin(new(id, "")).ValueOrThrow().Entry.Id;
            foreach ((string leg, int path, double slope) in new[] { ("1", 80, 0.1), ("1", 480, 0.1), ("2", 60, 0.8 * i), ("2", 560, 0.8 * i) })
            {
                string mark = string.Create(CultureInfo.InvariantCulture, $$"""{ "kind": "mark", "leg": "{{leg}}", "path": {{path}}, "u": {{slope * path / 1000}}, "v": 0.1, "uncertainty": 0.05 }""");
                desk.Append(visit, Encoding.UTF8.GetBytes(mark), Guid.NewGuid().ToString("N"), ExpectedVersion.Any).ValueOrThrow();
            }
        }

        return id;
    }

    private sealed class FixedClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
