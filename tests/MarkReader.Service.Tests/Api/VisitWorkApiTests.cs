using System.Net;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

/// <summary>What a visit's pages do beside adding events, through the interface alone.</summary>
public sealed class VisitWorkApiTests(Site site) : IClassFixture<Site>
{
    private const string Near = """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""";
    private const string Far = """{ "kind": "mark", "leg": "1", "path": 480, "u": 2.4, "v": 1.4, "uncertainty": 0.05 }""";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task A_beginning_that_is_repeated_with_its_key_begins_no_second_visit()
    {
        (string, string) key = ("Idempotency-Key", "begin-" + Guid.NewGuid().ToString("N"));
        string machine = await MachineAsync(key);
        Assert.Equal(machine, await MachineAsync(key));
        string body = $$"""{ "machine": {{machine}}, "doneBy": "A. Turner" }""";
        JsonElement first = await (await Client.SendAsync(HttpMethod.Post, "/api/visits", body, key)).JsonAsync();
        JsonElement again = await (await Client.SendAsync(HttpMethod.Post, "/api/visits", body, key)).JsonAsync();
        Assert.Equal(first.GetProperty("id").GetInt64(), again.GetProperty("id").GetInt64());
        Assert.Equal("A. Turner", again.Text("doneBy"));
        JsonElement list = await (await Client.GetAsync($"/api/visits?machine={machine}", Cancellation)).JsonAsync();
        Assert.Single(list.GetProperty("visits").EnumerateArray());
        await (await Client.SendAsync(HttpMethod.Post, "/api/visits", """{ "practice": { "seed": 1 } }""", key)).ProblemAsync(HttpStatusCode.UnprocessableEntity, "IDEMPOTENCY_KEY_REUSED");
    }

    [Fact]
    public async Task An_earlier_event_is_taken_back_and_the_later_ones_stay()
    {
        string address = await BeginAsync();
        foreach ((string e, string key) in new[] { (Near, "a"), (Far, "b"), (Far, "c") })
            (await Client.SendAsync(HttpMethod.Post, address + "/events", e, ("Idempotency-Key", key))).Dispose();
        JsonElement visit = await (await Client.SendAsync(HttpMethod.Delete, address + "/events/2", null, ("If-Match", "\"4\""))).JsonAsync();
        Assert.Equal([1, 3], visit.GetProperty("events").EnumerateArray().Select(e => e.GetProperty("number").GetInt32()));
        await (await Client.SendAsync(HttpMethod.Delete, address + "/events/2", null, ("If-Match", "*"))).ProblemAsync(HttpStatusCode.NotFound, "EVENT_UNKNOWN");
        await (await Client.SendAsync(HttpMethod.Delete, address + "/events/1", null, ("If-Match", "\"4\""))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        await (await Client.SendAsync(HttpMethod.Delete, address + "/events/1", null)).ProblemAsync(HttpStatusCode.PreconditionRequired, "IF_MATCH_MISSING");
    }

    [Fact]
    public async Task A_visit_that_has_not_changed_is_told_so_in_few_bytes()
    {
        string address = await BeginAsync();
        using HttpResponseMessage same = await Client.SendAsync(HttpMethod.Get, address, null, ("If-None-Match", "\"1\""));
        Assert.Equal((HttpStatusCode.NotModified, 0), (same.StatusCode, (await same.Content.ReadAsByteArrayAsync(Cancellation)).Length));
        (await Client.SendAsync(HttpMethod.Post, address + "/events", Near, ("Idempotency-Key", "a"))).Dispose();
        using HttpResponseMessage changed = await Client.SendAsync(HttpMethod.Get, address, null, ("If-None-Match", "\"1\""));
        Assert.Equal((HttpStatusCode.OK, "\"2\""), (changed.StatusCode, changed.Headers.ETag?.Tag));
    }

    [Fact]
    public async Task Note_and_name_are_changed_and_a_visit_is_deleted_at_its_version_only()
    {
        string address = await BeginAsync();
        JsonElement changed = await (await Client.SendAsync(HttpMethod.Put, address + "/words", """{ "note": "new tube", "doneBy": "B" }""", ("If-Match", "\"1\""))).JsonAsync();
        Assert.Equal(("new tube", "B", 2), (changed.Text("note"), changed.Text("doneBy"), changed.GetProperty("version").GetInt32()));
        await (await Client.SendAsync(HttpMethod.Put, address + "/words", """{ "note": "\u0007" }""", ("If-Match", "*"))).ProblemAsync(HttpStatusCode.BadRequest, "VISIT_BEGINNING_UNREADABLE");
        await (await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", "\"1\""))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        using HttpResponseMessage gone = await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", "\"2\""));
        Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        await (await Client.GetAsync(address, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task A_practice_pulse_gives_the_same_photo_until_the_visit_goes_on()
    {
        JsonElement visit = await (await Client.SendAsync(HttpMethod.Post, "/api/visits", """{ "practice": { "seed": 6 } }""")).JsonAsync();
        string address = $"/api/visits/{visit.GetProperty("id").GetInt64()}";
        byte[] photo = await Client.GetByteArrayAsync(address + "/pulse", Cancellation);
        Assert.Equal(photo, await Client.GetByteArrayAsync(address + "/pulse", Cancellation));

        using MultipartFormDataContent form = Forms.Form(("photo", photo));
        JsonElement sent = await (await Client.PostAsync("/api/photos", form, Cancellation)).JsonAsync();
        JsonElement mark = sent.GetProperty("measurement").GetProperty("marks")[0];
        JsonElement action = visit.GetProperty("advice").GetProperty("action");
        object tap = new { kind = "mark", leg = action.Text("leg"), path = action.GetProperty("path").GetDouble(), photo = sent.Text("id"), tap = new { x = mark.GetProperty("x").GetDouble(), y = mark.GetProperty("y").GetDouble() } };
        JsonElement added = (await (await Client.SendAsync(HttpMethod.Post, address + "/events", JsonSerializer.Serialize(tap), ("Idempotency-Key", "a"))).JsonAsync()).GetProperty("event");
        Assert.Equal(mark.GetProperty("u").GetDouble(), added.GetProperty("u").GetDouble(), 3);
        Assert.NotEqual(photo, await Client.GetByteArrayAsync(address + "/pulse", Cancellation));

        string off = JsonSerializer.Serialize(new { kind = "mark", leg = "1", path = 80, photo = sent.Text("id"), tap = new { x = 1, y = 1 } });
        await (await Client.SendAsync(HttpMethod.Post, address + "/events", off, ("Idempotency-Key", "b"))).ProblemAsync(HttpStatusCode.BadRequest, "TAP_OUTSIDE_ZONE");
        await (await Client.GetAsync((await BeginAsync()) + "/pulse", Cancellation)).ProblemAsync(HttpStatusCode.Conflict, "NOT_PRACTICE");
    }

    private async Task<string> MachineAsync(params (string, string)[] headers) =>
        (await (await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("press"), headers)).JsonAsync()).GetProperty("id").GetRawText();

    private async Task<string> BeginAsync()
    {
        using HttpResponseMessage begun = await Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{await MachineAsync()}} }""");
        return begun.Headers.Location!.ToString();
    }
}
