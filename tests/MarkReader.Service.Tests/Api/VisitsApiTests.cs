using System.Net;
using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class VisitsApiTests(Site site) : IClassFixture<Site>
{
    private const string Near = """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""";
    private const string Far = """{ "kind": "mark", "leg": "1", "path": 480, "u": 2.4, "v": 1.4, "uncertainty": 0.05 }""";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task A_visit_begins_with_a_copy_of_the_machine_and_its_first_action()
    {
        using HttpResponseMessage begun = await BeginAsync(Client, "after the move");
        Assert.Equal((HttpStatusCode.Created, "\"1\""), (begun.StatusCode, begun.Headers.ETag?.Tag));
        JsonElement visit = await begun.JsonAsync();
        Assert.Equal(("press", "after the move", 1), (visit.Text("machineName"), visit.Text("note"), visit.GetProperty("version").GetInt64()));
        Assert.Equal(("fire", 80), (visit.GetProperty("advice").GetProperty("action").Text("kind"), visit.GetProperty("advice").GetProperty("action").GetProperty("path").GetDouble()));
        Assert.True(JsonElement.DeepEquals(JsonSerializer.Deserialize<JsonElement>(Machines.Named("press")), visit.GetProperty("machine")));
        Assert.True(JsonElement.DeepEquals(visit, await (await Client.GetAsync(begun.Headers.Location, Cancellation)).JsonAsync()));
    }

    [Fact]
    public async Task The_advice_is_what_advise_says_to_the_exported_file()
    {
        string address = await BeginAsync();
        foreach (string e in new[] { Near, Far, """{ "kind": "turn", "leg": "1", "screw": "A", "turns": 0.125 }""" })
        {
            using HttpResponseMessage added = await AddAsync(address, e, Guid.NewGuid().ToString());
            Assert.Equal(HttpStatusCode.Created, added.StatusCode);
            JsonElement visit = await (await Client.GetAsync(address, Cancellation)).JsonAsync();
            byte[] file = await Client.GetByteArrayAsync(visit.Text("file"), Cancellation);
            JsonElement advised = JsonSerializer.Deserialize<JsonElement>(ReportJson.Write(VisitReport.From(AdviseVisit.Run(file).ValueOrThrow())));
            Assert.True(JsonElement.DeepEquals(advised, visit.GetProperty("advice")), visit.GetProperty("advice").ToString());
            Assert.True(JsonElement.DeepEquals(advised, (await added.JsonAsync()).GetProperty("advice")));
        }
    }

    [Fact]
    public async Task A_field_of_an_event_that_is_not_known_is_told_with_the_answer()
    {
        string address = await BeginAsync();
        JsonElement added = await (await AddAsync(address, Near.Replace("\"uncertainty\"", "\"gain\": 2, \"uncertainty\"", StringComparison.Ordinal), "a")).JsonAsync();
        JsonElement warning = Assert.Single(added.GetProperty("warnings").EnumerateArray());
        Assert.Equal("fieldIgnored", warning.Text("code"));
        Assert.Contains("'gain'", warning.Text("message"), StringComparison.Ordinal);
        Assert.Empty((await (await AddAsync(address, Far, "b")).JsonAsync()).GetProperty("warnings").EnumerateArray());
    }

    [Fact]
    public async Task Of_two_phones_with_one_tag_the_second_is_refused_and_a_repeated_request_is_not()
    {
        string address = await BeginAsync();
        using HttpResponseMessage first = await AddAsync(address, Near, "one", ("If-Match", "\"1\""));
        Assert.Equal("\"2\"", first.Headers.ETag?.Tag);
        await (await AddAsync(address, Near, "two", ("If-Match", "\"1\""))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        using HttpResponseMessage third = await AddAsync(address, Far, "three", ("If-Match", "\"2\""));
        Assert.Equal("\"3\"", third.Headers.ETag?.Tag);

        using HttpResponseMessage again = await AddAsync(address, Near, "one", ("If-Match", "\"1\""));

        Assert.Equal((first.StatusCode, first.Headers.ETag), (again.StatusCode, again.Headers.ETag));
        Assert.Equal(await first.Content.ReadAsStringAsync(Cancellation), await again.Content.ReadAsStringAsync(Cancellation));
        JsonElement visit = await (await Client.GetAsync(address, Cancellation)).JsonAsync();
        Assert.Equal([0.4, 2.4], visit.GetProperty("events").EnumerateArray().Select(e => e.GetProperty("event").GetProperty("u").GetDouble()));
        await (await AddAsync(address, Far, "one")).ProblemAsync(HttpStatusCode.UnprocessableEntity, "IDEMPOTENCY_KEY_REUSED");
        await (await Client.SendAsync(HttpMethod.Post, address + "/events", Near)).ProblemAsync(HttpStatusCode.BadRequest, "IDEMPOTENCY_KEY_INVALID");
    }

    [Fact]
    public async Task The_last_event_is_taken_back_once_and_stays_in_the_record()
    {
        string address = await BeginAsync();
        (await AddAsync(address, Near, "a")).Dispose();
        (await AddAsync(address, Far, "b")).Dispose();
        await (await Client.SendAsync(HttpMethod.Delete, address + "/events/last", null)).ProblemAsync(HttpStatusCode.PreconditionRequired, "IF_MATCH_MISSING");
        using HttpResponseMessage back = await Client.SendAsync(HttpMethod.Delete, address + "/events/last", null, ("If-Match", "\"3\""));
        JsonElement visit = await back.JsonAsync();
        Assert.Equal((HttpStatusCode.OK, "\"4\""), (back.StatusCode, back.Headers.ETag?.Tag));
        Assert.Equal(1, Assert.Single(visit.GetProperty("events").EnumerateArray()).GetProperty("number").GetInt32());
        Assert.Equal(2, Assert.Single(visit.GetProperty("takenBack").EnumerateArray()).GetProperty("number").GetInt32());
        await (await Client.SendAsync(HttpMethod.Delete, address + "/events/last", null, ("If-Match", "\"3\""))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        using HttpResponseMessage more = await Client.SendAsync(HttpMethod.Delete, address + "/events/last", null, ("If-Match", "*"));
        Assert.Equal(HttpStatusCode.OK, more.StatusCode);
        await (await Client.SendAsync(HttpMethod.Delete, address + "/events/last", null, ("If-Match", "*"))).ProblemAsync(HttpStatusCode.Conflict, "NOTHING_TO_TAKE_BACK");
    }

    [Fact]
    public async Task A_visit_outlives_a_restart_and_a_request_repeated_after_it_adds_nothing()
    {
        string data = Path.Combine(Path.GetTempPath(), "markreader-visit-" + Guid.NewGuid().ToString("N"));
        try
        {
            string address, step, before;
            await using (Site first = new(data))
            {
                using HttpResponseMessage begun = await BeginAsync(first.Client, "");
                address = begun.Headers.Location!.ToString();
                step = await (await first.Client.SendAsync(HttpMethod.Post, address + "/events", Near, ("Idempotency-Key", "k"))).Content.ReadAsStringAsync(Cancellation);
                before = await first.Client.GetStringAsync(address, Cancellation);
            }

            await using Site second = new(data);
            Assert.Equal(before, await second.Client.GetStringAsync(address, Cancellation));
            using HttpResponseMessage again = await second.Client.SendAsync(HttpMethod.Post, address + "/events", Near, ("Idempotency-Key", "k"));
            Assert.Equal(step, await again.Content.ReadAsStringAsync(Cancellation));
            Assert.Equal(before, await second.Client.GetStringAsync(address, Cancellation));
        }
        finally
        {
            Directory.Delete(data, recursive: true);
        }
    }

    [Fact]
    public async Task A_mark_is_taken_from_a_photo_that_was_sent()
    {
        using MultipartFormDataContent form = Forms.Form(("photo", Photos.Near));
        JsonElement photo = await (await Client.PostAsync("/api/photos", form, Cancellation)).JsonAsync();
        JsonElement measured = photo.GetProperty("measurement").GetProperty("marks")[0];
        string address = await BeginAsync();
        string sent = JsonSerializer.Serialize(new { kind = "mark", leg = "1", path = 80, photo = photo.Text("id"), mark = 0 });

        using HttpResponseMessage added = await AddAsync(address, sent, "a");

        JsonElement kept = (await added.JsonAsync()).GetProperty("event");
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        Assert.All(["u", "v"], name => Assert.True(JsonElement.DeepEquals(measured.GetProperty(name), kept.GetProperty(name)), kept.ToString()));
        // The usual scatter from pulse to pulse, 0.05 mm, is added: a photo does not show it.
        Assert.Equal(measured.GetProperty("covariance")[0][0].GetDouble() + 0.0025, kept.GetProperty("covariance")[0][0].GetDouble(), 12);
        await (await Client.DeleteAsync("/api/photos/" + photo.Text("id"), Cancellation)).ProblemAsync(HttpStatusCode.Conflict, "PHOTO_IN_USE");
        // One burnt mark is not two marks.
        await (await AddAsync(address, sent.Replace("80", "480", StringComparison.Ordinal), "b")).ProblemAsync(HttpStatusCode.Conflict, "PHOTO_MARK_USED");
    }

    [Theory]
    [InlineData("{", "VISIT_BEGINNING_UNREADABLE", HttpStatusCode.BadRequest)]
    [InlineData("{}", "VISIT_BEGINNING_UNREADABLE", HttpStatusCode.BadRequest)]
    [InlineData("""{ "machine": "1" }""", "VISIT_BEGINNING_UNREADABLE", HttpStatusCode.BadRequest)]
    [InlineData("""{ "machine": 1.5 }""", "VISIT_BEGINNING_UNREADABLE", HttpStatusCode.BadRequest)]
    [InlineData("""{ "machine": 1e300 }""", "VISIT_BEGINNING_UNREADABLE", HttpStatusCode.BadRequest)]
    [InlineData("""{ "machine": 1, "note": "\u0007" }""", "VISIT_BEGINNING_UNREADABLE", HttpStatusCode.BadRequest)]
    [InlineData("""{ "machine": 999999 }""", "NOT_KEPT", HttpStatusCode.NotFound)]
    public async Task A_visit_that_cannot_begin_is_refused(string json, string code, HttpStatusCode status) =>
        await (await Client.SendAsync(HttpMethod.Post, "/api/visits", json)).ProblemAsync(status, code);

    [Fact]
    public async Task Requests_that_are_too_large_or_for_no_visit_are_refused()
    {
        string address = await BeginAsync();
        await (await AddAsync(address, $$"""{ "kind": "disturbed", "leg": "1", "note": "{{new string('x', 5000)}}" }""", "a")).ProblemAsync(HttpStatusCode.RequestEntityTooLarge, "REQUEST_TOO_LARGE");
        await (await Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": 1, "note": "{{new string('x', 5000)}}" }""")).ProblemAsync(HttpStatusCode.RequestEntityTooLarge, "REQUEST_TOO_LARGE");
        await (await AddAsync("/api/visits/999999", Near, "a")).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        foreach (string none in (string[])["/api/visits/999999", "/api/visits/999999/file"])
            await (await Client.GetAsync(none, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task The_list_is_given_newest_first_in_pages_that_lead_to_each_other()
    {
        for (int i = 0; i < 3; i++)
            await BeginAsync();
        List<long> seen = [];
        string? next = "/api/visits?limit=2";
        while (next is not null)
        {
            JsonElement page = await (await Client.GetAsync(next, Cancellation)).JsonAsync();
            Assert.InRange(page.GetProperty("visits").GetArrayLength(), 1, 2);
            seen.AddRange(page.GetProperty("visits").EnumerateArray().Select(v => v.GetProperty("id").GetInt64()));
            next = page.GetProperty("next").GetString();
        }

        Assert.True(seen.Count >= 3);
        Assert.Equal(seen.OrderDescending(), seen);
        Assert.Equal(seen.Count, seen.Distinct().Count());
    }

    private async Task<string> BeginAsync()
    {
        using HttpResponseMessage begun = await BeginAsync(Client, "");
        return begun.Headers.Location!.ToString();
    }

    private static async Task<HttpResponseMessage> BeginAsync(HttpClient client, string note)
    {
        JsonElement machine = await (await client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("press"))).JsonAsync();
        return await client.SendAsync(HttpMethod.Post, "/api/visits", JsonSerializer.Serialize(new { machine = machine.GetProperty("id").GetInt64(), note }));
    }

    private Task<HttpResponseMessage> AddAsync(string visit, string e, string key, params (string, string)[] headers) =>
        Client.SendAsync(HttpMethod.Post, visit + "/events", e, [("Idempotency-Key", key), .. headers]);
}
