using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Pages;

/// <summary>Requests to the machines' pages that no page sends, or sends twice.</summary>
public sealed partial class MachineRequestsTests(Site site) : IClassFixture<Site>
{
    [Theory]
    [InlineData("/machines/abc")]
    [InlineData("/machines/7777")]
    [InlineData("/machines/99999999999999999999999")]
    [InlineData("/machines/-1")]
    [InlineData("/machines/new?preset=nonsense")]
    public async Task There_is_no_such_machine(string address) =>
        Assert.Equal(HttpStatusCode.NotFound, (await site.Client.GetAsync(address, TestContext.Current.CancellationToken)).StatusCode);

    [Fact]
    public async Task A_blank_form_names_every_field_that_must_be_measured()
    {
        (HttpStatusCode status, string text) = await PostAsync("/machines/new", ("leg1", "on"), ("leg2", "on"), ("bed", "on"));
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Equal(["bed-x", "bed-y", "leg1-farPath", "leg1-nearPath", "leg2-farPath", "leg2-nearPath"], Invalid().Matches(text).Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task What_is_typed_is_shown_as_text()
    {
        (_, string text) = await PostAsync("/machines/new", ("name", "\"><script>alert(1)</script>"), ("leg1-near", "<b>"), ("leg1-upperLeft", "screw <i>"));
        Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<i>", text, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/machines/new")]
    [InlineData("/machines?handler=File")]
    public async Task A_request_that_is_no_form_or_too_large_a_one_is_refused(string address)
    {
        using StringContent json = new("{}", Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await site.Client.PostAsync(address, json, TestContext.Current.CancellationToken)).StatusCode);
        (HttpStatusCode status, _) = await PostAsync(address, [.. Enumerable.Range(0, 400).Select(i => ($"f{i}", "x"))]);
        Assert.Equal(HttpStatusCode.BadRequest, status);
        (status, _) = await PostAsync(address, ("name", new string('x', 100_000)));
        Assert.Equal(HttpStatusCode.BadRequest, status);
    }

    [Fact]
    public async Task A_form_that_is_sent_twice_adds_one_machine_and_changed_another()
    {
        (string, string)[] form =
        [
            ("request", "5f3c"), ("name", "once"), ("leg1", "on"), ("leg1-nearPath", "80"), ("leg1-farPath", "480"),
            ("leg1-upperLeft", "screw B"), ("leg1-lowerLeft", "pivot"), ("leg1-lowerRight", "screw A"),
        ];
        using HttpClient client = new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = site.Address };
        Uri? first = await AddAsync(form);
        Assert.NotNull(first);
        Assert.Equal(first, await AddAsync(form));
        form[1] = ("name", "other");
        Uri? other = await AddAsync(form);
        Assert.NotNull(other);
        Assert.NotEqual(first, other);

        async Task<Uri?> AddAsync((string, string)[] fields)
        {
            using FormUrlEncodedContent content = new(fields.Select(f => KeyValuePair.Create(f.Item1, f.Item2)));
            return (await client.PostAsync("/machines/new", content, TestContext.Current.CancellationToken)).Headers.Location;
        }
    }

    [Fact]
    public async Task A_file_that_comes_twice_points_to_the_machine_that_is_there_and_both_are_kept_only_when_asked()
    {
        using HttpClient client = new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = site.Address };
        Uri first = (await SendAsync()).Headers.Location!;
        string id = Regex.Match(first.ToString(), "[0-9]+").Value;
        HttpResponseMessage again = await SendAsync();
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        string page = await again.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains($"href=\"/machines/{id}\"", page, StringComparison.Ordinal);
        Assert.Contains($"name=\"machine\" value=\"{id}\"", page, StringComparison.Ordinal);

        using MultipartFormDataContent both = Forms.Form(("machine", id));
        Uri second = (await client.PostAsync("/machines?handler=Copy", both, TestContext.Current.CancellationToken)).Headers.Location!;
        Assert.NotEqual(first, second);
        string copy = await site.Client.GetStringAsync("/api/machines/" + Regex.Match(second.ToString(), "[0-9]+").Value + "/file", TestContext.Current.CancellationToken);
        Assert.Equal(Machines.Named("from a file"), copy);

        async Task<HttpResponseMessage> SendAsync()
        {
            using MultipartFormDataContent form = Forms.Form(("file", Encoding.UTF8.GetBytes(Machines.Named("from a file"))));
            return await client.PostAsync("/machines?handler=File", form, TestContext.Current.CancellationToken);
        }
    }

    private async Task<(HttpStatusCode Status, string Text)> PostAsync(string address, params (string Name, string Text)[] fields)
    {
        using FormUrlEncodedContent content = new(fields.Select(f => KeyValuePair.Create(f.Name, f.Text)));
        HttpResponseMessage response = await site.Client.PostAsync(address, content, TestContext.Current.CancellationToken);
        return (response.StatusCode, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [GeneratedRegex("<input type=\"text\"[^>]* name=\"([^\"]+)\"[^>]* aria-invalid=\"true\"")]
    private static partial Regex Invalid();
}
