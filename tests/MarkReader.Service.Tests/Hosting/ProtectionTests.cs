using System.Net;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Hosting;

public sealed class ProtectionTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private string Own => site.Address.GetLeftPart(UriPartial.Authority);

    [Theory]
    [InlineData("marks.example")]
    [InlineData("marks.example:5080")]
    [InlineData("127.0.0.1.marks.example")]
    public async Task A_name_that_was_pointed_at_this_machine_is_refused(string host)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, "/api/aims") { Headers = { Host = host } };
        await (await site.Client.SendAsync(request, Cancellation)).ProblemAsync(HttpStatusCode.MisdirectedRequest, "HOST_NOT_ALLOWED");
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    public async Task The_names_of_this_machine_are_served(string host)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, "/api/aims") { Headers = { Host = $"{host}:{site.Address.Port}" } };
        Assert.Equal(HttpStatusCode.OK, (await site.Client.SendAsync(request, Cancellation)).StatusCode);
    }

    [Theory]
    [InlineData("Origin", "https://marks.example")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "http://localhost:1")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Another_site_cannot_post_or_delete(string header, string value)
    {
        foreach ((HttpMethod method, string address) in new[] { (HttpMethod.Post, "/api/photos"), (HttpMethod.Post, "/"), (HttpMethod.Delete, "/api/aims/1") })
        {
            using HttpRequestMessage request = new(method, address);
            request.Headers.Add(header, value);
            if (method == HttpMethod.Post)
                request.Content = Forms.Form(("photo", PlainPng.Grey(300, 300)));
            await (await site.Client.SendAsync(request, Cancellation)).ProblemAsync(HttpStatusCode.Forbidden, "ORIGIN_NOT_ALLOWED");
        }
    }

    [Fact]
    public async Task The_service_s_own_page_can_post()
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/photos") { Content = Forms.Form(("photo", Photos.Near)) };
        request.Headers.Add("Origin", Own);
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        Assert.True((await site.Client.SendAsync(request, Cancellation)).IsSuccessStatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/results")]
    [InlineData("/api/aims")]
    [InlineData("/css/base.css")]
    [InlineData("/api/nothing")]
    public async Task Every_answer_forbids_what_comes_from_elsewhere(string address)
    {
        using HttpResponseMessage answer = await site.Client.GetAsync(address, Cancellation);
        string policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.False(answer.Headers.Contains("Server"));
    }
}
