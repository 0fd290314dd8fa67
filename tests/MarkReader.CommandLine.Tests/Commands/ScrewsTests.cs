using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

public sealed class ScrewsTests
{
    private static readonly string[] s_frame = ["--pivot", "lowerLeft", "--screw", "A=lowerRight", "--screw", "B=upperLeft", "--arm", "30"];
    private static readonly string[] s_learned = ["--response", "A=-46,0.8,1.2", "--response", "B=0.3,32,1.5"];

    [Fact]
    public async Task Without_a_response_sizes_a_first_turn_and_the_cautions_are_printed_but_no_direction()
    {
        string output = (await Run("--slope", "-6,8", "--thread", "M4")).IsDone().Output;
        Assert.Matches(@"(?m)^A, or the opposite +[+-]46\.67 +9\.33 +0\.00 +\d\.\d\d$", output);
        Assert.Matches(@"(?m)^A +0\.129 +\d\.\d{3} +1/8 turn, direction not known$", output);
        Assert.Contains("A: direction not known: try a small part first, and learn: 1/16 turn clockwise", output, StringComparison.Ordinal);
        Assert.Contains("Cautions for every pulse", output, StringComparison.Ordinal);
        Assert.DoesNotContain("counter-clockwise", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_responses_turns_have_a_direction_and_marks_an_expected_place()
    {
        string output = (await Run(["--near", "0.42,-0.16", "--far", "1.30,-2.05", "--near-path", "80", "--far-path", "480", "--pitch", "0.7", .. s_learned])).IsDone().Output;
        Assert.Matches(@"(?m)^spread over the travel of 400 mm: 2\.08 mm, tolerance 0\.50 mm: outside$", output);
        Assert.Matches(@"(?m)^A +\+0\.0\d\d +\d\.\d{3} +(?:a touch (?:more|less) than )?\d+/\d+ turn clockwise \(\d+°\)$", output);
        Assert.Matches(@"(?m)^far +[+-]\d\.\d{3} +[+-]\d\.\d{3} +\d\.\d{3} x \d\.\d{3}$", output);
        Assert.DoesNotContain("not known", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Three_screws_without_a_pivot_share_the_slope()
    {
        JsonElement json = (await TheProgram.Run(
            "screws", "--slope", "3,3", "--screw", "A=lowerRight", "--screw", "B=upperLeft", "--screw", "C=upperRight", "--arm", "30", "--thread", "1/4-20", "--json")).IsDone().Json;
        Assert.Equal(["A", "B", "C"], json.GetProperty("screws").EnumerateArray().Select(s => s.GetProperty("screw").GetString()));
        Assert.Equal(JsonValueKind.Null, json.GetProperty("frame").GetProperty("pivot").ValueKind);
        // ASME B1.1: 25.4 mm / 20.
        Assert.Equal(1.27, json.GetProperty("frame").GetProperty("pitch").GetDouble(), 1e-12);
    }

    [Fact]
    public async Task An_unknown_thread_is_refused_with_the_known_ones()
    {
        Answer answer = await Run("--slope", "1,1", "--thread", "M9");
        answer.IsRefusal(2, "THREAD_UNKNOWN");
        Assert.Contains("M4, M5", answer.Error, StringComparison.Ordinal);
        Assert.Contains("1/4-20", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("OPTION_MISSING", "--thread", "M4")]
    [InlineData("OPTION_MISSING", "--slope", "1,1")]
    [InlineData("OPTION_MISSING", "--near", "1,1", "--thread", "M4")]
    [InlineData("OPTION_MISSING", "--near", "1,1", "--far", "2,2", "--near-path", "80", "--thread", "M4")]
    [InlineData("OPTION_MISSING", "--slope", "1,1", "--tolerance", "0.3", "--thread", "M4")]
    [InlineData("OPTIONS_CONFLICT", "--slope", "1,1", "--near", "1,1", "--thread", "M4")]
    [InlineData("OPTIONS_CONFLICT", "--slope", "1,1", "--pitch", "0.7", "--thread", "M4")]
    [InlineData("OPTIONS_CONFLICT", "--slope-uncertainty", "0.1", "--thread", "M4")]
    [InlineData("COMPONENTS_UNREADABLE", "--slope", "1", "--thread", "M4")]
    [InlineData("FRAME_SCREW_UNREADABLE", "--slope", "1,1", "--thread", "M4", "--screw", "C")]
    [InlineData("FRAME_CONTACTS_INVALID", "--slope", "1,1", "--thread", "M4", "--screw", "C=upperRight")]
    [InlineData("FRAME_PITCH_INVALID", "--slope", "1,1", "--pitch", "0")]
    [InlineData("FRAME_PITCH_INVALID", "--slope", "1,1", "--pitch", "nan")]
    [InlineData("SLOPE_INVALID", "--slope", "1,1e9", "--thread", "M4")]
    [InlineData("SCREW_UNKNOWN", "--slope", "1,1", "--thread", "M4", "--response", "D=40,0,1")]
    public async Task A_wrong_call_is_refused_in_one_line(string code, params string[] arguments) => (await Run(arguments)).IsRefusal(2, code);

    private static Task<Answer> Run(params string[] arguments) => TheProgram.Run(["screws", .. arguments, .. s_frame]);
}
