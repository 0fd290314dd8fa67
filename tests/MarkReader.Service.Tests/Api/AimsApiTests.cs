using System.Net;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class AimsApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task A_near_and_a_far_photo_give_the_true_aim_point_with_its_overlay()
    {
        using HttpResponseMessage sent = await PostAsync();

        JsonElement aim = await sent.JsonAsync();
        Assert.True(sent.IsSuccessStatusCode, aim.ToString());
        JsonElement report = aim.GetProperty("report");
        Assert.Equal(Photos.Aim.U, report.GetProperty("aim").GetProperty("u").GetDouble(), 0.05);
        Assert.Equal(Photos.Aim.V, report.GetProperty("aim").GetProperty("v").GetDouble(), 0.05);
        Assert.Equal(80.0 / 400, report.GetProperty("ratio").GetDouble(), 0.01);
        Assert.Equal(480, aim.GetProperty("inputs").GetProperty("farPath").GetDouble());

        foreach (string address in (string[])[aim.Text("overlay"), aim.Text("overlay") + "?view=crop"])
        {
            using HttpResponseMessage overlay = await Client.GetAsync(address, Cancellation);
            Assert.Equal("image/svg+xml", overlay.Content.Headers.ContentType?.MediaType);
            Assert.StartsWith("<svg", await overlay.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        }
        JsonElement again = await (await Client.GetAsync($"/api/aims/{aim.GetProperty("id")}", Cancellation)).JsonAsync();
        Assert.Equal(report.GetRawText(), again.GetProperty("report").GetRawText());
    }

    [Fact]
    public async Task The_uncertainty_of_an_aim_is_explained_on_a_page_and_on_paper()
    {
        using HttpResponseMessage sent = await PostAsync(("farPath", 483));
        long id = (await sent.JsonAsync()).GetProperty("id").GetInt64();

        string page = WebUtility.HtmlDecode(await Client.GetStringAsync($"/results/{id}/budget", Cancellation));
        Assert.Contains("One part must shrink to 50 % of its size: path lengths.", page, StringComparison.Ordinal);
        Assert.Contains("measure the path lengths better", page, StringComparison.Ordinal);
        using HttpResponseMessage paper = await Client.GetAsync($"/api/aims/{id}/budget.pdf?unit=in&paper=letter", Cancellation);
        Assert.Equal("application/pdf", paper.Content.Headers.ContentType?.MediaType);
        Assert.StartsWith("%PDF-", await paper.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        using HttpResponseMessage none = await Client.GetAsync("/api/aims/999999/budget.pdf", Cancellation);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        using HttpResponseMessage unit = await Client.GetAsync($"/api/aims/{id}/budget.pdf?unit=cm", Cancellation);
        Assert.Equal(HttpStatusCode.BadRequest, unit.StatusCode);
    }

    [Fact]
    public async Task The_same_photos_and_numbers_are_one_result()
    {
        using HttpResponseMessage first = await PostAsync(("farPath", 481));
        using HttpResponseMessage second = await PostAsync(("farPath", "481,0"));
        using HttpResponseMessage other = await PostAsync(("farPath", 482));
        Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        Assert.Equal(HttpStatusCode.OK, second.StatusCode);
        Assert.Equal(HttpStatusCode.Created, other.StatusCode);
        Assert.Equal((await first.JsonAsync()).GetProperty("id").GetInt64(), (await second.JsonAsync()).GetProperty("id").GetInt64());
    }

    [Fact]
    public async Task Photos_that_are_kept_can_be_named_instead_of_sent_again()
    {
        using MultipartFormDataContent near = Forms.Form(("photo", Photos.Near));
        using MultipartFormDataContent far = Forms.Form(("photo", Photos.Far));
        string nearId = (await (await Client.PostAsync("/api/photos", near, Cancellation)).JsonAsync()).Text("id");
        string farId = (await (await Client.PostAsync("/api/photos", far, Cancellation)).JsonAsync()).Text("id");

        using HttpResponseMessage sent = await PostAsync(("near", ""), ("far", ""), ("nearId", nearId), ("farId", farId), ("nearPath", 81));

        Assert.Equal(HttpStatusCode.Created, sent.StatusCode);
        Assert.Equal(farId, (await sent.JsonAsync()).GetProperty("inputs").Text("farPhoto"));
    }

    [Fact]
    public async Task Rulers_and_tape_height_are_kept_with_the_aim_and_enter_its_budget()
    {
        using HttpResponseMessage sent = await PostAsync(("rulerU", "40,4"), ("rulerV", 40.2), ("tapeHeight", 0.5), ("farPath", 483));
        JsonElement aim = await sent.JsonAsync();
        Assert.True(sent.IsSuccessStatusCode, aim.ToString());
        JsonElement card = aim.GetProperty("inputs").GetProperty("card");
        Assert.Equal((40.4, 0.5), (card.GetProperty("rulerU").GetDouble(), card.GetProperty("tapeHeight").GetDouble()));
        string[] sources = [.. aim.GetProperty("report").GetProperty("aim").GetProperty("budget").EnumerateArray().Select(c => c.Text("source"))];
        Assert.Contains("printScale", sources);
        Assert.Contains("parallax", sources);
        Assert.Equal(8, aim.GetProperty("report").GetProperty("quality").GetProperty("near").GetProperty("markersTotal").GetInt32());
    }

    [Theory]
    [InlineData("rulerU", 40, "rulerV", "RULER_MISSING")]
    [InlineData("rulerV", 40, "rulerU", "RULER_MISSING")]
    [InlineData("tapeHeight", "nan", "tapeHeight", "TAPE_HEIGHT_INVALID")]
    [InlineData("tapeHeight", 500, "tapeHeight", "TAPE_HEIGHT_INVALID")]
    [InlineData("nearAt", "here", "nearAt", "PLACE_UNREADABLE")]
    [InlineData("farAt", "1,1", "far", "TAP_OUTSIDE_ZONE")]
    [InlineData("nearAt", "1e9,1e9", "near", "TAP_OUTSIDE_PHOTO")]
    public async Task Readings_and_places_that_make_no_sense_are_refused_at_their_field(string field, object value, string refused, string code)
    {
        using HttpResponseMessage sent = await PostAsync((field, value));
        JsonElement problem = await sent.ProblemAsync(HttpStatusCode.BadRequest, code);
        Assert.Equal(refused, problem.Text("field"));
    }

    [Fact]
    public async Task Rulers_of_another_card_are_refused_at_their_field()
    {
        using HttpResponseMessage sent = await PostAsync(("rulerU", 100), ("rulerV", 100));
        Assert.Equal("rulerU", (await sent.ProblemAsync(HttpStatusCode.BadRequest, "RULER_READING")).Text("field"));
    }

    [Fact]
    public async Task Spots_of_a_photo_name_its_marks_and_an_aim_can_be_asked_for_with_them()
    {
        using MultipartFormDataContent far = Forms.Form(("photo", Photos.Far));
        string id = (await (await Client.PostAsync("/api/photos", far, Cancellation)).JsonAsync()).Text("id");
        JsonElement spots = await (await Client.GetAsync($"/api/photos/{id}/spots", Cancellation)).JsonAsync();
        Assert.Equal(4, spots.GetProperty("zone").GetArrayLength());
        string[] places = [.. spots.GetProperty("marks").EnumerateArray().Select(m => FormattableString.Invariant($"{m.GetProperty("x").GetDouble():0.0},{m.GetProperty("y").GetDouble():0.0}"))];
        Assert.Equal(2, places.Length);

        // Sorted by u: the near mark is the left one.
        using HttpResponseMessage sent = await PostAsync(("near", ""), ("far", ""), ("photoId", id), ("photoNearAt", places[0]), ("photoFarAt", places[1]));
        JsonElement aim = await sent.JsonAsync();
        Assert.True(sent.IsSuccessStatusCode, aim.ToString());
        Assert.Equal(Photos.Aim.U, aim.GetProperty("report").GetProperty("aim").GetProperty("u").GetDouble(), 0.05);
        Assert.Equal(JsonValueKind.Null, aim.GetProperty("inputs").GetProperty("first").ValueKind);
        using HttpResponseMessage half = await PostAsync(("near", ""), ("far", ""), ("photoId", id), ("photoNearAt", places[0]));
        Assert.Equal("photo", (await half.ProblemAsync(HttpStatusCode.BadRequest, "FIELD_MISSING")).Text("field"));
    }

    [Fact]
    public async Task One_photo_with_both_marks_gives_the_same_aim_point()
    {
        using HttpResponseMessage sent = await PostAsync(("near", ""), ("far", ""), ("photo", Photos.Far), ("first", "left"));
        JsonElement aim = await sent.JsonAsync();
        Assert.True(sent.IsSuccessStatusCode, aim.ToString());
        Assert.Equal("left", aim.GetProperty("inputs").Text("first"));
        Assert.Equal(Photos.Aim.U, aim.GetProperty("report").GetProperty("aim").GetProperty("u").GetDouble(), 0.05);
    }

    [Fact]
    public async Task Inches_are_taken_as_inches()
    {
        using HttpResponseMessage sent = await PostAsync(("unit", "in"), ("nearPath", "3.15"), ("farPath", "18,9"));
        JsonElement inputs = (await sent.JsonAsync()).GetProperty("inputs");
        Assert.Equal(3.15 * 25.4, inputs.GetProperty("nearPath").GetDouble(), 1e-9);
        Assert.Equal(18.9 * 25.4, inputs.GetProperty("farPath").GetDouble(), 1e-9);
    }

    [Theory]
    [InlineData("nearPath", "", "FIELD_MISSING", "nearPath")]
    [InlineData("nearPath", "eighty", "NUMBER_UNREADABLE", "nearPath")]
    [InlineData("farPath", "1,480", "NUMBER_UNREADABLE", "farPath")]
    [InlineData("nearPath", "-80", "PATH_NEGATIVE", "nearPath")]
    [InlineData("nearPath", "0", "PATH_ZERO", "nearPath")]
    [InlineData("nearPath", "NaN", "PATH_NOT_A_NUMBER", "nearPath")]
    [InlineData("farPath", "480000", "PATH_TOO_LONG", "farPath")]
    [InlineData("farPath", "80", "PATHS_EQUAL", "farPath")]
    [InlineData("nearPath", "500", "PATHS_SWAPPED", "farPath")]
    [InlineData("pathUncertainty", "200", "TRAVEL_UNCERTAIN", "pathUncertainty")]
    [InlineData("pathUncertainty", "-1", "PATH_UNCERTAINTY_INVALID", "pathUncertainty")]
    [InlineData("incidenceDegrees", "90", "INCIDENCE_INVALID", "incidenceDegrees")]
    [InlineData("pivotOffset", "-90", "PIVOT_OFFSET_INVALID", "pivotOffset")]
    [InlineData("pivotUncertainty", "-1", "PIVOT_UNCERTAINTY_INVALID", "pivotUncertainty")]
    [InlineData("unit", "furlong", "FIELD_INVALID", "unit")]
    public async Task A_wrong_number_is_refused_at_its_field(string field, string text, string code, string named)
    {
        using HttpResponseMessage sent = await PostAsync((field, text));
        JsonElement problem = await sent.ProblemAsync(HttpStatusCode.BadRequest, code);
        Assert.Equal(named, problem.Text("field"));
    }

    [Fact]
    public async Task Everything_that_is_wrong_with_a_form_is_told_at_once()
    {
        using MultipartFormDataContent form = Forms.Form(("shows", "both"), ("nearPath", "x"));
        JsonElement problem = await (await Client.PostAsync("/api/aims", form, Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "FIELD_MISSING");
        Assert.Equal(["photo", "first", "nearPath", "farPath"], problem.GetProperty("errors").EnumerateArray().Select(error => error.Text("field")));
    }

    [Fact]
    public async Task A_file_that_is_no_photo_is_refused_at_its_field()
    {
        using HttpResponseMessage sent = await PostAsync(("far", "not a photo"u8.ToArray()));
        JsonElement problem = await sent.ProblemAsync(HttpStatusCode.UnsupportedMediaType, "PHOTO_FORMAT");
        Assert.Equal("far", problem.Text("field"));
    }

    [Fact]
    public async Task The_same_photo_twice_is_refused()
    {
        using HttpResponseMessage sent = await PostAsync(("far", Photos.Near));
        JsonElement problem = await sent.ProblemAsync(HttpStatusCode.BadRequest, "SAME_PHOTO");
        Assert.Equal("far", problem.Text("field"));
    }

    [Theory]
    [InlineData("near")]
    [InlineData("far")]
    public async Task A_refusal_of_a_photo_is_kept_with_both_photos_and_names_the_field(string field)
    {
        byte[] plain = PlainPng.Grey(800, 600);
        using HttpResponseMessage sent = await PostAsync((field, plain));
        JsonElement problem = await sent.ProblemAsync(HttpStatusCode.UnprocessableEntity, "NO_CARD");
        Assert.Equal(field, problem.Text("field"));

        JsonElement aim = await (await Client.GetAsync($"/api/aims/{problem.GetProperty("aimId")}", Cancellation)).JsonAsync();
        Assert.Equal("NO_CARD", aim.GetProperty("refusal").Text("code"));
        Assert.Equal(JsonValueKind.Null, aim.GetProperty("report").ValueKind);
        string kept = aim.GetProperty("inputs").Text(field + "Photo");
        Assert.Equal(plain, await Client.GetByteArrayAsync($"/api/photos/{kept}/original", Cancellation));
        await (await Client.GetAsync($"/api/aims/{problem.GetProperty("aimId")}/overlay.svg", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_FOUND");
    }

    [Fact]
    public async Task A_photo_that_is_not_kept_cannot_be_named()
    {
        using HttpResponseMessage sent = await PostAsync(("near", ""), ("nearId", new string('a', 64)));
        await sent.ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task A_deleted_aim_is_gone_and_so_are_its_photos()
    {
        using HttpResponseMessage sent = await PostAsync(("near", Photos.Variant(Photos.Near, 70)), ("far", Photos.Variant(Photos.Far, 70)));
        JsonElement aim = await sent.JsonAsync();
        string photo = "/api/photos/" + aim.GetProperty("inputs").Text("nearPhoto");
        await (await Client.DeleteAsync(photo, Cancellation)).ProblemAsync(HttpStatusCode.Conflict, "PHOTO_IN_USE");

        Assert.Equal(HttpStatusCode.NoContent, (await Client.DeleteAsync(sent.Headers.Location, Cancellation)).StatusCode);

        await (await Client.GetAsync(sent.Headers.Location, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
        await (await Client.GetAsync(photo, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task The_list_is_given_newest_first_in_pages_that_lead_to_each_other()
    {
        for (int i = 0; i < 3; i++)
            (await PostAsync(("farPath", 500 + i))).Dispose();
        List<long> seen = [];
        string? next = "/api/aims?limit=2";
        while (next is not null)
        {
            JsonElement page = await (await Client.GetAsync(next, Cancellation)).JsonAsync();
            seen.AddRange(page.GetProperty("aims").EnumerateArray().Select(aim => aim.GetProperty("id").GetInt64()));
            next = page.GetProperty("next").GetString();
        }
        Assert.True(seen.Count >= 3);
        Assert.Equal(seen.OrderDescending(), seen);
        Assert.Equal(seen.Count, seen.Distinct().Count());
    }

    [Theory]
    [InlineData("/api/aims/999999")]
    [InlineData("/api/aims/999999/overlay.svg")]
    public async Task An_aim_that_is_not_kept_is_not_found(string address) =>
        await (await Client.GetAsync(address, Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");

    private async Task<HttpResponseMessage> PostAsync(params (string Name, object Value)[] changes)
    {
        using MultipartFormDataContent form = Forms.Aim(changes);
        return await Client.PostAsync("/api/aims", form, Cancellation);
    }
}
