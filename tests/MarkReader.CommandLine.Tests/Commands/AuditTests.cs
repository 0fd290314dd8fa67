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
    }

    [Fact]
    public async Task The_table_names_every_photo()
    {
        string output = (await TheProgram.Run("audit", photos.Folder)).IsDone().Output;
        Assert.Matches(@"both\.jpg +2 +2 +0 +0\.\d{4} +\d of 2 +ok", output);
        Assert.Contains("2 photos, 2 as expected; 3 marks, 3 found, 0 missed, 0 false", output, StringComparison.Ordinal);
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
