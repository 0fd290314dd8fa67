using System.Net;
using System.Text.Json;
using MarkReader.Service.Hosting;
using MarkReader.Service.Tests.Support;
using Microsoft.Extensions.DependencyInjection;

namespace MarkReader.Service.Tests.Hosting;

public sealed class HostTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Results_and_photos_outlive_a_restart()
    {
        string data = Path.Combine(Path.GetTempPath(), "markreader-restart-" + Guid.NewGuid().ToString("N"));
        try
        {
            JsonElement before;
            await using (Site first = new(data))
            {
                using MultipartFormDataContent form = Forms.Aim();
                before = await (await first.Client.PostAsync("/api/aims", form, Cancellation)).JsonAsync();
            }
            await using Site second = new(data);
            JsonElement after = await (await second.Client.GetAsync($"/api/aims/{before.GetProperty("id")}", Cancellation)).JsonAsync();
            Assert.Equal(before.GetRawText(), after.GetRawText());
            Assert.Equal(Photos.Far, await second.Client.GetByteArrayAsync($"/api/photos/{before.GetProperty("inputs").Text("farPhoto")}/original", Cancellation));
        }
        finally
        {
            Directory.Delete(data, recursive: true);
        }
    }

    [Fact]
    public async Task One_request_too_many_is_sent_away_with_a_time_to_wait()
    {
        await using Site busy = new();
        MeasuringTurns turns = busy.Services.GetRequiredService<MeasuringTurns>();
        List<Task<IDisposable?>> taken = [];
        for (int i = 0; i < turns.AtOnce + turns.Waiting; i++)
            taken.Add(turns.TakeTurnAsync(Cancellation));

        using MultipartFormDataContent photo = Forms.Form(("photo", Photos.Near));
        using HttpResponseMessage refused = await busy.Client.PostAsync("/api/photos", photo, Cancellation);
        await refused.ProblemAsync(HttpStatusCode.ServiceUnavailable, "BUSY");
        Assert.Equal(MeasuringTurns.RetryAfter, refused.Headers.RetryAfter?.Delta);

        foreach (Task<IDisposable?> turn in taken)
            (await turn)?.Dispose();
        using MultipartFormDataContent again = Forms.Form(("photo", Photos.Near));
        Assert.Equal(HttpStatusCode.Created, (await busy.Client.PostAsync("/api/photos", again, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task Many_photos_sent_at_once_are_each_measured_or_sent_away()
    {
        await using Site busy = new();
        HttpStatusCode[] statuses = await Task.WhenAll(Enumerable.Range(0, 24).Select(async number =>
        {
            using MultipartFormDataContent photo = Forms.Form(("photo", Photos.Variant(Photos.Near, number)));
            using HttpResponseMessage answer = await busy.Client.PostAsync("/api/photos", photo, Cancellation);
            return answer.StatusCode;
        }));
        Assert.All(statuses, status => Assert.True(status is HttpStatusCode.Created or HttpStatusCode.ServiceUnavailable, status.ToString()));
        Assert.Contains(HttpStatusCode.Created, statuses);
    }

    [Fact]
    public async Task The_interface_is_described()
    {
        JsonElement api = await (await site.Client.GetAsync("/openapi/v1.json", Cancellation)).JsonAsync();
        JsonElement paths = api.GetProperty("paths");
        JsonElement form = paths.GetProperty("/api/aims").GetProperty("post").GetProperty("requestBody").GetProperty("content").GetProperty("multipart/form-data").GetProperty("schema");
        if (form.TryGetProperty("$ref", out JsonElement reference))
            form = api.GetProperty("components").GetProperty("schemas").GetProperty(reference.GetString()!.Split('/')[^1]);
        JsonElement fields = form.GetProperty("properties");
        JsonElement near = fields.GetProperty("near").GetProperty("oneOf").EnumerateArray().Single(kind => kind.TryGetProperty("$ref", out _));
        Assert.Equal("binary", Resolve(api, near).Text("format"));
        Assert.Equal(["nearPath", "farPath"], form.GetProperty("required").EnumerateArray().Select(name => name.GetString()));
        Assert.Contains("Path length of the near station", fields.GetProperty("nearPath").Text("description"), StringComparison.Ordinal);
        foreach (JsonProperty path in paths.EnumerateObject())
        {
            foreach (JsonProperty method in path.Value.EnumerateObject().Where(member => member.Name is "get" or "post" or "put" or "delete"))
            {
                Assert.NotEmpty(method.Value.Text("summary"));
                if (method.Value.TryGetProperty("parameters", out JsonElement parameters))
                    Assert.All(parameters.EnumerateArray(), parameter => Assert.NotEmpty(parameter.Text("description")));
            }
        }
    }

    [Theory]
    [InlineData("/css/base.css", "text/css")]
    [InlineData("/js/main.js", "text/javascript")]
    [InlineData("/fonts/b612-400.woff2", "font/woff2")]
    [InlineData("/icon.svg", "image/svg+xml")]
    [InlineData("/favicon.ico", "image/svg+xml")]
    public async Task Files_are_whole_for_a_browser_that_asks_for_packed_ones(string address, string mediaType)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, address);
        request.Headers.Add("Accept-Encoding", "gzip, deflate, br");
        using HttpResponseMessage file = await site.Client.SendAsync(request, Cancellation);
        Assert.Equal(HttpStatusCode.OK, file.StatusCode);
        Assert.Equal(mediaType, file.Content.Headers.ContentType?.MediaType);
        Assert.True((await file.Content.ReadAsByteArrayAsync(Cancellation)).Length > 300);
    }

    [Fact]
    public async Task An_address_that_leads_nowhere_is_told_to_programs_and_to_people()
    {
        await (await site.Client.GetAsync("/api/nothing", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_FOUND");
        foreach (string address in (string[])["/nothing", "/results/999999"])
        {
            using HttpRequestMessage request = new(HttpMethod.Get, address);
            request.Headers.Add("Accept", "text/html");
            using HttpResponseMessage page = await site.Client.SendAsync(request, Cancellation);
            Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
            Assert.Contains("nothing at this address", await page.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_happens_is_written_to_a_file_in_the_data_folder() =>
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(site.Data, "logs"), "markreader-*.log"));

    private static JsonElement Resolve(JsonElement api, JsonElement schema) => schema.TryGetProperty("$ref", out JsonElement reference)
        ? api.GetProperty("components").GetProperty("schemas").GetProperty(reference.GetString()!.Split('/')[^1])
        : schema;
}
