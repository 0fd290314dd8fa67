using System.Text.Json;

namespace MarkReader.Scenes.Tests.Output;

public class FixtureFilesTests
{
    private const long Megabyte = 1 << 20;

    [Fact]
    public void Every_photo_has_a_truth_file_and_together_they_stay_small()
    {
        string[] photos = [.. Directory.GetFiles(Repository.Fixtures).Where(f => Path.GetExtension(f) is ".jpg" or ".png" or ".webp").Order()];
        string[] truths = [.. Directory.GetFiles(Repository.Fixtures, "*.truth.json").Order()];
        Assert.True(photos.Length >= 24);
        Assert.Equal(photos.Select(Path.GetFileNameWithoutExtension), truths.Select(t => Path.GetFileName(t).Replace(".truth.json", "", StringComparison.Ordinal)));
        Assert.InRange(photos.Sum(p => new FileInfo(p).Length), 1, 18 * Megabyte);
    }

    [Fact]
    public void The_aim_points_of_the_truth_files_lie_on_the_line_through_their_marks_as_the_two_mark_formula_says()
    {
        int legs = 0;
        foreach (string file in Directory.GetFiles(Repository.Fixtures, "*.truth.json"))
        {
            using JsonDocument json = JsonDocument.Parse(File.ReadAllText(file));
            if (!json.RootElement.TryGetProperty("leg", out JsonElement leg))
                continue;
            legs++;
            double near = leg.GetProperty("nearPath").GetDouble();
            double share = near / (leg.GetProperty("farPath").GetDouble() - near);
            foreach (string axis in (string[])["u", "v"])
            {
                double n = leg.GetProperty("near").GetProperty(axis).GetDouble();
                double f = leg.GetProperty("far").GetProperty(axis).GetDouble();
                Assert.Equal(n - ((f - n) * share), leg.GetProperty("aim").GetProperty(axis).GetDouble(), 6);
            }
        }

        Assert.Equal(13, legs);
    }
}
