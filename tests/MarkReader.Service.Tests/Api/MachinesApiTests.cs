using System.Net;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class MachinesApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task A_machine_is_kept_and_given_back_with_its_version_as_the_tag()
    {
        using HttpResponseMessage sent = await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("press"));
        Assert.Equal(HttpStatusCode.Created, sent.StatusCode);
        JsonElement added = await sent.JsonAsync();
        Assert.Equal(("press", 1), (added.Text("name"), added.GetProperty("version").GetInt64()));
        Assert.Empty(added.GetProperty("warnings").EnumerateArray());
        Assert.Equal("\"1\"", sent.Headers.ETag?.Tag);

        using HttpResponseMessage got = await Client.GetAsync(sent.Headers.Location, Cancellation);
        Assert.Equal("\"1\"", got.Headers.ETag?.Tag);
        Assert.True(JsonElement.DeepEquals(JsonSerializer.Deserialize<JsonElement>(Machines.Named("press")), (await got.JsonAsync()).GetProperty("machine")));
        Assert.Equal(Machines.Named("press"), await Client.GetStringAsync(added.Text("file"), Cancellation));
    }

    [Fact]
    public async Task What_one_service_gives_another_takes_as_it_is()
    {
        JsonElement added = await (await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("from here"))).JsonAsync();
        string file = await Client.GetStringAsync(added.Text("file"), Cancellation);
        await using Site other = new();
        JsonElement there = await (await other.Client.SendAsync(HttpMethod.Post, "/api/machines", file)).JsonAsync();
        Assert.Equal(file, await other.Client.GetStringAsync(there.Text("file"), Cancellation));
    }

    [Fact]
    public async Task Of_two_clients_with_one_tag_the_second_is_refused()
    {
        using HttpResponseMessage sent = await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("a"));
        string address = sent.Headers.Location!.ToString(), tag = sent.Headers.ETag!.Tag;
        using HttpResponseMessage first = await Client.SendAsync(HttpMethod.Put, address, Machines.Named("b"), ("If-Match", tag));
        Assert.Equal((HttpStatusCode.OK, "\"2\""), (first.StatusCode, first.Headers.ETag?.Tag));

        await (await Client.SendAsync(HttpMethod.Put, address, Machines.Named("c"), ("If-Match", tag))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        await (await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", tag))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");

        Assert.Equal("b", (await (await Client.GetAsync(address, Cancellation)).JsonAsync()).Text("name"));
        using HttpResponseMessage gone = await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", "\"7\", \"2\""));
        Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        await (await Client.GetAsync(address, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Theory]
    [InlineData(null, HttpStatusCode.PreconditionRequired, "IF_MATCH_MISSING")]
    [InlineData("W/\"1\"", HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE")]
    [InlineData("1", HttpStatusCode.BadRequest, "IF_MATCH_INVALID")]
    [InlineData("\"1\", \"2", HttpStatusCode.BadRequest, "IF_MATCH_INVALID")]
    [InlineData("\"-1\"", HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE")]
    [InlineData("\"99999999999999999999\"", HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE")]
    public async Task A_change_without_a_tag_of_ours_is_refused(string? tag, HttpStatusCode status, string code)
    {
        using HttpResponseMessage sent = await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("a"));
        (string, string)[] headers = tag is null ? [] : [("If-Match", tag)];
        await (await Client.SendAsync(HttpMethod.Put, sent.Headers.Location!.ToString(), Machines.Named("b"), headers)).ProblemAsync(status, code);
        await (await Client.SendAsync(HttpMethod.Delete, sent.Headers.Location!.ToString(), null, headers)).ProblemAsync(status, code);
    }

    [Fact]
    public async Task A_field_that_is_not_known_is_told()
    {
        JsonElement added = await (await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("a").Replace("washers", "washer", StringComparison.Ordinal))).JsonAsync();
        JsonElement warning = Assert.Single(added.GetProperty("warnings").EnumerateArray());
        Assert.Equal("fieldIgnored", warning.Text("code"));
        Assert.Contains("'washer'", warning.Text("message"), StringComparison.Ordinal);
        JsonElement kept = await (await Client.GetAsync("/api/machines/" + added.GetProperty("id"), Cancellation)).JsonAsync();
        Assert.True(JsonElement.DeepEquals(added.GetProperty("warnings"), kept.GetProperty("warnings")));
    }

    [Fact]
    public async Task The_same_document_sent_again_is_told_and_a_repeated_request_is_not()
    {
        string document = Machines.Named("twice");
        JsonElement first = await (await Client.SendAsync(HttpMethod.Post, "/api/machines", document, ("Idempotency-Key", "one"))).JsonAsync();
        JsonElement again = await (await Client.SendAsync(HttpMethod.Post, "/api/machines", document, ("Idempotency-Key", "one"))).JsonAsync();
        Assert.Empty(again.GetProperty("warnings").EnumerateArray());
        JsonElement second = await (await Client.SendAsync(HttpMethod.Post, "/api/machines", document + "\n")).JsonAsync();
        JsonElement warning = Assert.Single(second.GetProperty("warnings").EnumerateArray());
        Assert.Equal("machineKnown", warning.Text("code"));
        Assert.StartsWith($"Machine {first.GetProperty("id")}, twice, ", warning.Text("message"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "MACHINE_UNREADABLE")]
    [InlineData("{", "MACHINE_UNREADABLE")]
    [InlineData("[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]", "MACHINE_UNREADABLE")]
    [InlineData("""{ "legs": [ { "name": "\ud800" } ] }""", "MACHINE_UNREADABLE")]
    [InlineData("""{ "legs": [] }""", "VISIT_LEGS_INVALID")]
    public async Task A_document_that_cannot_be_used_is_refused_and_not_kept(string json, string code)
    {
        await (await Client.SendAsync(HttpMethod.Post, "/api/machines", json)).ProblemAsync(HttpStatusCode.BadRequest, code);
        using HttpResponseMessage sent = await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("kept"));
        string address = sent.Headers.Location!.ToString();
        await (await Client.SendAsync(HttpMethod.Put, address, json, ("If-Match", "\"1\""))).ProblemAsync(HttpStatusCode.BadRequest, code);
        Assert.Equal(1, (await (await Client.GetAsync(address, Cancellation)).JsonAsync()).GetProperty("version").GetInt64());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_document_beyond_64_KB_is_refused_whether_its_length_is_told_or_not(bool told)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/machines") { Content = new StringContent(Machines.Named(new('x', 70_000)), null, "application/json") };
        request.Headers.TransferEncodingChunked = !told;
        await (await Client.SendAsync(request, Cancellation)).ProblemAsync(HttpStatusCode.RequestEntityTooLarge, "REQUEST_TOO_LARGE");
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData(null)]
    public async Task What_does_not_say_that_it_is_JSON_is_refused(string? type)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/machines") { Content = new StringContent(Machines.Named("a")) };
        request.Content.Headers.ContentType = type is null ? null : new(type);
        await (await Client.SendAsync(request, Cancellation)).ProblemAsync(HttpStatusCode.UnsupportedMediaType, "MEDIA_TYPE_NOT_TAKEN");
    }

    [Fact]
    public async Task The_list_is_given_newest_first_in_pages_that_lead_to_each_other()
    {
        for (int i = 0; i < 3; i++)
            (await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("listed"))).Dispose();
        List<long> seen = [];
        string? next = "/api/machines?limit=2";
        while (next is not null)
        {
            JsonElement page = await (await Client.GetAsync(next, Cancellation)).JsonAsync();
            Assert.InRange(page.GetProperty("machines").GetArrayLength(), 1, 2);
            seen.AddRange(page.GetProperty("machines").EnumerateArray().Select(m => m.GetProperty("id").GetInt64()));
            next = page.GetProperty("next").GetString();
        }

        Assert.True(seen.Count >= 3);
        Assert.Equal(seen.OrderDescending(), seen);
        Assert.Equal(seen.Count, seen.Distinct().Count());
        Assert.Single((await (await Client.GetAsync("/api/machines?limit=-3", Cancellation)).JsonAsync()).GetProperty("machines").EnumerateArray());
    }

    [Theory]
    [InlineData("/api/machines?limit=many")]
    [InlineData("/api/machines?before=99999999999999999999")]
    public async Task A_page_that_cannot_be_read_is_refused(string address) =>
        await (await Client.GetAsync(address, Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "REQUEST_UNREADABLE");

    [Fact]
    public async Task Every_preset_can_be_kept_as_it_is()
    {
        JsonElement presets = (await (await Client.GetAsync("/api/machines/presets", Cancellation)).JsonAsync()).GetProperty("presets");
        Assert.Equal(3, presets.GetArrayLength());
        foreach (JsonElement preset in presets.EnumerateArray())
        {
            JsonElement added = await (await Client.SendAsync(HttpMethod.Post, "/api/machines", preset.GetProperty("machine").GetRawText())).JsonAsync();
            Assert.Equal(preset.Text("name"), added.Text("name"));
        }
    }
}
