using System.Net;
using System.Text.Json;
using MarkReader.Service.Hosting.Phones;
using MarkReader.Service.Tests.Support;
using Microsoft.Net.Http.Headers;

namespace MarkReader.Service.Tests.Hosting;

public sealed class PhonesTests(PhoneSite site, Site alone) : IClassFixture<PhoneSite>, IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_the_flag_no_phone_reaches_the_service_and_no_key_is_made()
    {
        using HttpClient phone = new(new SocketsHttpHandler { UseProxy = false }) { BaseAddress = PhoneSite.AddressOf(alone) };
        await Assert.ThrowsAsync<HttpRequestException>(() => phone.GetAsync("/api/aims", Cancellation));
        Assert.False(File.Exists(Path.Combine(alone.Data, "phone-key")));
        string page = await alone.Client.GetStringAsync("/phones", Cancellation);
        Assert.Contains("tools/run --phones", page, StringComparison.Ordinal);
        Assert.DoesNotContain("/join?key=", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await alone.Client.GetAsync("/join?key=x", Cancellation)).StatusCode);
    }

    [Theory]
    [InlineData("/api/aims")]
    [InlineData("/")]
    [InlineData("/phones")]
    [InlineData("/css/base.css")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/nothing")]
    public async Task Who_has_not_joined_gets_nothing(string address)
    {
        using HttpClient phone = site.Phone();
        using HttpResponseMessage answer = await phone.GetAsync(address, Cancellation);
        await answer.ProblemAsync(HttpStatusCode.Unauthorized, "KEY_MISSING");
        Assert.Equal("Bearer", Assert.Single(answer.Headers.WwwAuthenticate).Scheme);

        // Headers say nothing of where a request comes from.
        using HttpRequestMessage pretending = new(HttpMethod.Get, address);
        pretending.Headers.Add("X-Forwarded-For", "127.0.0.1");
        pretending.Headers.Host = $"127.0.0.1:{site.Address.Port}";
        await (await phone.SendAsync(pretending, Cancellation)).ProblemAsync(HttpStatusCode.Unauthorized, "KEY_MISSING");
    }

    [Fact]
    public async Task A_person_who_has_not_joined_is_told_how()
    {
        using HttpClient phone = site.Phone();
        phone.DefaultRequestHeaders.Add("Accept", "text/html");
        using HttpResponseMessage answer = await phone.GetAsync("/visits", Cancellation);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        string page = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.Contains("Join first", page, StringComparison.Ordinal);
        Assert.DoesNotContain(site.Key, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Joining_leaves_a_cookie_that_lets_in_and_is_not_the_key()
    {
        using HttpClient phone = site.Phone();
        using HttpResponseMessage joined = await site.JoinAsync(phone);
        Assert.Equal(HttpStatusCode.Redirect, joined.StatusCode);
        Assert.Equal("/visits", joined.Headers.Location?.OriginalString);
        SetCookieHeaderValue cookie = SetCookieHeaderValue.Parse(Assert.Single(joined.Headers.GetValues("Set-Cookie")));
        Assert.True(cookie.HttpOnly);
        Assert.Equal(SameSiteMode.Strict, cookie.SameSite);
        Assert.DoesNotContain(site.Key, cookie.ToString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/visits", Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/api/aims", Cancellation)).StatusCode);

        // What holds for pages of other sites holds on the network too.
        using HttpRequestMessage foreign = new(HttpMethod.Post, "/phones") { Headers = { { "Origin", "http://marks.example" } } };
        await (await phone.SendAsync(foreign, Cancellation)).ProblemAsync(HttpStatusCode.Forbidden, "ORIGIN_NOT_ALLOWED");
    }

    [Fact]
    public async Task A_program_sends_the_key_itself()
    {
        using HttpClient program = site.Phone();
        program.DefaultRequestHeaders.Authorization = new("Bearer", site.Key);
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("/api/aims", Cancellation)).StatusCode);
    }

    [Theory]
    [InlineData("marks.example")]
    [InlineData("192.0.2.250")]
    [InlineData("[::1]")]
    public async Task A_name_or_address_that_is_not_the_one_reached_is_refused(string host)
    {
        using HttpClient phone = site.Phone();
        foreach (HttpClient client in (HttpClient[])[phone, site.Client])
        {
            using HttpRequestMessage request = new(HttpMethod.Get, "/api/aims");
            request.Headers.Authorization = new("Bearer", site.Key);
            request.Headers.Host = $"{host}:{site.Address.Port}";
            await (await client.SendAsync(request, Cancellation)).ProblemAsync(HttpStatusCode.MisdirectedRequest, "HOST_NOT_ALLOWED");
        }
    }

    [Fact]
    public async Task This_machine_s_name_is_served_on_the_network_with_the_key_but_not_over_loopback()
    {
        using HttpClient phone = site.Phone();
        foreach ((HttpClient client, HttpStatusCode expected) in new[] { (phone, HttpStatusCode.OK), (site.Client, HttpStatusCode.MisdirectedRequest) })
        {
            using HttpRequestMessage request = new(HttpMethod.Get, "/api/aims");
            request.Headers.Authorization = new("Bearer", site.Key);
            request.Headers.Host = $"{Dns.GetHostName()}:{site.Address.Port}";
            Assert.Equal(expected, (await client.SendAsync(request, Cancellation)).StatusCode);
        }
    }

    [Fact]
    public async Task Over_loopback_no_key_is_needed() =>
        Assert.Equal(HttpStatusCode.OK, (await site.Client.GetAsync("/api/aims", Cancellation)).StatusCode);

    [Fact]
    public async Task A_new_key_shuts_out_all_but_the_phone_that_made_it_and_outlives_a_restart()
    {
        string data = Path.Combine(Path.GetTempPath(), "markreader-phones-" + Guid.NewGuid().ToString("N"));
        try
        {
            string key;
            await using (PhoneSite first = new(data))
            {
                string old = first.Key;
                using HttpClient earlier = first.Phone();
                using HttpClient asking = first.Phone();
                foreach (HttpClient phone in (HttpClient[])[earlier, asking])
                    (await first.JoinAsync(phone)).Dispose();
                Assert.Equal(HttpStatusCode.Redirect, (await asking.PostAsync("/phones", null, Cancellation)).StatusCode);
                key = first.Key;
                Assert.NotEqual(old, key);
                Assert.Equal(HttpStatusCode.OK, (await asking.GetAsync("/api/aims", Cancellation)).StatusCode);
                await (await earlier.GetAsync("/api/aims", Cancellation)).ProblemAsync(HttpStatusCode.Unauthorized, "KEY_WRONG");
                // The cookie is gone from the phone: it is as one that never joined.
                await (await earlier.GetAsync("/api/aims", Cancellation)).ProblemAsync(HttpStatusCode.Unauthorized, "KEY_MISSING");
                await (await first.JoinAsync(earlier, old)).ProblemAsync(HttpStatusCode.Unauthorized, "KEY_WRONG");
            }
            string file = Path.Combine(data, "phone-key");
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, OperatingSystem.IsWindows() ? default : File.GetUnixFileMode(file));
            Assert.DoesNotContain(Directory.GetFiles(Path.Combine(data, "logs")), log => File.ReadAllText(log).Contains(key, StringComparison.Ordinal));
            await using PhoneSite second = new(data);
            Assert.Equal(key, second.Key);
        }
        finally
        {
            Directory.Delete(data, recursive: true);
        }
    }

    [Fact]
    public async Task Many_wrong_keys_end_in_a_minute_s_wait_that_does_not_touch_a_phone_that_has_joined()
    {
        await using PhoneSite tried = new();
        using HttpClient joined = tried.Phone();
        (await tried.JoinAsync(joined)).Dispose();
        using HttpClient guessing = tried.Phone();
        for (int i = 0; i < WrongKeys.Most; i++)
            await (await tried.JoinAsync(guessing, "wrong" + i)).ProblemAsync(HttpStatusCode.Unauthorized, "KEY_WRONG");
        using HttpResponseMessage waits = await tried.JoinAsync(guessing);
        JsonElement problem = await waits.ProblemAsync(HttpStatusCode.TooManyRequests, "KEY_TRIES");
        Assert.Contains("minute", problem.Text("hint"), StringComparison.Ordinal);
        Assert.Equal(WrongKeys.Window, waits.Headers.RetryAfter?.Delta);
        Assert.False(waits.Headers.Contains("Set-Cookie"));
        Assert.Equal(HttpStatusCode.OK, (await joined.GetAsync("/api/aims", Cancellation)).StatusCode);
    }
}
