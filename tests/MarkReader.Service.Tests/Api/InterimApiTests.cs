using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class InterimApiTests(Site site) : IClassFixture<Site>
{
    private static readonly (string Name, byte[] Bytes)[] s_photos = [("far.jpg", Photos.Far), ("near.jpg", Photos.Near)];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_set_is_kept_once_for_a_key_measured_again_kept_anew_and_deleted()
    {
        using HttpResponseMessage made = await PostAsync("one", "wall", s_photos);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        string address = made.Headers.Location!.ToString();
        JsonElement set = await made.JsonAsync();
        Assert.Equal(("wall", "kept"), (set.Text("name"), set.Text("state")));
        Assert.Equal(["far.jpg", "near.jpg"], set.GetProperty("photos").EnumerateArray().Select(p => p.Text("name")));
        using (HttpResponseMessage photo = await site.Client.GetAsync(set.GetProperty("photos")[0].Text("photo") + "/original", Cancellation))
            Assert.Equal(Photos.Far, await photo.Content.ReadAsByteArrayAsync(Cancellation));
        using HttpResponseMessage repeated = await PostAsync("one", "wall", s_photos);
        Assert.Equal(address, repeated.Headers.Location!.ToString());
        await (await PostAsync("one", "another wall", s_photos)).ProblemAsync(HttpStatusCode.UnprocessableEntity, "IDEMPOTENCY_KEY_REUSED");
        await (await site.Client.PostAsync(address + "/anew", null, Cancellation)).ProblemAsync(HttpStatusCode.Conflict, "INTERIM_NOT_MEASURED");

        site.Age(set.GetProperty("id").GetInt64(), photo: 1, moved: 0.2);
        JsonElement list = await (await site.Client.GetAsync("/api/interim", Cancellation)).JsonAsync();
        Assert.Equal((1, "due"), (list.GetProperty("due").GetInt32(), list.GetProperty("sets")[0].Text("state")));
        JsonElement measured = await (await site.Client.PostAsync(address + "/checks", null, Cancellation)).JsonAsync();
        Assert.Equal("differs", measured.Text("state"));
        JsonElement check = measured.GetProperty("check");
        Assert.Equal(("0.9.0", list.Text("program"), 1), (check.Text("before"), check.Text("now"), check.GetProperty("flagged").GetInt32()));
        Assert.Equal(["same", "beyond"], check.GetProperty("photos").EnumerateArray().Select(p => p.Text("verdict")));
        JsonElement mark = check.GetProperty("photos")[1].GetProperty("marks")[0];
        Assert.Equal(0.2, mark.GetProperty("movedU").GetDouble(), 1e-9);
        Assert.True(mark.GetProperty("beyond").GetBoolean() && mark.GetProperty("allowed").GetDouble() < 0.2);
        Assert.Equal("Differs: 1 of 2 photos are not measured as they were", measured.GetProperty("words")[1].GetString());
        JsonElement state = await (await site.Client.GetAsync("/api/interim/progress/one", Cancellation)).JsonAsync();
        Assert.Equal((0, 0), (state.GetProperty("done").GetInt32(), state.GetProperty("total").GetInt32()));

        using HttpResponseMessage anew = await site.Client.PostAsync(address + "/anew", null, Cancellation);
        Assert.Equal(HttpStatusCode.Created, anew.StatusCode);
        Assert.Equal("kept", (await anew.JsonAsync()).Text("state"));
        string photoAddress = set.GetProperty("photos")[0].Text("photo");
        foreach (string each in (string[])[address, anew.Headers.Location!.ToString()])
        {
            Assert.Equal(HttpStatusCode.OK, (await site.Client.GetAsync(photoAddress, Cancellation)).StatusCode);
            Assert.Equal(HttpStatusCode.NoContent, (await site.Client.DeleteAsync(each, Cancellation)).StatusCode);
            await (await site.Client.GetAsync(each, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        }

        Assert.Equal(HttpStatusCode.NotFound, (await site.Client.GetAsync(photoAddress, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task What_cannot_be_kept_is_refused_with_the_field_that_is_wrong()
    {
        Assert.Equal("photos", (await (await PostAsync(null, "none", [])).ProblemAsync(HttpStatusCode.BadRequest, "FIELD_MISSING")).Text("field"));
        Assert.Equal("name", (await (await PostAsync(null, new string('x', 81), s_photos)).ProblemAsync(HttpStatusCode.BadRequest, "INTERIM_NAME_INVALID")).Text("field"));
        Assert.Equal("photos", (await (await PostAsync(null, "text", [("note.txt", [1, 2, 3])])).ProblemAsync(HttpStatusCode.UnsupportedMediaType, "PHOTO_FORMAT")).Text("field"));
        Assert.Equal("photos", (await (await PostAsync(null, "empty", [("no-mark.jpg", Photos.Named("no-mark.jpg"))])).ProblemAsync(HttpStatusCode.UnprocessableEntity, "INTERIM_NO_MARKS")).Text("field"));
        Assert.Equal("photos", (await (await PostAsync(null, "many", [.. Enumerable.Repeat(("a.jpg", (byte[])[1]), 25)])).ProblemAsync(HttpStatusCode.BadRequest, "INTERIM_MANY_PHOTOS")).Text("field"));
        await (await site.Client.PostAsync("/api/interim/4711/checks", null, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        await (await site.Client.DeleteAsync("/api/interim/4711", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    private async Task<HttpResponseMessage> PostAsync(string? key, string name, IReadOnlyList<(string Name, byte[] Bytes)> photos)
    {
        using MultipartFormDataContent form = Forms.Form(("name", name));
        foreach ((string file, byte[] bytes) in photos)
        {
            ByteArrayContent content = new(bytes);
            content.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
            form.Add(content, "photos", file);
        }

        using HttpRequestMessage request = new(HttpMethod.Post, "/api/interim") { Content = form };
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);
        return await site.Client.SendAsync(request, Cancellation);
    }
}
