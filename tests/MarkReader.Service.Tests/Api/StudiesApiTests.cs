using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

/// <summary>Studies by the interface alone: planned, photographed, evaluated, and put to use.</summary>
public sealed class StudiesApiTests(Site site) : IClassFixture<Site>
{
    private const string Marks = """{ "kind": "marks", "name": "tape", "tolerance": 0.5, "people": ["anna", "berta"], "photosEach": 2 }""";
    private const string Pulses = """{ "kind": "pulses", "name": "press", "path": 480, "pulses": 4 }""";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private HttpClient Client => site.Client;

    [Fact]
    public async Task Photos_of_two_people_give_a_study_with_pictures_and_a_document()
    {
        string address = await BeginAsync(Marks, "study-1");
        Assert.Equal(address, await BeginAsync(Marks, "study-1"));
        await (await Client.SendAsync(HttpMethod.Post, "/api/studies", Pulses, ("Idempotency-Key", "study-1"))).ProblemAsync(HttpStatusCode.UnprocessableEntity, "IDEMPOTENCY_KEY_REUSED");
        await (await Client.GetAsync(address + "/report.pdf", Cancellation)).ProblemAsync(HttpStatusCode.UnprocessableEntity, "STUDY_NOT_READY");

        for (int i = 0; i < 4; i++)
        {
            using HttpResponseMessage added = await AddAsync(address, i < 2 ? "anna" : "berta", StudyPhotos.Targets[i]);
            Assert.Equal(HttpStatusCode.Created, added.StatusCode);
            JsonElement study = await added.JsonAsync();
            Assert.Equal((3 - i, i == 3), (study.GetProperty("missing").GetInt32(), study.GetProperty("marks").ValueKind == JsonValueKind.Object));
        }

        using (HttpResponseMessage again = await AddAsync(address, "anna", StudyPhotos.Targets[1]))
            Assert.Equal((HttpStatusCode.OK, "\"5\""), (again.StatusCode, again.Headers.ETag!.Tag));
        await (await AddAsync(address, "anna", StudyPhotos.Targets[4])).ProblemAsync(HttpStatusCode.Conflict, "STUDY_PHOTOS_ENOUGH");
        await (await AddAsync(address, "carla", StudyPhotos.Targets[4])).ProblemAsync(HttpStatusCode.BadRequest, "STUDY_PERSON_UNKNOWN");

        JsonElement result = (await (await Client.GetAsync(address, Cancellation)).JsonAsync()).GetProperty("marks");
        Assert.Equal((3, 2, 2, true), (result.GetProperty("parts").GetInt32(), result.GetProperty("operators").GetInt32(), result.GetProperty("repeats").GetInt32(), result.GetProperty("photos").GetBoolean()));
        foreach (string picture in (string[])["bars-u.svg", "bars-v.svg", "cloud.png"])
            Assert.True((await Client.GetByteArrayAsync($"{address}/pictures/{picture}", Cancellation)).Length > 1000);
        await (await Client.GetAsync(address + "/pictures/else.svg", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_FOUND");
        Assert.StartsWith("%PDF", await Client.GetStringAsync(address + "/report.pdf?unit=in&decimal=comma&paper=letter", Cancellation), StringComparison.Ordinal);
        await (await Client.GetAsync(address + "/report.pdf?unit=ell", Cancellation)).ProblemAsync(HttpStatusCode.BadRequest, "UNIT_UNKNOWN");
        await (await EnterAsync(address, 1, "*")).ProblemAsync(HttpStatusCode.Conflict, "STUDY_CONFLICT");

        // What is not used is listed all the same, with its number.
        JsonElement wider = await (await Client.SendAsync(HttpMethod.Put, address, Marks.Replace(": 2", ": 3", StringComparison.Ordinal), ("If-Match", "\"5\""))).JsonAsync();
        Assert.Equal((2, 3), (wider.GetProperty("missing").GetInt32(), wider.GetProperty("plan").GetProperty("photosEach").GetInt32()));
        JsonElement few = await (await AddAsync(address, "anna", StudyPhotos.Pulses[0])).ProblemAsync(HttpStatusCode.UnprocessableEntity, "STUDY_FEW_MARKS");
        Assert.Equal(5, few.GetProperty("number").GetInt32());
        using (HttpResponseMessage removed = await Client.SendAsync(HttpMethod.Delete, address + "/photos/5", null, ("If-Match", "\"7\"")))
            Assert.Equal(4, (await removed.JsonAsync()).GetProperty("photos").GetArrayLength());
        await (await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", "\"7\""))).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        await (await Client.SendAsync(HttpMethod.Delete, address, null)).ProblemAsync(HttpStatusCode.PreconditionRequired, "IF_MATCH_MISSING");
        JsonElement listed = (await (await Client.GetAsync("/api/studies?limit=100", Cancellation)).JsonAsync()).GetProperty("studies").EnumerateArray().First(s => address.EndsWith($"/{s.GetProperty("id")}", StringComparison.Ordinal));
        Assert.Equal(4, listed.GetProperty("photos").GetInt32());
        using HttpResponseMessage gone = await Client.SendAsync(HttpMethod.Delete, address, null, ("If-Match", "\"8\""));
        Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        await (await AddAsync(address, "anna", StudyPhotos.Targets[4])).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    [Fact]
    public async Task A_table_of_pulses_gives_the_scatter_that_a_machine_takes()
    {
        string address = await BeginAsync(Pulses, "study-2");
        await (await PutAsync(address, "u,v\n1,2\n", "text/csv")).ProblemAsync(HttpStatusCode.BadRequest, "TOO_FEW_PULSES");
        await (await PutAsync(address, "u,v\n", "application/json")).ProblemAsync(HttpStatusCode.UnsupportedMediaType, "MEDIA_TYPE_NOT_TAKEN");
        await (await PutAsync(address, new string('1', 300 << 10), "text/csv")).ProblemAsync(HttpStatusCode.RequestEntityTooLarge, "REQUEST_TOO_LARGE");
        using HttpResponseMessage put = await PutAsync(address, "u,v\n-0.1,0.2\n0,-0.2\n0.1,0\n", "text/csv");
        JsonElement scatter = (await put.JsonAsync()).GetProperty("scatter");
        // By hand, as where it is worked out.
        double value = scatter.GetProperty("pulseScatter").GetDouble();
        Assert.Equal(Math.Round(Math.Sqrt(0.025), 3), value);
        Assert.Equal(1000 * 2 * 0.1 / 480, scatter.GetProperty("stability").GetProperty("angular").GetProperty("u").GetDouble(), 1e-9);
        await (await AddAsync(address, "", StudyPhotos.Pulses[0])).ProblemAsync(HttpStatusCode.Conflict, "STUDY_CONFLICT");
        Assert.StartsWith("%PDF", await Client.GetStringAsync(address + "/report.pdf", Cancellation), StringComparison.Ordinal);

        using HttpResponseMessage kept = await Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("press"));
        long machine = (await kept.JsonAsync()).GetProperty("id").GetInt64();
        await (await EnterAsync(address, machine, "\"9\"")).ProblemAsync(HttpStatusCode.PreconditionFailed, "CHANGED_MEANWHILE");
        using HttpResponseMessage entered = await EnterAsync(address, machine, kept.Headers.ETag!.Tag);
        Assert.Equal((value, "\"2\""), ((await entered.JsonAsync()).GetProperty("machine").GetProperty("pulseScatter").GetDouble(), entered.Headers.ETag!.Tag));

        // A scatter of millimetres keeps its figures and goes into no machine.
        using HttpResponseMessage far = await PutAsync(address, "u,v\n-3,1\n2,2\n3,-2\n", "text/csv");
        Assert.Equal(JsonValueKind.Null, (await far.JsonAsync()).GetProperty("scatter").GetProperty("pulseScatter").ValueKind);
        await (await EnterAsync(address, machine, "*")).ProblemAsync(HttpStatusCode.UnprocessableEntity, "SCATTER_NOT_OFFERED");
        string page = await Client.GetStringAsync(address["/api".Length..], Cancellation);
        Assert.Contains("No value is offered.", page, StringComparison.Ordinal);
        Assert.Contains("A table stands in place of the plan: 3 pulses.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Choose this machine", page, StringComparison.Ordinal);
        using HttpResponseMessage away = await Client.SendAsync(HttpMethod.Delete, address + "/readings", null, ("If-Match", "*"));
        Assert.Equal((false, 4), ((await away.JsonAsync()).GetProperty("hasReadings").GetBoolean(), (await (await Client.GetAsync(address, Cancellation)).JsonAsync()).GetProperty("missing").GetInt32()));
        await (await Client.GetAsync("/api/studies/999", Cancellation)).ProblemAsync(HttpStatusCode.NotFound, "NOT_KEPT");
    }

    private async Task<string> BeginAsync(string json, string key)
    {
        using HttpResponseMessage begun = await Client.SendAsync(HttpMethod.Post, "/api/studies", json, ("Idempotency-Key", key));
        Assert.Equal(HttpStatusCode.Created, begun.StatusCode);
        return begun.Headers.Location!.ToString();
    }

    private async Task<HttpResponseMessage> AddAsync(string address, string person, byte[] photo)
    {
        using MultipartFormDataContent form = Forms.Form(("photo", photo), ("person", person));
        return await Client.PostAsync(address + "/photos", form, Cancellation);
    }

    private async Task<HttpResponseMessage> PutAsync(string address, string table, string type)
    {
        using HttpRequestMessage request = new(HttpMethod.Put, address + "/readings") { Content = new StringContent(table, Encoding.UTF8, type) };
        request.Headers.TryAddWithoutValidation("If-Match", "*");
        return await Client.SendAsync(request, Cancellation);
    }

    private Task<HttpResponseMessage> EnterAsync(string address, long machine, string tag) =>
        Client.SendAsync(HttpMethod.Put, address + "/machine", $$"""{ "machine": {{machine.ToString(CultureInfo.InvariantCulture)}} }""", ("If-Match", tag));
}
