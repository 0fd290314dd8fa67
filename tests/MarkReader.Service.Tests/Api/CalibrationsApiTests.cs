using System.Net;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

/// <summary>From photos of the board to a profile that is used, by the interface alone.</summary>
public sealed class CalibrationsApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Theory]
    [InlineData("", HttpStatusCode.OK)]
    [InlineData("?paper=letter", HttpStatusCode.OK)]
    [InlineData("?paper=b0", HttpStatusCode.BadRequest)]
    public async Task The_board_is_given_out_to_print(string query, HttpStatusCode status)
    {
        using HttpResponseMessage board = await Client.GetAsync("/api/calibrations/board.pdf" + query, Cancellation);
        Assert.Equal(status, board.StatusCode);
        if (status == HttpStatusCode.OK)
            Assert.StartsWith("%PDF", await board.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photos_of_the_board_give_a_profile_that_photos_are_measured_with()
    {
        using HttpResponseMessage begun = await Client.SendAsync(HttpMethod.Post, "/api/calibrations", null, ("Idempotency-Key", "begin"));
        Assert.Equal(HttpStatusCode.Created, begun.StatusCode);
        string address = begun.Headers.Location!.ToString();
        using HttpResponseMessage repeated = await Client.SendAsync(HttpMethod.Post, "/api/calibrations", null, ("Idempotency-Key", "begin"));
        Assert.Equal(address, repeated.Headers.Location!.ToString());

        JsonElement last = default;
        foreach (byte[] photo in BoardPhotos.Boards.Take(7))
        {
            using HttpResponseMessage added = await AddAsync(address, photo);
            Assert.Equal(HttpStatusCode.Created, added.StatusCode);
            last = await added.JsonAsync();
        }

        Assert.Equal((7, 8), (last.GetProperty("used").GetInt32(), last.GetProperty("version").GetInt64()));
        Assert.Contains("more", last.GetProperty("missing").EnumerateArray().Select(m => m.GetString()));
        Assert.NotEmpty(last.Text("next"));
        using (HttpResponseMessage again = await AddAsync(address, BoardPhotos.Boards[2]))
        {
            Assert.Equal(HttpStatusCode.OK, again.StatusCode);
            Assert.Equal(7, (await again.JsonAsync()).GetProperty("photos").GetArrayLength());
            Assert.Equal("\"8\"", again.Headers.ETag!.Tag);
        }

        JsonElement noBoard = await (await AddAsync(address, Photos.Near)).ProblemAsync(HttpStatusCode.UnprocessableEntity, "NO_BOARD");
        JsonElement cropped = await (await AddAsync(address, BoardPhotos.Cropped)).ProblemAsync(HttpStatusCode.UnprocessableEntity, "CAMERA_SIZES_DIFFER");
        await (await AddAsync(address, "no photo"u8.ToArray())).ProblemAsync(HttpStatusCode.UnsupportedMediaType, "PHOTO_FORMAT");
        Assert.Equal((8, 9), (noBoard.GetProperty("number").GetInt32(), cropped.GetProperty("number").GetInt32()));
        using (HttpResponseMessage removed = await Client.SendAsync(HttpMethod.Delete, address + "/photos/8", null, ("If-Match", "\"10\"")))
            Assert.Equal("CAMERA_SIZES_DIFFER", Assert.Single((await removed.JsonAsync()).GetProperty("photos").EnumerateArray().Select(p => p.GetProperty("refusal")), r => r.ValueKind == JsonValueKind.Object).Text("code"));
        await (await Client.SendAsync(HttpMethod.Delete, address + "/photos/8", null, ("If-Match", "*"))).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        await (await Client.SendAsync(HttpMethod.Delete, address + "/photos/9", null)).ProblemAsync(HttpStatusCode.PreconditionRequired, "IF_MATCH_MISSING");

        await (await MakeAsync(address, "phone", "\"3\"")).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        await (await MakeAsync(address, "", "*")).ProblemAsync(HttpStatusCode.BadRequest, "CAMERA_NAME_INVALID");
        using HttpResponseMessage made = await MakeAsync(address, "phone", "\"11\"");
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        JsonElement camera = await made.JsonAsync();
        Assert.Equal("automatic", camera.Text("use"));
        JsonElement listed = Assert.Single((await (await Client.GetAsync("/api/calibrations?limit=100", Cancellation)).JsonAsync()).GetProperty("calibrations").EnumerateArray(), c => address.EndsWith($"/{c.GetProperty("id")}", StringComparison.Ordinal));
        Assert.Equal((8, camera.GetProperty("id").GetInt64()), (listed.GetProperty("photos").GetInt32(), listed.GetProperty("cameraId").GetInt64()));
        JsonElement focal = camera.GetProperty("report").GetProperty("parameters")[0];
        // How good a profile is, is tested where it is worked out; here, that it is this camera's.
        Assert.InRange(focal.GetProperty("value").GetDouble() - BoardPhotos.FocalLength, -0.5, 0.5);
        Assert.Equal("photo 9", Assert.Single(camera.GetProperty("report").GetProperty("refused").EnumerateArray()).Text("name"));
        Assert.Equal(made.Headers.Location!.ToString(), (await (await Client.GetAsync(address, Cancellation)).JsonAsync()).Text("camera"));

        // In use: a photo by itself, an aim of two photos, and the time of its last use.
        using MultipartFormDataContent form = Forms.Form(("photo", BoardPhotos.Card));
        JsonElement photographed = await (await Client.PostAsync("/api/photos", form, Cancellation)).JsonAsync();
        Assert.Equal("phone", photographed.GetProperty("measurement").GetProperty("photo").Text("cameraProfile"));
        using MultipartFormDataContent pair = Forms.Aim(("near", BoardPhotos.Card), ("far", BoardPhotos.Far));
        JsonElement cameras = (await (await Client.PostAsync("/api/aims", pair, Cancellation)).JsonAsync()).GetProperty("report").GetProperty("cameras");
        Assert.Equal(("phone", "phone"), (cameras.Text("near"), cameras.Text("far")));
        long machine = (await (await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("press"))).JsonAsync()).GetProperty("id").GetInt64();
        long begunVisit = (await (await Client.SendAsync(HttpMethod.Post, "/api/visits", $$"""{ "machine": {{machine}} }""")).JsonAsync()).GetProperty("id").GetInt64();
        Assert.Contains("Measured with the camera profile phone.", await Client.GetStringAsync($"/visits/{begunVisit}?photo={photographed.Text("id")}", Cancellation), StringComparison.Ordinal);
        JsonElement used = Assert.Single((await (await Client.GetAsync("/api/cameras", Cancellation)).JsonAsync()).GetProperty("cameras").EnumerateArray(), c => c.Text("name") == "phone");
        Assert.Equal(JsonValueKind.String, used.GetProperty("lastUsedAt").ValueKind);

        // Given out, deleted, taken in again elsewhere under the same name.
        string file = await Client.GetStringAsync(camera.Text("file"), Cancellation);
        using HttpResponseMessage copy = await Client.SendAsync(HttpMethod.Post, "/api/cameras", file);
        Assert.Equal(HttpStatusCode.OK, copy.StatusCode);
        Assert.Equal(camera.GetProperty("id").GetInt64(), (await copy.JsonAsync()).GetProperty("id").GetInt64());
        await (await Client.SendAsync(HttpMethod.Post, "/api/cameras", file.Replace("\"views\": 7", "\"views\": 6", StringComparison.Ordinal))).ProblemAsync(HttpStatusCode.Conflict, "CAMERA_NAME_TAKEN");
        using HttpResponseMessage gone = await Client.SendAsync(HttpMethod.Delete, made.Headers.Location!.ToString(), null, ("If-Match", made.Headers.ETag!.Tag));
        Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        using HttpResponseMessage taken = await Client.SendAsync(HttpMethod.Post, "/api/cameras", file, ("Idempotency-Key", "in"));
        using HttpResponseMessage once = await Client.SendAsync(HttpMethod.Post, "/api/cameras", file, ("Idempotency-Key", "in"));
        Assert.Equal(taken.Headers.Location, once.Headers.Location);
        Assert.Equal(file, await Client.GetStringAsync((await taken.JsonAsync()).Text("file"), Cancellation));
        using HttpResponseMessage end = await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", "*"));
        Assert.Equal(HttpStatusCode.NoContent, end.StatusCode);
        await (await AddAsync(address, BoardPhotos.Boards[0])).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task A_profile_of_too_few_photos_is_refused()
    {
        using HttpResponseMessage begun = await Client.SendAsync(HttpMethod.Post, "/api/calibrations", null);
        string address = begun.Headers.Location!.ToString();
        foreach (byte[] photo in BoardPhotos.Boards.Take(2))
            (await AddAsync(address, photo)).Dispose();
        JsonElement problem = await (await MakeAsync(address, "too few", "\"3\"")).ProblemAsync(HttpStatusCode.UnprocessableEntity, "CAMERA_FEW_VIEWS");
        Assert.StartsWith("of the photos of the board, 2 can be used", problem.Text("detail"), StringComparison.Ordinal);
        Assert.DoesNotContain("too few", await Client.GetStringAsync("/api/cameras", Cancellation), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "CAMERA_UNREADABLE")]
    [InlineData("[]", "CAMERA_UNREADABLE")]
    [InlineData("""{ "name": "x" }""", "CAMERA_UNREADABLE")]
    public async Task What_is_no_profile_is_refused(string json, string code) =>
        await (await Client.SendAsync(HttpMethod.Post, "/api/cameras", json)).ProblemAsync(HttpStatusCode.BadRequest, code);

    private async Task<HttpResponseMessage> AddAsync(string address, byte[] photo)
    {
        using MultipartFormDataContent form = Forms.Form(("photo", photo));
        return await Client.PostAsync(address + "/photos", form, Cancellation);
    }

    private Task<HttpResponseMessage> MakeAsync(string address, string name, string tag) =>
        Client.SendAsync(HttpMethod.Put, address + "/camera", JsonSerializer.Serialize(new { name }), ("If-Match", tag));
}
