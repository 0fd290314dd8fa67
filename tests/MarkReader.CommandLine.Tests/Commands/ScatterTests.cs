using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

/// <summary>scatter PHOTO… and scatter --readings FILE.</summary>
public sealed class ScatterTests(Photos photos) : IClassFixture<Photos>, IDisposable
{
    private const string Pulses = "u,v,uncertainty\n1.05,-0.98,0.01\n0.98,-1.03,0.01\n1.02,-0.95,0.01\n0.94,-1.04,0.01\n1.00,-1.00,0.01\n1.03,-1.06,0.01\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("scatter-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>By hand: Σ(u − ū)² = 0.00773333, Σ(v − v̄)² = 0.0084, five degrees of freedom; 0.01² taken off.</summary>
    [Fact]
    public async Task Pulses_of_a_table_give_the_scatter_worked_out_by_hand()
    {
        JsonElement json = (await TheProgram.Run("scatter", "--readings", Write(Pulses), "--path", "500", "--json")).IsDone().Json;
        double u = Math.Sqrt((0.00773333333 / 5) - 0.0001), v = Math.Sqrt((0.0084 / 5) - 0.0001);
        Assert.Equal(u, json.GetProperty("u").GetProperty("corrected").GetDouble(), 1e-9);
        Assert.Equal(v, json.GetProperty("v").GetProperty("corrected").GetDouble(), 1e-9);
        Assert.Equal(Math.Round(Math.Sqrt(((u * u) + (v * v)) / 2), 3), json.GetProperty("pulseScatter").GetDouble());
        Assert.Equal(4 * u, json.GetProperty("stability").GetProperty("u").GetDouble(), 1e-9);
        Assert.Equal(1000 * 2 * v / 500, json.GetProperty("stability").GetProperty("angular").GetProperty("v").GetDouble(), 1e-6);
    }

    [Fact]
    public async Task The_line_that_is_printed_fits_into_a_machine_of_a_visit()
    {
        string words = (await TheProgram.Run("scatter", "--readings", Write(Pulses))).IsDone().Output;
        string line = Regex.Match(words, "^  (\"pulseScatter\": [0-9.]+)\r?$", RegexOptions.Multiline).Groups[1].Value;
        Assert.NotEqual("", line);
        string visit = Path.Combine(_folder, "visit.json");
        await File.WriteAllTextAsync(visit, $$"""{"machine": {"legs": [{"name": "1", "nearPath": 80, "farPath": 480}], {{line}}}, "events": []}""", TestContext.Current.CancellationToken);
        JsonElement advice = (await TheProgram.Run("advise", "--visit", visit, "--json")).IsDone().Json;
        Assert.Equal("fire", advice.GetProperty("action").GetProperty("kind").GetString());
    }

    /// <summary>Three marks of two photos; every mark counts as a pulse, and the photos' own uncertainty is known.</summary>
    [Fact]
    public async Task Marks_of_photos_are_taken_as_pulses_and_drawn_into_a_report()
    {
        string report = Path.Combine(_folder, "scatter.pdf");
        Answer answer = await TheProgram.Run("scatter", photos["near.jpg"], photos["both.jpg"], "--pdf", report, "--json");
        Assert.True(answer.Status == 0, answer.Error);
        Assert.Equal(3, answer.Json.GetProperty("pulses").GetInt32());
        Assert.True(answer.Json.GetProperty("u").GetProperty("corrected").GetDouble() < answer.Json.GetProperty("u").GetProperty("observed").GetDouble());
        Assert.True(new FileInfo(report).Length > 1000);
    }

    [Fact]
    public async Task A_scatter_that_is_not_offered_prints_its_figures_and_no_line()
    {
        string words = (await TheProgram.Run("scatter", "--readings", Write("u,v\n-3,1\n2,2\n3,-2\n"))).IsDone().Output;
        Assert.Contains("3 pulses: a mark scatters by", words, StringComparison.Ordinal);
        Assert.Contains("No value is offered for a machine: marks that scatter by more than 1 mm", words, StringComparison.Ordinal);
        Assert.DoesNotContain("pulseScatter", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calls_that_cannot_be_used_are_refused_with_what_to_do()
    {
        (await TheProgram.Run("scatter")).IsRefusal(2, "ARGUMENT_MISSING");
        (await TheProgram.Run("scatter", photos["near.jpg"], "--readings", Write(Pulses))).IsRefusal(2, "OPTIONS_CONFLICT");
        (await TheProgram.Run("scatter", "--readings", Write("u,v\n1,2\n"))).IsRefusal(2, "TOO_FEW_PULSES");
        (await TheProgram.Run("scatter", "--readings", Write("u,v,uncertainty\n1,2,-1\n"))).IsRefusal(2, "READINGS_UNREADABLE");
        (await TheProgram.Run("scatter", "--readings", Write(Pulses), "--path", "0")).IsRefusal(2, "STUDY_LENGTH_INVALID");
        (await TheProgram.Run("scatter", "--readings", Write(Pulses), "--width", "9")).IsRefusal(2, "STUDY_OPTION_INVALID");
        (await TheProgram.Run("scatter", photos["near.jpg"], photos["words.jpg"])).IsRefusal(2, "PHOTO_FORMAT");
        (await TheProgram.Run("scatter", photos["none.jpg"])).IsRefusal(2, "FILE_UNREADABLE");
        (await TheProgram.Run("scatter", photos["near.jpg"], photos["both.jpg"], photos["near.jpg"])).IsRefusal(2, "STUDY_PHOTO_TWICE");
    }

    private string Write(string text)
    {
        string file = Path.Combine(_folder, $"{Guid.NewGuid():N}.csv");
        File.WriteAllText(file, text);
        return file;
    }
}
