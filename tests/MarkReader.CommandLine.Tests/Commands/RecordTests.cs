using System.Text;
using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

public sealed class RecordTests : IDisposable
{
    private const string Visit = """
        { "machine": { "name": "small", "legs": [ { "name": "1", "nearPath": 80, "farPath": 480 } ] },
          "events": [ { "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }, { "kind": "mark", "leg": "1", "path": 480, "u": 2.4, "v": 1.4, "uncertainty": 0.05 } ] }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("markreader-record-").FullName;

    public RecordTests() => File.WriteAllText(Path.Combine(_folder, "visit.json"), Visit);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_visit_file_becomes_a_record_in_every_form()
    {
        foreach ((string name, string begin) in new[] { ("r.pdf", "%PDF"), ("r.html", "<!DOCTYPE html>"), ("r.csv", "event,"), ("r.json", "{") })
        {
            Answer answer = await TheProgram.RunIn(_folder, "record", "--visit", "visit.json", "--out", name, "--by", "A. Turner", "--unit", "in", "--decimal", "comma", "--paper", "letter");
            Assert.Equal((0, ""), (answer.Status, answer.Error));
            Assert.StartsWith(begin, Encoding.Latin1.GetString(await File.ReadAllBytesAsync(Path.Combine(_folder, name), TestContext.Current.CancellationToken)), StringComparison.Ordinal);
        }

        using JsonDocument json = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(_folder, "r.json"), TestContext.Current.CancellationToken));
        Assert.Equal("A. Turner", json.RootElement.GetProperty("visit").GetProperty("doneBy").GetString());
        Assert.Equal("outside", json.RootElement.GetProperty("steps")[0].GetProperty("left").GetProperty("verdict").GetString());
        Assert.Contains("0,0945", await File.ReadAllTextAsync(Path.Combine(_folder, "r.html"), TestContext.Current.CancellationToken), StringComparison.Ordinal); // 2.4 mm
    }

    [Theory]
    [InlineData("RECORD_FORMAT_UNKNOWN", "--visit", "visit.json", "--out", "r.txt")]
    [InlineData("UNIT_UNKNOWN", "--visit", "visit.json", "--out", "r.pdf", "--unit", "ell")]
    [InlineData("OUTPUT_IS_INPUT", "--visit", "visit.json", "--out", "visit.json")]
    [InlineData("FILE_MISSING", "--visit", "none.json", "--out", "r.pdf")]
    [InlineData("OPTION_MISSING", "--visit", "visit.json")]
    [InlineData("BUNDLE_UNREADABLE", "--visit", "half.zip", "--out", "r.pdf")]
    public async Task What_cannot_be_written_is_refused(string code, params string[] options)
    {
        await File.WriteAllBytesAsync(Path.Combine(_folder, "half.zip"), "PK\u0003\u0004half"u8.ToArray(), TestContext.Current.CancellationToken);
        (await TheProgram.RunIn(_folder, ["record", .. options])).IsRefusal(2, code);
    }
}
