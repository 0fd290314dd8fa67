using System.Globalization;
using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.CommandLine.Tests.Commands;

/// <summary>study FOLDER, study --readings FILE and study --plan.</summary>
public sealed class StudyTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("study-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>SixSigma's data (E. L. Cano, J. M. Moguerza and A. Redchuk, Six Sigma with R, Springer 2012) along u, the same turned over along v; with its printed results.</summary>
    [Fact]
    public async Task A_table_of_readings_gives_the_printed_study_on_both_axes()
    {
        string file = Table(',');
        Answer answer = (await TheProgram.Run("study", "--readings", file, "--pool", "0.05", "--tolerance", "1", "--json")).IsDone();
        JsonElement u = answer.Json.GetProperty("u"), gauge = Part(u, "gauge");
        Assert.True(u.GetProperty("pooled").GetBoolean());
        Assert.Equal(0.14792656, gauge.GetProperty("standardDeviation").GetDouble(), 6e-9);
        Assert.Equal(25.38, gauge.GetProperty("contribution").GetDouble(), 0.006);
        Assert.Equal(6 * 14.792656 / 2, gauge.GetProperty("ofTolerance").GetDouble(), 1e-5);
        Assert.Equal(2, u.GetProperty("categories").GetInt32());
        Assert.Equal(gauge.GetProperty("variance").GetDouble(), Part(answer.Json.GetProperty("v"), "gauge").GetProperty("variance").GetDouble(), 1e-12);
        Assert.Equal("tooCoarse", answer.Json.GetProperty("verdict").GetString());
        // A spreadsheet that writes decimal commas holds the same study.
        Answer commas = (await TheProgram.Run("study", "--readings", Table(';'), "--pool", "0.05", "--tolerance", "1", "--json")).IsDone();
        Assert.Equal(answer.Output, commas.Output);
    }

    [Fact]
    public async Task Photos_of_one_target_by_two_people_make_a_study_and_a_report()
    {
        Render();
        string report = Path.Combine(_folder, "report.pdf");
        Answer answer = await TheProgram.Run("study", Path.Combine(_folder, "photos"), "--pdf", report, "--json");
        Assert.True(answer.Status == 0, answer.Error);
        JsonElement json = answer.Json;
        Assert.Equal((3, 2, 2, true), (json.GetProperty("parts").GetInt32(), json.GetProperty("operators").GetInt32(), json.GetProperty("repeats").GetInt32(), json.GetProperty("photos").GetBoolean()));
        foreach (string axis in (string[])["u", "v"])
        {
            JsonElement study = json.GetProperty(axis);
            Assert.Contains("photo", study.GetProperty("anova").EnumerateArray().Select(r => r.GetProperty("source").GetString()));
            Assert.InRange(Part(study, "gauge").GetProperty("standardDeviation").GetDouble(), 1e-5, 0.1);
            Assert.InRange(study.GetProperty("stated").GetProperty("uncertainty").GetDouble(), 1e-4, 0.2);
        }

        Assert.Equal("%PDF", System.Text.Encoding.ASCII.GetString((await File.ReadAllBytesAsync(report, TestContext.Current.CancellationToken)).AsSpan(0, 4)));
        Answer words = await TheProgram.Run("study", Path.Combine(_folder, "photos"));
        Assert.Contains("2 people or phones, 2 photos each, 3 marks", words.Output, StringComparison.Ordinal);
        // The tape was rendered above the card and nobody said so: the study shows it, and says what to measure.
        Assert.Contains("--tape-height", words.Output, StringComparison.Ordinal);
        Answer told = await TheProgram.Run("study", Path.Combine(_folder, "photos"), "--tape-height", "0.3");
        Assert.Contains("The stated uncertainty explains the scatter", told.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("--tape-height", told.Output, StringComparison.Ordinal);
        // A copy of a photo is none, and neither is one photo less: both said before anything is measured.
        File.Copy(Path.Combine(_folder, "photos", "anna", "1.jpg"), Path.Combine(_folder, "photos", "berta", "2.jpg"), overwrite: true);
        (await TheProgram.Run("study", Path.Combine(_folder, "photos"))).IsRefusal(2, "STUDY_PHOTO_TWICE");
        File.Delete(Path.Combine(_folder, "photos", "berta", "2.jpg"));
        (await TheProgram.Run("study", Path.Combine(_folder, "photos"))).IsRefusal(2, "STUDY_UNBALANCED");
    }

    [Fact]
    public async Task A_plan_says_how_many_photos_a_study_needs()
    {
        JsonElement plan = (await TheProgram.Run("study", "--plan", "--width", "0.6", "--json")).IsDone().Json;
        JsonElement best = plan.GetProperty("best");
        Assert.Equal(best.GetProperty("photos").GetInt32(), best.GetProperty("operators").GetInt32() * best.GetProperty("repeats").GetInt32());
        string words = (await TheProgram.Run("study", "--plan", "--width", "0.6")).IsDone().Output;
        Assert.StartsWith($"For a 95 % interval of the gauge with a half-width of 60 % of it: {best.GetProperty("photos").GetInt32()} photos", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calls_and_files_that_cannot_be_used_are_refused_with_what_to_do()
    {
        (await TheProgram.Run("study")).IsRefusal(2, "ARGUMENT_MISSING");
        (await TheProgram.Run("study", _folder, "--readings", Table(','))).IsRefusal(2, "OPTIONS_CONFLICT");
        (await TheProgram.Run("study", Path.Combine(_folder, "none"))).IsRefusal(2, "STUDY_FOLDER_INVALID");
        (await TheProgram.Run("study", _folder)).IsRefusal(2, "STUDY_FOLDER_INVALID");
        (await TheProgram.Run("study", "--readings", Write("part,operator,u,v\n1,a,0,0\n"))).IsRefusal(2, "READINGS_UNREADABLE");
        (await TheProgram.Run("study", "--readings", Write("part,operator,repeat,u,v\n1,a,1,0,1e9\n"))).IsRefusal(2, "READINGS_UNREADABLE");
        (await TheProgram.Run("study", "--readings", Write("part,operator,repeat,u,v\n"))).IsRefusal(2, "READINGS_EMPTY");
        (await TheProgram.Run("study", "--readings", Write("part,operator,repeat,u,v\n1,a,1,0,0\n2,a,1,0,0\n"))).IsRefusal(2, "STUDY_TOO_SMALL");
        (await TheProgram.Run("study", "--readings", Table(','), "--pool", "2")).IsRefusal(2, "STUDY_OPTION_INVALID");
        (await TheProgram.Run("study", "--readings", Table(','), "--f-against", "all")).IsRefusal(2, "CHOICE_UNKNOWN");
        (await TheProgram.Run("study", "--readings", Table(','), "--tolerance", "nan")).IsRefusal(2, "STUDY_LENGTH_INVALID");
        (await TheProgram.Run("study", "--readings", Table(','), "--pdf", "report.txt")).IsRefusal(2, "OUTPUT_NOT_WRITABLE");
        (await TheProgram.Run("study", "--plan", "--marks", "1")).IsRefusal(2, "STUDY_OPTION_INVALID");
    }

    private static JsonElement Part(JsonElement axis, string name) => axis.GetProperty("components").EnumerateArray().Single(c => c.GetProperty("part").GetString() == name);

    private string Table(char separator)
    {
        double[,,] data =
        {
            { { 1.27, 1.12, 1.73 }, { 0.90, 1.09, 1.28 }, { 1.09, 1.15, 1.77 } },
            { { 1.34, 1.24, 1.64 }, { 1.32, 1.00, 1.65 }, { 1.27, 1.14, 1.77 } },
            { { 1.09, 1.48, 1.64 }, { 1.26, 1.15, 1.44 }, { 1.09, 1.15, 1.68 } },
        };
        List<string> lines = [string.Join(separator, "part", "operator", "repeat", "u/mm", "v/mm")];
        for (int j = 0; j < 3; j++)
        {
            for (int k = 0; k < 3; k++)
            {
                for (int i = 0; i < 3; i++)
                {
                    string[] cells = [$"p{i}", $"o{j}", $"{k}", Text(data[j, k, i]), Text(5 - data[j, k, i])];
                    lines.Add(string.Join(separator, separator == ';' ? cells.Select(c => c.Replace('.', ',')) : cells));
                }
            }
        }

        return Write(string.Join('\n', lines));
    }

    private static string Text(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private string Write(string text)
    {
        string file = Path.Combine(_folder, $"{Guid.NewGuid():N}.csv");
        File.WriteAllText(file, text);
        return file;
    }

    /// <summary>One target with three marks, two photos each by two people from other places.</summary>
    private void Render()
    {
        BurnSpec[] burns = [.. new[] { (-6.0, 2.5), (0.5, -5.0), (5.5, 4.0) }.Select(m => new BurnSpec(m.Item1, m.Item2, 0.9, 0.12, 2.6, 1.4, 0.4))];
        int seed = 40;
        foreach (string who in (string[])["anna", "berta"])
        {
            Directory.CreateDirectory(Path.Combine(_folder, "photos", who));
            for (int k = 1; k <= 2; k++)
            {
                seed++;
                byte[] photo = Scene.Render(new("study", 40)
                {
                    NoiseSeed = seed,
                    Camera = new(900, 900, 1000),
                    Pose = new(12 + (3 * k), 3 + (seed % 5), 40 * seed, (seed % 3) - 1),
                    Burns = burns,
                    TapeHeight = 0.3,
                    Output = new(PhotoFormat.Jpeg),
                }).Photo;
                File.WriteAllBytes(Path.Combine(_folder, "photos", who, $"{k}.jpg"), photo);
            }
        }
    }
}
