using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class CardChecksApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_card_is_checked_once_for_a_key_kept_shown_and_deleted()
    {
        string camera = await CameraAsync("check phone");

        using HttpResponseMessage made = await PostAsync("one", camera, CardPhotos.Flat, ("name", " card of leg 1 "));
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        JsonElement check = await made.JsonAsync();
        string address = made.Headers.Location!.ToString();
        Assert.Equal("good", check.GetProperty("report").Text("verdict"));
        Assert.False(check.GetProperty("report").GetProperty("sizeJudged").GetBoolean());
        Assert.Equal("/api/cameras/" + camera, check.Text("camera"));
        Assert.Contains("Good in shape", check.GetProperty("words")[0].GetString(), StringComparison.Ordinal);

        Assert.Equal("card of leg 1", check.Text("name"));

        using HttpResponseMessage repeated = await PostAsync("one", camera, CardPhotos.Flat, ("name", "card of leg 1"));
        Assert.Equal(address, repeated.Headers.Location!.ToString());
        await (await PostAsync("one", camera, [.. CardPhotos.Flat.Skip(1)])).ProblemAsync(HttpStatusCode.UnprocessableEntity, "IDEMPOTENCY_KEY_REUSED");
        await (await PostAsync("one", camera, CardPhotos.Flat, ("name", "another"))).ProblemAsync(HttpStatusCode.UnprocessableEntity, "IDEMPOTENCY_KEY_REUSED");

        using HttpResponseMessage picture = await site.Client.GetAsync(address + "/picture.svg", Cancellation);
        Assert.Equal("image/svg+xml", picture.Content.Headers.ContentType!.MediaType);
        await (await site.Client.GetAsync(address + "/photo.svg", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_FOUND");
        JsonElement list = await (await site.Client.GetAsync("/api/card-checks", Cancellation)).JsonAsync();
        Assert.Contains(list.GetProperty("checks").EnumerateArray(), c => c.Text("camera") == "check phone" && c.Text("verdict") == "good" && c.Text("name") == "card of leg 1" && !c.GetProperty("sizeJudged").GetBoolean());

        using HttpResponseMessage gone = await site.Client.DeleteAsync(address, Cancellation);
        Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        await (await site.Client.GetAsync(address, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task What_cannot_be_checked_is_refused_with_the_field_that_is_wrong()
    {
        string camera = await CameraAsync("refusing phone");

        Assert.Equal("photos", (await (await PostAsync(null, camera, [])).ProblemAsync(HttpStatusCode.BadRequest, "FIELD_MISSING")).Text("field"));
        Assert.Equal("photos", (await (await PostAsync(null, camera, [.. CardPhotos.Flat.Take(2)])).ProblemAsync(HttpStatusCode.UnprocessableEntity, "CARD_FEW_VIEWS")).Text("field"));
        Assert.Equal("camera", (await (await PostAsync(null, "4711", CardPhotos.Flat)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT")).Text("field"));
        Assert.Equal("tolerance", (await (await PostAsync(null, camera, CardPhotos.Flat, ("tolerance", "-1"))).ProblemAsync(HttpStatusCode.BadRequest, "CARD_TOLERANCE_INVALID")).Text("field"));
        Assert.Equal("name", (await (await PostAsync(null, camera, CardPhotos.Flat, ("name", new string('x', 81)))).ProblemAsync(HttpStatusCode.BadRequest, "CARD_CHECK_NAME_INVALID")).Text("field"));
        Assert.Equal("rulerU", (await (await PostAsync(null, camera, CardPhotos.Flat, ("rulerU", "x"))).ProblemAsync(HttpStatusCode.BadRequest, "NUMBER_UNREADABLE")).Text("field"));
    }

    private async Task<string> CameraAsync(string name)
    {
        using StringContent profile = new(CardPhotos.Profile(name), Encoding.UTF8, "application/json");
        using HttpResponseMessage added = await site.Client.PostAsync("/api/cameras", profile, Cancellation);
        return (await added.JsonAsync()).GetProperty("id").GetRawText();
    }

    private async Task<HttpResponseMessage> PostAsync(string? key, string camera, IReadOnlyList<byte[]> photos, params (string Name, string Value)[] more)
    {
        using MultipartFormDataContent form = Forms.Form([("camera", camera), .. more.Select(m => (m.Name, (object)m.Value))]);
        for (int i = 0; i < photos.Count; i++)
        {
            ByteArrayContent file = new(photos[i]);
            file.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
            form.Add(file, "photos", $"view-{i}.jpg");
        }

        using HttpRequestMessage request = new(HttpMethod.Post, "/api/card-checks") { Content = form };
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);
        return await site.Client.SendAsync(request, Cancellation);
    }
}
