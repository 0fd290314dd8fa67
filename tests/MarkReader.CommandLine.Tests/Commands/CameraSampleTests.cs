using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

/// <summary>The sample set of fixtures/camera: a board's photos, the camera that took them, and cards of the same camera.</summary>
public sealed class CameraSampleTests : IDisposable
{
    private static readonly string s_samples = Fixtures.Folder("camera");

    private readonly string _folder = Directory.CreateTempSubdirectory("camera-samples-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_sample_boards_give_back_the_camera_that_took_them()
    {
        JsonElement truth = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(s_samples, "camera.json"), TestContext.Current.CancellationToken)).RootElement;
        string[] boards = Directory.GetFiles(s_samples, "board-*.jpg");
        JsonElement found = (await TheProgram.Run(["camera", .. boards, "--out", Path.Combine(_folder, "profile.json"), "--json"])).IsDone().Json;

        double middleX = (truth.GetProperty("width").GetDouble() - 1) / 2, middleY = (truth.GetProperty("height").GetDouble() - 1) / 2;
        Dictionary<string, double> expected = new()
        {
            ["fx"] = truth.GetProperty("focalLength").GetDouble(),
            ["cx"] = middleX + truth.GetProperty("principalX").GetDouble(),
            ["cy"] = middleY + truth.GetProperty("principalY").GetDouble(),
            ["k1"] = truth.GetProperty("k1").GetDouble(),
            ["k2"] = truth.GetProperty("k2").GetDouble(),
        };
        Assert.All(found.GetProperty("parameters").EnumerateArray().Where(p => expected.ContainsKey(p.GetProperty("name").GetString()!)), p =>
        {
            double off = p.GetProperty("value").GetDouble() - expected[p.GetProperty("name").GetString()!];
            Assert.InRange(off / p.GetProperty("standardUncertainty").GetDouble(), -4, 4);
        });
    }

    [Fact]
    public async Task The_sample_cards_are_audited_with_their_cameras_profile()
    {
        JsonElement audit = (await TheProgram.Run("audit", s_samples, "--camera", Path.Combine(s_samples, "profile.json"), "--json")).IsDone().Json;

        JsonElement summary = audit.GetProperty("summary");
        Assert.Equal(3, summary.GetProperty("found").GetInt32());
        Assert.Equal(0, summary.GetProperty("false").GetInt32());
        Assert.InRange(summary.GetProperty("max").GetDouble(), 0, 0.02);
    }
}
