using System.Text.Json;
using System.Text.Json.Nodes;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

/// <summary>One visit through the interface for programs alone and through the command line alone.</summary>
public sealed class SameNumbersTests(Site site) : IClassFixture<Site>
{
    private const double Scatter = 0.05;
    private const int MostSteps = 60;

    private static readonly string[] s_amounts = ["leg", "path", "gantry", "screw", "turns", "x", "y", "corner", "height", "u", "v", "at"];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_practice_visit_played_by_both_takes_the_same_steps_to_the_same_numbers()
    {
        string folder = Directory.CreateTempSubdirectory("markreader-same-").FullName;
        try
        {
            string file = Path.Combine(folder, "visit.json");
            JsonElement visit = await (await site.Client.SendAsync(HttpMethod.Post, "/api/visits", """{ "practice": { "seed": 6 } }""")).JsonAsync();
            string address = $"/api/visits/{visit.GetProperty("id").GetInt64()}";
            JsonElement byApi = visit.GetProperty("advice");
            JsonObject own = new() { ["machine"] = JsonNode.Parse(visit.GetProperty("machine").GetRawText()), ["events"] = new JsonArray() };
            for (int step = 0; ; step++)
            {
                await File.WriteAllTextAsync(file, own.ToJsonString(), Cancellation);
                JsonElement byCommand = await CommandLineProgram.JsonAsync("advise", "--visit", file, "--json");
                Assert.Equal(JsonSerializer.Serialize(byApi), JsonSerializer.Serialize(byCommand));
                string kind = byApi.GetProperty("action").Text("kind");
                if (kind == "done")
                    break;
                Assert.True(step < MostSteps && kind != "stop", kind);
                JsonObject e = Event(byApi.GetProperty("action"));
                JsonObject sent = (JsonObject)e.DeepClone();
                if (kind is "fire" or "survey")
                {
                    byte[] photo = await site.Client.GetByteArrayAsync(address + "/pulse", Cancellation);
                    await PhotographAsync(photo, Path.Combine(folder, "pulse.jpg"), e, sent);
                }

                ((JsonArray)own["events"]!).Add((JsonNode)e);
                JsonElement added = await (await site.Client.SendAsync(HttpMethod.Post, address + "/events", sent.ToJsonString(), ("Idempotency-Key", $"step{step}"))).JsonAsync();
                byApi = added.GetProperty("advice");
            }

            Assert.Equal("within", byApi.GetProperty("state").GetProperty("machine").Text("verdict"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // Measured twice: by measure for the command line's own file, by the service for its visit.
    private async Task PhotographAsync(byte[] photo, string path, JsonObject own, JsonObject sent)
    {
        await File.WriteAllBytesAsync(path, photo, Cancellation);
        JsonElement mark = (await CommandLineProgram.JsonAsync("measure", path, "--json")).GetProperty("marks")[0];
        JsonElement c = mark.GetProperty("covariance");
        own["u"] = mark.GetProperty("u").GetDouble();
        own["v"] = mark.GetProperty("v").GetDouble();
        // A photo does not show how far the pulses scatter.
        double variance = Scatter * Scatter;
        own["covariance"] = new JsonArray(
            new JsonArray(c[0][0].GetDouble() + variance, c[0][1].GetDouble()), new JsonArray(c[1][0].GetDouble(), c[1][1].GetDouble() + variance));
        using MultipartFormDataContent form = Forms.Form(("photo", photo));
        sent["photo"] = (await (await site.Client.PostAsync("/api/photos", form, Cancellation)).JsonAsync()).Text("id");
        sent["mark"] = 0;
    }

    private static JsonObject Event(JsonElement action)
    {
        JsonObject e = new() { ["kind"] = action.Text("kind") == "fire" ? "mark" : action.Text("kind") };
        foreach (string amount in s_amounts)
        {
            if (action.TryGetProperty(amount, out JsonElement value))
                e[amount] = JsonNode.Parse(value.GetRawText());
        }

        return e;
    }
}
