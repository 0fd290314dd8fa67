using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

/// <summary>Records and whole visits over the interface; two installations hand a visit to each other.</summary>
public sealed class VisitRecordsApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_record_comes_in_every_form_with_a_plain_name_and_the_html_with_a_policy_of_its_own()
    {
        string address = await BeginAsync();
        foreach ((string form, string media, string begin) in new[] { ("pdf", "application/pdf", "%PDF"), ("html", "text/html", "<!DOCTYPE html>"), ("csv", "text/csv", "event,"), ("json", "application/json", "{") })
        {
            using HttpResponseMessage answer = await site.Client.GetAsync($"{address}/record.{form}?unit=in&decimal=comma&paper=letter", Cancellation);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal(media, answer.Content.Headers.ContentType!.MediaType);
            Assert.Matches($"^\"?visit-[0-9]+-[0-9]{{4}}-[0-9]{{2}}-[0-9]{{2}}\\.{form}\"?$", answer.Content.Headers.ContentDisposition!.FileName!);
            Assert.StartsWith(begin, Encoding.Latin1.GetString(await answer.Content.ReadAsByteArrayAsync(Cancellation)), StringComparison.Ordinal);
            string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Equal(form == "html", policy.Contains("'unsafe-inline'", StringComparison.Ordinal));
            Assert.Equal(form == "html", !policy.Contains("script-src", StringComparison.Ordinal) && policy.Contains("default-src 'none'", StringComparison.Ordinal));
        }

        await (await site.Client.GetAsync(address + "/record.pdf?unit=ell", Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "UNIT_UNKNOWN");
        await (await site.Client.GetAsync(address + "/record.pdf?paper=a0", Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "PAPER_UNKNOWN");
        await (await site.Client.GetAsync("/api/visits/999/record.pdf", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        await (await site.Client.GetAsync("/api/visits/999/bundle", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task Another_installation_takes_a_whole_visit_in_once()
    {
        string address = await BeginAsync();
        using HttpResponseMessage bundle = await site.Client.GetAsync(address + "/bundle", Cancellation);
        Assert.Equal("application/zip", bundle.Content.Headers.ContentType!.MediaType);
        byte[] file = await bundle.Content.ReadAsByteArrayAsync(Cancellation);
        JsonElement sent = await (await site.Client.GetAsync(address, Cancellation)).JsonAsync();

        using Site other = new();
        using HttpResponseMessage first = await SendAsync(other, file);
        Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        JsonElement kept = await (await other.Client.GetAsync(first.Headers.Location, Cancellation)).JsonAsync();
        foreach (string name in new[] { "advice", "events", "begunAt", "changedAt", "version", "doneBy", "machine" })
            Assert.True(JsonElement.DeepEquals(sent.GetProperty(name), kept.GetProperty(name)), name);
        long number = kept.GetProperty("id").GetInt64();
        Assert.Contains($"Taken in as visit {number}.", await other.Client.GetStringAsync($"/visits/{number}?taken=in", Cancellation), StringComparison.Ordinal);
        Assert.Contains($"here already, as visit {number}.", await other.Client.GetStringAsync($"/visits/{number}?taken=before", Cancellation), StringComparison.Ordinal);
        using HttpResponseMessage again = await SendAsync(other, file);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);

        await (await SendAsync(other, file[..^40])).ProblemAsync(HttpStatusCode.BadRequest, "BUNDLE_UNREADABLE");
        await (await SendAsync(other, file, "text/plain")).ProblemAsync(HttpStatusCode.UnsupportedMediaType, "MEDIA_TYPE_NOT_TAKEN");
        Assert.Empty(Directory.EnumerateFiles(other.Data, "*.part", SearchOption.AllDirectories));
    }

    private async Task<string> BeginAsync()
    {
        JsonElement machine = await (await site.Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("Nora's cutter"))).JsonAsync();
        JsonElement visit = await (await site.Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{machine.GetProperty("id")}}, "doneBy": "A. Turner" }""")).JsonAsync();
        string address = $"/api/visits/{visit.GetProperty("id")}";
        (await site.Client.SendAsync(HttpMethod.Post, address + "/events", """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""", ("Idempotency-Key", "a"))).Dispose();
        return address;
    }

    private static async Task<HttpResponseMessage> SendAsync(Site to, byte[] file, string media = "application/zip")
    {
        using ByteArrayContent content = new(file);
        content.Headers.ContentType = new MediaTypeHeaderValue(media);
        return await to.Client.PostAsync("/api/visits/bundles", content, Cancellation);
    }
}
