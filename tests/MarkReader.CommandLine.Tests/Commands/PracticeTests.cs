using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

/// <summary>practice and advise, as a person calls them.</summary>
public sealed class PracticeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("practice-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task In_one_go_every_step_is_told_and_the_true_spread_at_the_end()
    {
        string output = (await Run("practice", "--auto", "--seed", "7", "--save", "visit.json")).IsDone().Output;
        Assert.StartsWith("Practice machine 7:", output, StringComparison.Ordinal);
        Assert.Contains("Cautions for every pulse", output, StringComparison.Ordinal);
        Assert.Matches(@"(?m)^  1\. Fire one pulse on leg 1 at the path length 80 mm\.$", output);
        Assert.Matches(@"(?m)^pulses +\d+ +\d+ +\d+$", output);
        Assert.Matches(@"(?m)^machine +within$", output);
        Assert.Matches(@"(?m)^true spread over the bed: before \d+\.\d\d mm, now 0\.[0-4]\d mm$", output);

        Answer advice = (await Run("advise", "--visit", "visit.json")).IsDone();
        Assert.StartsWith("Done.", advice.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("warning", advice.Output, StringComparison.Ordinal);
        Assert.Equal("done", (await Run("advise", "--visit", "visit.json", "--json")).IsDone().Json.GetProperty("action").GetProperty("kind").GetString());
    }

    [Fact]
    public async Task As_json_it_holds_the_steps_the_end_and_the_truth()
    {
        JsonElement report = (await Run("practice", "--seed", "8", "--json")).IsDone().Json;
        Assert.Equal(8, report.GetProperty("seed").GetInt32());
        Assert.Equal("fire", report.GetProperty("steps")[0].GetProperty("action").GetProperty("kind").GetString());
        Assert.Equal(2, report.GetProperty("steps")[0].GetProperty("mark").GetProperty("covariance").GetArrayLength());
        Assert.Equal("done", report.GetProperty("end").GetProperty("action").GetProperty("kind").GetString());
        Assert.InRange(report.GetProperty("trueSpread").GetProperty("after").GetDouble(), 0, 0.5);
    }

    [Fact]
    public async Task A_person_says_step_by_step_what_is_done()
    {
        string output = (await TheProgram.Type(_folder, "\nfire 1 480\nturn 1 Z 1/8\nturn 1 A 1/8\nundo\nfoo\nhelp\nstate\nquit\n", "practice", "--seed", "3")).IsDone().Output;
        Assert.Equal(2, output.Split("mark: u ").Length - 1);
        Assert.Contains("not done: SCREW_UNKNOWN", output, StringComparison.Ordinal);
        Assert.Contains("the last step is taken back", output, StringComparison.Ordinal);
        Assert.Contains("ACTION_UNREADABLE: 'foo' is no action", output, StringComparison.Ordinal);
        Assert.Contains("shim CORNER MM", output, StringComparison.Ordinal);
        Assert.Matches(@"(?m)^pulses +2 +0 +0$", output);
        Assert.Contains("true spread over the bed", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_end_of_the_input_ends_the_practice() =>
        Assert.Contains("true spread over the bed", (await TheProgram.Type(_folder, "", "practice", "--seed", "3")).IsDone().Output, StringComparison.Ordinal);

    [Fact]
    public async Task Photos_are_kept_and_can_be_measured_again()
    {
        string output = (await TheProgram.Type(_folder, "\nquit\n", "practice", "--seed", "3", "--photos", "tapes")).IsDone().Output;
        Assert.Contains("(pulse-01.jpg)", output, StringComparison.Ordinal);
        JsonElement mark = (await Run("measure", "tapes/pulse-01.jpg", "--json")).IsDone().Json.GetProperty("marks")[0];
        Assert.Contains(mark.GetProperty("u").GetDouble().ToString("+0.000;-0.000", System.Globalization.CultureInfo.InvariantCulture), output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SEED_INVALID", "--seed", "1.5")]
    [InlineData("SEED_INVALID", "--seed", "-1")]
    [InlineData("PRACTICE_MACHINE_INVALID", "--twist", "40")]
    [InlineData("NUMBER_UNREADABLE", "--slope", "much")]
    [InlineData("OUTPUT_NOT_WRITABLE", "--save", "nowhere/visit.json")]
    [InlineData("OUTPUT_NOT_WRITABLE", "--save", "")]
    [InlineData("NUMBER_UNREADABLE", "--twist", "٣")]
    [InlineData("PRACTICE_MACHINE_INVALID", "--mark", "0")]
    public async Task A_wrong_call_is_refused(string code, string option, string value) => (await Run("practice", "--auto", option, value)).IsRefusal(2, code);

    [Fact]
    public async Task A_visit_that_is_none_is_refused()
    {
        File.WriteAllText(Path.Combine(_folder, "bad.json"), "{ \"machine\": { \"legs\": [ {} ] } }");
        (await Run("advise", "--visit", "bad.json")).IsRefusal(2, "VISIT_UNREADABLE");
        (await Run("advise", "--visit", "none.json")).IsRefusal(2, "FILE_MISSING");
    }

    private Task<Answer> Run(params string[] arguments) => TheProgram.RunIn(_folder, arguments);
}
