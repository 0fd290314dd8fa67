using System.Net;
using System.Text;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class PhotosApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task A_photo_is_measured_and_given_back_byte_for_byte()
    {
        using HttpResponseMessage sent = await SendAsync(Photos.Variant(Photos.Near, 1));

        Assert.Equal(HttpStatusCode.Created, sent.StatusCode);
        JsonElement photo = await sent.JsonAsync();
        Assert.Equal("plate", photo.GetProperty("measurement").GetProperty("card").Text("kind"));
        Assert.Equal(1, photo.GetProperty("measurement").GetProperty("marks").GetArrayLength());
        Assert.Equal("/api/photos/" + photo.Text("id"), sent.Headers.Location?.OriginalString);

        JsonElement again = await (await Client.GetAsync(sent.Headers.Location, Cancellation)).JsonAsync();
        Assert.Equal(photo.GetProperty("measurement").GetRawText(), again.GetProperty("measurement").GetRawText());

        using HttpResponseMessage original = await Client.GetAsync(photo.Text("original"), Cancellation);
        Assert.Equal("image/jpeg", original.Content.Headers.ContentType?.MediaType);
        Assert.Equal(Photos.Variant(Photos.Near, 1), await original.Content.ReadAsByteArrayAsync(Cancellation));
    }

    [Fact]
    public async Task The_same_bytes_sent_twice_are_one_photo()
    {
        using HttpResponseMessage first = await SendAsync(Photos.Variant(Photos.Near, 2));
        using HttpResponseMessage second = await SendAsync(Photos.Variant(Photos.Near, 2));
        Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        Assert.Equal(HttpStatusCode.OK, second.StatusCode);
        Assert.Equal((await first.JsonAsync()).Text("id"), (await second.JsonAsync()).Text("id"));
    }

    [Fact]
    public async Task A_photo_without_a_card_is_kept_with_its_refusal()
    {
        byte[] plain = PlainPng.Grey(640, 480);
        using HttpResponseMessage sent = await SendAsync(plain);
        JsonElement problem = await sent.ProblemAsync(HttpStatusCode.UnprocessableEntity, "NO_CARD");
        Assert.Equal("photo", problem.Text("field"));

        JsonElement photo = await (await Client.GetAsync("/api/photos/" + problem.Text("photoId"), Cancellation)).JsonAsync();
        Assert.Equal("NO_CARD", photo.GetProperty("refusal").Text("code"));
        Assert.Equal(JsonValueKind.Null, photo.GetProperty("measurement").ValueKind);
        Assert.Equal(plain, await Client.GetByteArrayAsync(photo.Text("original"), Cancellation));
    }

    [Theory]
    [InlineData("", "PHOTO_EMPTY", HttpStatusCode.BadRequest)]
    [InlineData("this is no picture", "PHOTO_FORMAT", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("<html><body>neither is this</body></html>", "PHOTO_FORMAT", HttpStatusCode.UnsupportedMediaType)]
    public async Task What_is_no_photo_is_refused_and_not_kept(string text, string code, HttpStatusCode status)
    {
        int before = await CountAsync();
        using HttpResponseMessage sent = await SendAsync(Encoding.ASCII.GetBytes(text));
        await sent.ProblemAsync(status, code);
        Assert.Equal(before, await CountAsync());
    }

    [Fact]
    public async Task A_form_without_a_photo_and_a_body_without_a_form_are_refused()
    {
        using MultipartFormDataContent empty = Forms.Form(("other", "text"));
        JsonElement problem = await (await Client.PostAsync("/api/photos", empty, Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "FIELD_MISSING");
        Assert.Equal("photo", problem.Text("field"));

        using StringContent text = new("{}", Encoding.UTF8, "application/json");
        await (await Client.PostAsync("/api/photos", text, Cancellation)).ProblemAsync(HttpStatusCode.UnsupportedMediaType, "MEDIA_TYPE_NOT_TAKEN");

        using StringContent broken = new("no boundary in here");
        broken.Headers.ContentType = new("multipart/form-data") { Parameters = { new("boundary", "x") } };
        await (await Client.PostAsync("/api/photos", broken, Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "REQUEST_UNREADABLE");
    }

    [Fact]
    public async Task A_body_over_the_limit_is_refused_before_it_is_read()
    {
        using MultipartFormDataContent form = Forms.Form(("photo", new byte[41 * 1024 * 1024]));
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/photos") { Content = form };
        request.Headers.ExpectContinue = true;
        using HttpResponseMessage sent = await Client.SendAsync(request, Cancellation);
        await sent.ProblemAsync(HttpStatusCode.RequestEntityTooLarge, "REQUEST_TOO_LARGE");
    }

    [Fact]
    public async Task A_photo_that_is_not_kept_is_not_found()
    {
        foreach (string address in (string[])["/api/photos/abc", "/api/photos/abc/original", "/api/photos/..%2f..%2fetc%2fpasswd/original"])
            await (await Client.GetAsync(address, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task A_photo_can_be_deleted_once()
    {
        using HttpResponseMessage sent = await SendAsync(Photos.Variant(Photos.Near, 3));
        Assert.Equal(HttpStatusCode.NoContent, (await Client.DeleteAsync(sent.Headers.Location, Cancellation)).StatusCode);
        await (await Client.DeleteAsync(sent.Headers.Location, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        await (await Client.GetAsync(sent.Headers.Location + "/original", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task The_list_is_given_in_pages_that_lead_to_each_other()
    {
        for (int i = 10; i < 13; i++)
            (await SendAsync(PlainPng.Grey(300 + i, 300))).Dispose();
        int expected = await CountAsync();
        List<string> seen = [];
        string? next = "/api/photos?limit=2";
        while (next is not null)
        {
            JsonElement page = await (await Client.GetAsync(next, Cancellation)).JsonAsync();
            Assert.InRange(page.GetProperty("photos").GetArrayLength(), 1, 2);
            seen.AddRange(page.GetProperty("photos").EnumerateArray().Select(photo => photo.Text("id")));
            next = page.GetProperty("next").GetString();
        }
        Assert.Equal(expected, seen.Count);
        Assert.Equal(seen.Count, seen.Distinct().Count());
    }

    private async Task<HttpResponseMessage> SendAsync(byte[] photo)
    {
        using MultipartFormDataContent form = Forms.Form(("photo", photo));
        return await Client.PostAsync("/api/photos", form, Cancellation);
    }

    private async Task<int> CountAsync() =>
        (await (await Client.GetAsync("/api/photos?limit=100", Cancellation)).JsonAsync()).GetProperty("photos").GetArrayLength();
}
