using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

[Collection(nameof(PhotoTests))]
public sealed class PropagateTests(Photos photos)
{
    private string[] Call => ["propagate", "--near", photos["near.jpg"], "--far", photos["both.jpg"], "--near-path", "80", "--far-path", "480"];

    [Fact]
    public async Task Both_results_agree_for_a_leg_with_every_source_of_uncertainty()
    {
        JsonElement json = (await TheProgram.Run(
        [
            .. Call, "--ruler-u", "40.3", "--ruler-v", "39.9", "--ruler-uncertainty", "0.2", "--tape-height", "0.6", "--pivot-offset", "5", "--pivot-uncertainty", "3",
            "--incidence", "45", "--trials", "200000", "--json",
        ])).IsDone().Json;
        Assert.Equal(200_000, json.GetProperty("trials").GetInt32());
        Assert.True(json.GetProperty("agrees").GetBoolean());
        JsonElement linear = json.GetProperty("linear"), drawn = json.GetProperty("monteCarlo");
        foreach (string name in new[] { "standardUncertaintyU", "standardUncertaintyV" })
            Assert.Equal(1, drawn.GetProperty(name).GetDouble() / linear.GetProperty(name).GetDouble(), 0.02);
        Assert.Equal(linear.GetProperty("correlation").GetDouble(), drawn.GetProperty("correlation").GetDouble(), 0.02);
        Assert.InRange(json.GetProperty("covered").GetDouble(), 0.945, 0.955);
        Assert.Equal(2.448, json.GetProperty("ellipseFactor").GetDouble(), 0.03);
    }

    [Fact]
    public async Task Hardly_known_path_lengths_show_that_the_linear_result_fails()
    {
        // 80 mm of travel known to 15 mm: the quotient of the lengths is far from normal.
        JsonElement json = (await TheProgram.Run(
            "propagate", "--near", photos["near.jpg"], "--far", photos["both.jpg"], "--near-path", "400", "--far-path", "480", "--path-uncertainty", "11", "--json")).IsDone().Json;
        Assert.False(json.GetProperty("agrees").GetBoolean());
        Assert.True(json.GetProperty("monteCarlo").GetProperty("standardUncertaintyU").GetDouble() > 1.05 * json.GetProperty("linear").GetProperty("standardUncertaintyU").GetDouble());
    }

    [Fact]
    public async Task The_table_has_both_results_and_says_whether_they_agree()
    {
        string output = (await TheProgram.Run([.. Call, "--trials", "50000", "--seed", "3"])).IsDone().Output;
        Assert.Matches(@"^aim point +linear +Monte Carlo +tolerance", output);
        Assert.Matches(@"standard uncertainty u/mm +0\.\d{4} +0\.\d{4}", output);
        Assert.Contains("50000 trials, seed 3", output, StringComparison.Ordinal);
        Assert.Contains("agree within the numerical tolerance", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TRIALS_INVALID", "--trials", "12")]
    [InlineData("TRIALS_INVALID", "--trials", "1e12")]
    [InlineData("TRIALS_INVALID", "--trials", "nan")]
    [InlineData("TRIALS_INVALID", "--trials", "20000.5")]
    [InlineData("SEED_INVALID", "--seed", "-1")]
    [InlineData("NUMBER_UNREADABLE", "--seed", "x")]
    public async Task Draws_that_make_no_sense_are_refused(string code, params string[] options) =>
        (await TheProgram.Run([.. Call, .. options])).IsRefusal(2, code);
}
