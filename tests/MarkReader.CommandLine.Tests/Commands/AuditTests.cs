using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

[Collection(nameof(PhotoTests))]
public sealed class AuditTests(Photos photos)
{
    [Fact]
    public async Task Photos_with_truth_files_are_found_and_summed_up()
    {
        JsonElement json = (await TheProgram.Run("audit", photos.Folder, "--json")).IsDone().Json;
        Assert.Equal(["both.jpg", "near.jpg"], json.GetProperty("photos").EnumerateArray().Select(p => p.GetProperty("name").GetString()));
        JsonElement summary = json.GetProperty("summary");
        Assert.Equal(3, summary.GetProperty("found").GetInt32());
        Assert.Equal(0, summary.GetProperty("missed").GetInt32());
        Assert.Equal(0, summary.GetProperty("false").GetInt32());
        Assert.InRange(summary.GetProperty("rms").GetDouble(), 0, 0.02);
        Assert.InRange(summary.GetProperty("coverageLow").GetDouble(), 0, 0.3);
        JsonElement kind = Assert.Single(json.GetProperty("kinds").EnumerateArray());
        Assert.Equal("-", kind.GetProperty("kind").GetString());
        foreach (JsonProperty figure in summary.EnumerateObject())
            Assert.Equal(figure.Value.ToString(), kind.GetProperty(figure.Name).ToString());
        Assert.All(
            json.GetProperty("photos").EnumerateArray().SelectMany(p => p.GetProperty("errors").EnumerateArray()),
            e => Assert.Equal(e.GetProperty("covered").GetBoolean(), e.GetProperty("mahalanobis").GetDouble() <= 2.4477));
    }

    [Fact]
    public async Task The_table_names_every_photo()
    {
        string output = (await TheProgram.Run("audit", photos.Folder)).IsDone().Output;
        Assert.Matches(@"both\.jpg +- +2 +2 +0 +0\.\d{4} +\d of 2 +ok", output);
        Assert.Contains("2 photos, 2 as expected; 3 marks, 3 found, 0 missed, 0 false", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_table_of_kinds_ends_with_a_line_for_all()
    {
        string output = (await TheProgram.Run("audit", photos.Folder)).IsDone().Output;
        Assert.Matches(@"(?m)^- +2 +3 +100\.0 +0 +0\.0( +0\.\d{4}){4} +\d+\.\d +\d+\.\d to \d+\.\d( +\d+\.\d\d){2} +0$", output);
        Assert.Matches(@"(?m)^all +2 +3 +100\.0", output);
    }

    [Fact]
    public async Task More_than_forty_photos_are_listed_only_when_asked_for()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("many-photos-");
        try
        {
            for (int i = 0; i < 41; i++)
            {
                await File.WriteAllTextAsync(Path.Combine(folder.FullName, $"p{i}.jpg"), "no photo", TestContext.Current.CancellationToken);
                await File.WriteAllTextAsync(Path.Combine(folder.FullName, $"p{i}.truth.json"), """{"expected": {"error": "PHOTO_FORMAT"}, "scene": {"kind": "text"}}""", TestContext.Current.CancellationToken);
            }

            string few = (await TheProgram.Run("audit", folder.FullName)).Output;
            Assert.DoesNotContain("p7.jpg", few, StringComparison.Ordinal);
            Assert.Matches(@"(?m)^text +41 +0 +-", few);
            Assert.Contains("p7.jpg", (await TheProgram.Run("audit", folder.FullName, "--photos")).Output, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData("audit.svg", "<?xml")]
    [InlineData("audit.png", "\u0089PNG")]
    public async Task The_plot_is_written_beside_the_figures(string name, string start)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("plot-");
        try
        {
            string file = Path.Combine(folder.FullName, name);
            Answer answer = (await TheProgram.Run("audit", photos.Folder, "--json", "--plot", file)).IsDone();
            Assert.Equal(2, answer.Json.GetProperty("photos").GetArrayLength());
            byte[] bytes = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
            Assert.Equal(start, System.Text.Encoding.Latin1.GetString(bytes, 0, start.Length));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData("plot.bmp", "PLOT_FORMAT_UNKNOWN")]
    [InlineData("nowhere/plot.svg", "OUTPUT_NOT_WRITABLE")]
    public async Task A_plot_that_cannot_be_written_is_told_before_anything_is_measured(string name, string code)
    {
        Answer answer = await TheProgram.Run("audit", photos.Folder, "--plot", photos[name]);
        answer.IsRefusal(2, code);
        Assert.Equal("", answer.Output);
    }

    [Fact]
    public async Task A_bad_truth_file_is_told_after_the_table_with_status_2()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("bad-truth-");
        try
        {
            File.Copy(photos["near.jpg"], Path.Combine(folder.FullName, "a.jpg"));
            File.Copy(photos["near.truth.json"], Path.Combine(folder.FullName, "a.truth.json"));
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "b.truth.json"), "{", TestContext.Current.CancellationToken);
            await File.WriteAllBytesAsync(Path.Combine(folder.FullName, "b.jpg"), [1], TestContext.Current.CancellationToken);
            Answer answer = await TheProgram.Run("audit", folder.FullName);
            answer.IsRefusal(2, "TRUTH_UNREADABLE");
            Assert.Contains("a.jpg", answer.Output, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task A_folder_that_is_not_there_is_refused() => (await TheProgram.Run("audit", photos["nowhere"])).IsRefusal(2, "AUDIT_FOLDER_MISSING");
}
