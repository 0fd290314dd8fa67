using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Pages;

/// <summary>Times as the pages send them, before a script makes them the reader's own.</summary>
public sealed partial class TimesTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_time_and_day_of_a_page_says_that_it_is_in_utc_and_stands_where_a_script_finds_it()
    {
        JsonElement machine = await (await site.Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("Nora's cutter"))).JsonAsync();
        JsonElement visit = await (await site.Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{machine.GetProperty("id")}} }""")).JsonAsync();
        foreach (int path in (int[])[80, 480])
            (await site.Client.SendAsync(HttpMethod.Post, $"/api/visits/{visit.GetProperty("id")}/events", $$"""{ "kind": "mark", "leg": "1", "path": {{path}}, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""", ("Idempotency-Key", "a" + path), ("If-Match", "*"))).Dispose();
        using MultipartFormDataContent form = Forms.Aim();
        JsonElement aim = await (await site.Client.PostAsync("/api/aims", form, Cancellation)).JsonAsync();
        string history = $"/machines/{machine.GetProperty("id")}/history";
        foreach (string address in (string[])["/", "/results", $"/results/{aim.GetProperty("id")}", "/visits", $"/visits/{visit.GetProperty("id")}", "/machines", history])
        {
            string page = await site.Client.GetStringAsync(address, Cancellation);
            string[] times = [.. Time().Matches(page).Select(t => t.Groups[1].Value)];
            Assert.True(times.Length > 0, $"{address} has no time");
            Assert.All(times, t => Assert.EndsWith(" UTC", t, StringComparison.Ordinal));
            if (address != history)
                Assert.DoesNotMatch(Day(), Time().Replace(page, ""));
        }

        // Sentences and charts have days of the computer's clock; the page says whose they are.
        Assert.Matches(@"by the clock of the computer that runs this program \(UTC", await site.Client.GetStringAsync(history, Cancellation));
    }

    [GeneratedRegex("<time data-local=\"(?:moment|clock|day)\" datetime=\"20[0-9-]+T[0-9:]+Z\">([^<]*)</time>")]
    private static partial Regex Time();

    [GeneratedRegex(@"20\d\d-\d\d-\d\d")]
    private static partial Regex Day();
}
