using System.Text.Json.Nodes;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

public sealed class InterimTests : IDisposable
{
    private static readonly string s_fixtures = Fixtures.Folder("photos");

    private readonly string _folder = Directory.CreateTempSubdirectory("interim-").FullName;

    private string Kept => Path.Combine(_folder, "kept.json");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_set_of_photos_is_kept_and_what_differs_afterwards_is_flagged()
    {
        foreach (string name in (string[])["grey.jpg", "blue-tape.jpg"])
            File.Copy(Path.Combine(s_fixtures, name), Path.Combine(_folder, name));
        Assert.Contains("2 photos with", (await TheProgram.Run("interim", _folder, "--keep", Kept)).IsDone().Output, StringComparison.Ordinal);
        (await TheProgram.Run("interim", _folder, "--keep", Kept)).IsRefusal(2, "OUTPUT_NOT_WRITABLE");

        Assert.Contains("2 of 2 photos as before", (await TheProgram.Run("interim", _folder, "--against", Kept)).IsDone().Output, StringComparison.Ordinal);

        JsonNode record = JsonNode.Parse(await File.ReadAllTextAsync(Kept, TestContext.Current.CancellationToken))!;
        JsonNode mark = record["photos"]![0]!["marks"]![0]!;
        mark["u"] = mark["u"]!.GetValue<double>() + 0.1;
        await File.WriteAllTextAsync(Kept, record.ToJsonString(), TestContext.Current.CancellationToken);
        Answer flagged = await TheProgram.Run("interim", _folder, "--against", Kept, "--json");
        Assert.Equal(3, flagged.Status);
        Assert.Contains("error: INTERIM_DIFFERS: 1 of 2 photos", flagged.Error, StringComparison.Ordinal);
        File.Delete(Path.Combine(_folder, "grey.jpg"));
        Assert.Matches(@"grey\.jpg +– +– +photo is gone", (await TheProgram.Run("interim", _folder, "--against", Kept)).Output);
        Assert.Equal(["beyond", "same"], flagged.Json.GetProperty("photos").EnumerateArray().Select(p => p.GetProperty("verdict").GetString()));
    }

    [Fact]
    public async Task Wrong_calls_say_what_to_do()
    {
        (await TheProgram.Run("interim", _folder)).IsRefusal(2, "OPTION_MISSING");
        (await TheProgram.Run("interim", _folder, "--keep", Kept)).IsRefusal(2, "INTERIM_FOLDER_INVALID");
        await File.WriteAllTextAsync(Path.Combine(_folder, "notes.jpg"), "no photo", TestContext.Current.CancellationToken);
        (await TheProgram.Run("interim", _folder, "--keep", Kept)).IsRefusal(2, "INTERIM_FOLDER_INVALID");
        Assert.False(File.Exists(Kept));
        await File.WriteAllTextAsync(Kept, "{}", TestContext.Current.CancellationToken);
        (await TheProgram.Run("interim", _folder, "--against", Kept)).IsRefusal(2, "INTERIM_RECORD_UNREADABLE");
    }
}
