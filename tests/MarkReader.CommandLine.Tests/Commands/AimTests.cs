using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

[Collection(nameof(PhotoTests))]
public sealed class AimTests(Photos photos)
{
    [Fact]
    public async Task Aim_from_two_photos_is_the_truth_within_a_twentieth_of_a_millimetre() =>
        IsTheTruth(await TheProgram.Run([.. Two, "--json"]));

    [Fact]
    public async Task Aim_from_one_photo_is_the_same_and_numbers_may_have_a_comma() => IsTheTruth(await TheProgram.Run(
        "aim", "--photo", photos["both.jpg"], "--first", "right", "--near-path", "80,0", "--far-path", "480.0", "--path-uncertainty", "0,5", "--json"));

    [Fact]
    public async Task Human_output_has_a_table_the_slope_and_the_cautions()
    {
        string output = (await TheProgram.Run(Two)).IsDone().Output;
        Assert.Matches(@"near mark +\+0\.7\d\d +-1\.0\d\d +0\.\d{3} x 0\.\d{3}", output);
        Assert.Matches(@"far mark +-2\.8\d\d +\+3\.7\d\d ", output);
        Assert.Matches(@"aim point +\+1\.[45]\d\d +-(1\.9|2\.0)\d\d ", output);
        Assert.Matches(@"slope: u -(8\.9|9\.0)\d mrad, v \+1[12]\.\d\d mrad", output);
        Assert.Contains("invisible", output, StringComparison.Ordinal);
        Assert.DoesNotContain("warning", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_uncertainty_is_explained_in_words_and_in_a_document()
    {
        string folder = Directory.CreateTempSubdirectory("markreader-aim-").FullName, file = Path.Combine(folder, "uncertainty.pdf");
        string output = (await TheProgram.Run([.. Two, "--path-uncertainty", "5", "--pdf", file])).IsDone().Output;

        Assert.Contains("comes from one part: path lengths.", output, StringComparison.Ordinal);
        Assert.Contains("One part must shrink to 50 % of its size: path lengths.", output, StringComparison.Ordinal);
        Assert.Equal("%PDF-"u8, File.ReadAllBytes(file).AsSpan(0, 5));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_pivot_offset_and_an_incidence_angle_change_the_aim()
    {
        JsonElement aim = (await TheProgram.Run([.. Two, "--pivot-offset", "10", "--pivot-uncertainty", "2", "--incidence", "45", "--json"])).IsDone().Json;
        Assert.Equal(0.225, aim.GetProperty("ratio").GetDouble(), 0.01);
        Assert.Equal(45, aim.GetProperty("leg").GetProperty("incidenceDegrees").GetDouble(), 1e-9);
        Assert.Equal(Photos.SlopeU / Math.Sqrt(2), aim.GetProperty("slope").GetProperty("u").GetDouble(), 0.1);
    }

    [Theory]
    [InlineData("480", "80", "PATHS_SWAPPED")]
    [InlineData("80", "80", "PATHS_EQUAL")]
    [InlineData("-80", "480", "PATH_NEGATIVE")]
    [InlineData("0", "480", "PATH_ZERO")]
    [InlineData("nan", "480", "PATH_NOT_A_NUMBER")]
    [InlineData("80", "1e400", "PATH_NOT_A_NUMBER")]
    [InlineData("80", "48000", "PATH_TOO_LONG")]
    [InlineData("80", "81", "TRAVEL_TOO_SHORT")]
    [InlineData("80", "1,480", "NUMBER_UNREADABLE")]
    [InlineData("eighty", "480", "NUMBER_UNREADABLE")]
    [InlineData("80", "", "NUMBER_UNREADABLE")]
    public async Task Path_lengths_that_make_no_sense_are_refused(string near, string far, string code) =>
        (await TheProgram.Run("aim", "--near", photos["near.jpg"], "--far", photos["both.jpg"], "--near-path", near, "--far-path", far)).IsRefusal(2, code);

    [Theory]
    [InlineData("OPTION_MISSING", "--near", "a.jpg")]
    [InlineData("OPTION_MISSING")]
    [InlineData("OPTION_MISSING", "--photo", "a.jpg")]
    [InlineData("OPTIONS_CONFLICT", "--photo", "a.jpg", "--near", "b.jpg")]
    [InlineData("OPTIONS_CONFLICT", "--near", "a.jpg", "--far", "b.jpg", "--first", "left")]
    [InlineData("CHOICE_UNKNOWN", "--photo", "a.jpg", "--first", "up")]
    [InlineData("CHOICE_UNKNOWN", "--photo", "a.jpg", "--first", "1")]
    [InlineData("FILE_MISSING", "--near", "a.jpg", "--far", "b.jpg")]
    [InlineData("INCIDENCE_INVALID", "--incidence", "90")]
    [InlineData("PIVOT_OFFSET_INVALID", "--pivot-offset", "1000")]
    [InlineData("PATH_UNCERTAINTY_INVALID", "--path-uncertainty", "-1")]
    [InlineData("RULER_MISSING", "--ruler-u", "40")]
    [InlineData("RULER_INVALID", "--ruler-u", "nan", "--ruler-v", "40")]
    [InlineData("RULER_INVALID", "--ruler-u", "40", "--ruler-v", "1e300")]
    [InlineData("RULER_UNCERTAINTY_INVALID", "--ruler-u", "40", "--ruler-v", "40", "--ruler-uncertainty", "-1")]
    [InlineData("TAPE_HEIGHT_INVALID", "--tape-height", "-100")]
    [InlineData("TAPE_HEIGHT_UNCERTAINTY_INVALID", "--tape-height", "1", "--tape-height-uncertainty", "nan")]
    [InlineData("TAPE_HEIGHT_MISSING", "--tape-height-uncertainty", "1")]
    [InlineData("PLACE_UNREADABLE", "--near", "a.jpg", "--far", "b.jpg", "--near-at", "12")]
    [InlineData("PLACE_UNREADABLE", "--near", "a.jpg", "--far", "b.jpg", "--far-at", "nan,1")]
    [InlineData("OPTION_MISSING", "--photo", "a.jpg", "--near-at", "1,2")]
    [InlineData("OPTIONS_CONFLICT", "--photo", "a.jpg", "--near-at", "1,2", "--far-at", "3,4", "--first", "left")]
    public async Task Options_that_do_not_fit_are_refused(string code, params string[] options) =>
        (await TheProgram.Run(["aim", "--near-path", "80", "--far-path", "480", .. options])).IsRefusal(2, code);

    [Fact]
    public async Task The_same_photo_twice_and_a_photo_without_marks_are_refused()
    {
        (await TheProgram.Run("aim", "--near", photos["near.jpg"], "--far", photos["near.jpg"], "--near-path", "80", "--far-path", "480")).IsRefusal(2, "SAME_PHOTO");
        (await TheProgram.Run("aim", "--near", photos["near.jpg"], "--far", photos["blank.png"], "--near-path", "80", "--far-path", "480")).IsRefusal(3, "NO_MARK");
        // A page says tap; here an option names the place.
        Answer one = await TheProgram.Run("aim", "--photo", photos["near.jpg"], "--first", "left", "--near-path", "80", "--far-path", "480");
        one.IsRefusal(3, "TWO_MARKS_NEEDED");
        Assert.Contains("--near-at and --far-at", one.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rulers_and_tape_height_enter_the_numbers_and_the_budget()
    {
        JsonElement plain = (await TheProgram.Run([.. Two, "--json"])).IsDone().Json.GetProperty("aim");
        Answer answer = await TheProgram.Run([.. Two, "--ruler-u", "41", "--ruler-v", "39", "--tape-height", "0.5", "--json"]);
        JsonElement aim = answer.IsDone().Json.GetProperty("aim");
        Assert.Equal(plain.GetProperty("u").GetDouble() * 41 / 40, aim.GetProperty("u").GetDouble(), 0.15);
        Assert.Contains("printScale", Sources(aim));
        Assert.Contains("parallax", Sources(aim));
        Assert.DoesNotContain("printScale", Sources(plain));
        (await TheProgram.Run([.. Two, "--ruler-u", "100", "--ruler-v", "100"])).IsRefusal(2, "RULER_READING");
    }

    [Fact]
    public async Task Human_output_has_the_budget_with_the_largest_source_first()
    {
        string output = (await TheProgram.Run(Two)).IsDone().Output;
        Assert.Matches(@"uncertainty from +near u/mm +share/% +far u/mm +share/% +aim u/mm +share/%\r?\n\w", output);
        Assert.Matches(@"path lengths +- +- +- +- +0\.\d{4} +\d", output);
    }

    [Fact]
    public async Task Marks_named_in_one_photo_give_the_same_aim()
    {
        JsonElement both = (await TheProgram.Run("measure", photos["both.jpg"], "--json")).IsDone().Json;
        string[] places = [.. both.GetProperty("marks").EnumerateArray().OrderByDescending(m => m.GetProperty("u").GetDouble())
            .Select(m => FormattableString.Invariant($"{m.GetProperty("x").GetDouble() + 4:0.0},{m.GetProperty("y").GetDouble() - 3:0.0}"))];
        Assert.Equal(2, places.Length);
        IsTheTruth(await TheProgram.Run("aim", "--photo", photos["both.jpg"], "--near-at", places[0], "--far-at", places[1], "--near-path", "80", "--far-path", "480", "--json"));
        IsTheTruth(await TheProgram.Run([.. Two, "--far-at", places[1], "--json"]));
        (await TheProgram.Run([.. Two, "--far-at", "1,1"])).IsRefusal(2, "TAP_OUTSIDE_ZONE");
    }

    private static string[] Sources(JsonElement point) => [.. point.GetProperty("budget").EnumerateArray().Select(c => c.GetProperty("source").GetString()!)];

    private string[] Two => ["aim", "--near", photos["near.jpg"], "--far", photos["both.jpg"], "--near-path", "80", "--far-path", "480"];

    private static void IsTheTruth(Answer answer)
    {
        JsonElement json = answer.IsDone().Json;
        JsonElement aim = json.GetProperty("aim");
        double du = aim.GetProperty("u").GetDouble() - Photos.AimU, dv = aim.GetProperty("v").GetDouble() - Photos.AimV;
        Assert.InRange(Math.Sqrt((du * du) + (dv * dv)), 0, 0.05);
        Assert.Equal(0.2, json.GetProperty("ratio").GetDouble(), 0.001);
        Assert.Equal(0, json.GetProperty("warnings").GetArrayLength());
    }
}
