using System.Net;
using System.Text.Json;
using System.Xml.Linq;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class VisitPicturesApiTests(Site site) : IClassFixture<Site>
{
    private const string Near = """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""";
    private const string Far = """{ "kind": "mark", "leg": "1", "path": 480, "u": 2.4, "v": 1.4, "uncertainty": 0.05 }""";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task Pictures_are_listed_with_their_words_and_given_as_svg_and_png()
    {
        string visit = await BeginAsync(Near, Far);
        using HttpResponseMessage listed = await Client.GetAsync(visit + "/pictures", Cancellation);
        Assert.Equal((HttpStatusCode.OK, "\"3\""), (listed.StatusCode, listed.Headers.ETag?.Tag));
        JsonElement[] pictures = [.. (await listed.JsonAsync()).GetProperty("pictures").EnumerateArray()];
        Assert.Equal(["target-1", "screw", "budget-1"], pictures.Select(p => p.Text("name")));
        foreach (JsonElement picture in pictures)
        {
            Assert.NotEmpty(picture.Text("description"));
            using HttpResponseMessage svg = await Client.GetAsync(picture.Text("svg"), Cancellation);
            Assert.Equal(("image/svg+xml", "\"3\""), (svg.Content.Headers.ContentType?.MediaType, svg.Headers.ETag?.Tag));
            Assert.Equal("svg", XElement.Parse(await svg.Content.ReadAsStringAsync(Cancellation)).Name.LocalName);
            using HttpResponseMessage png = await Client.GetAsync(picture.Text("png"), Cancellation);
            Assert.Equal("image/png", png.Content.Headers.ContentType?.MediaType);
            byte[] bytes = await png.Content.ReadAsByteArrayAsync(Cancellation);
            // The width in a PNG's header, big-endian, behind signature, length and name.
            Assert.Equal(3 * picture.GetProperty("width").GetDouble(), (bytes[18] << 8) | bytes[19]);
        }
    }

    [Fact]
    public async Task An_unchanged_picture_is_not_sent_again_and_a_further_event_changes_its_tag()
    {
        string visit = await BeginAsync(Near);
        string address = visit + "/pictures/target-1.svg";
        using HttpResponseMessage first = await Client.GetAsync(address, Cancellation);
        using HttpResponseMessage again = await Client.SendAsync(HttpMethod.Get, address, null, ("If-None-Match", first.Headers.ETag!.Tag));
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        await AddAsync(visit, Far);
        using HttpResponseMessage changed = await Client.SendAsync(HttpMethod.Get, address, null, ("If-None-Match", first.Headers.ETag!.Tag));
        Assert.Equal((HttpStatusCode.OK, "\"3\""), (changed.StatusCode, changed.Headers.ETag?.Tag));
    }

    [Theory]
    [InlineData("aperture.svg")]
    [InlineData("target-1.pdf")]
    [InlineData("target-1")]
    [InlineData("x")]
    [InlineData("before-target-1.png")]
    public async Task A_picture_that_is_not_there_is_not_found(string file)
    {
        string visit = await BeginAsync(Near);
        await (await Client.GetAsync($"{visit}/pictures/{file}", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_FOUND");
    }

    [Fact]
    public async Task Of_a_visit_that_is_not_kept_there_are_none() =>
        Assert.Equal(HttpStatusCode.NotFound, (await Client.GetAsync("/api/visits/999999/pictures", Cancellation)).StatusCode);

    private async Task<string> BeginAsync(params string[] events)
    {
        using HttpResponseMessage machine = await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("pictured " + Guid.NewGuid().ToString("N")));
        long id = (await machine.JsonAsync()).GetProperty("id").GetInt64();
        using HttpResponseMessage begun = await Client.SendAsync(HttpMethod.Post, "/api/visits", JsonSerializer.Serialize(new { machine = id }));
        string address = begun.Headers.Location!.ToString();
        foreach (string e in events)
            await AddAsync(address, e);
        return address;
    }

    private async Task AddAsync(string visit, string e)
    {
        using HttpResponseMessage added = await Client.SendAsync(HttpMethod.Post, visit + "/events", e, ("Idempotency-Key", Guid.NewGuid().ToString()));
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
    }
}
