using System.Text.Json;
using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests.Commands;

/// <summary>The commands for single computations of the job: survey, shims, aperture.</summary>
public sealed class JobTests : IDisposable
{
    private const string Survey = "x,y,u,v,uncertainty\n0,0,0.12,-0.05,0.05\n500,0,0.08,-0.02,0.05\n0,400,0.15,0.03,0.05\n500,400,0.10,0.84,0.05\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("job-").FullName;

    public JobTests() => File.WriteAllText(Path.Combine(_folder, "survey.csv"), Survey);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_survey_with_a_high_corner_names_it_and_the_washers_with_the_cautions()
    {
        string output = (await Run("survey", "--marks", "survey.csv", "--bed", "500,400")).IsDone().Output;
        Assert.Contains("the frame is twisted: at the far right corner", output, StringComparison.OrdinalIgnoreCase);
        Assert.Matches(@"(?m)^shims +thickness/mm +pieces +height/mm$", output);
        Assert.Matches(@"(?m)^expected after +x/mm +y/mm +u/mm +v/mm +region/mm$", output);
        Assert.Contains("outside", output, StringComparison.Ordinal);
        Assert.Contains("Cautions for every pulse", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_survey_as_json_holds_the_cure_of_the_contract()
    {
        JsonElement cure = (await Run("survey", "--marks", "survey.csv", "--stock", "0.5,0.8x3", "--json")).IsDone().Json.GetProperty("cure");
        Assert.Equal(("shim", "farRight"), (cure.GetProperty("kind").GetString(), cure.GetProperty("corner").GetString()));
        Assert.Equal(["0.8 mm"], cure.GetProperty("stack").GetProperty("parts").EnumerateArray().Select(p => p.GetProperty("name").GetString()));
    }

    [Fact]
    public async Task Shims_are_listed_with_their_sum_and_the_cautions()
    {
        string output = (await Run("shims", "--height", "1.3")).IsDone().Output;
        Assert.Matches(@"(?m)^stack +2 +1\.300$", output);
        Assert.Contains("ISO 7089", output, StringComparison.Ordinal);
        Assert.Contains("Cautions for every pulse", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stock_that_does_not_reach_is_an_answer_with_the_nearest()
    {
        string output = (await Run("shims", "--height", "1.2", "--tolerance", "0.05", "--stock", "0.8x3,1.0x1")).IsDone().Output;
        Assert.Contains("no stack of at most 8 pieces of this stock comes so near; the nearest is 0.200 mm lower", output, StringComparison.Ordinal);
        Assert.Contains("stock: 0.8 mm (3), 1.0 mm (1)", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_aperture_states_the_power_now_and_in_the_centre_also_for_offsets_below_zero()
    {
        string output = (await Run("aperture", "--diameter", "12", "--beam", "5", "--offset-u", "-3", "--offset-v", "2")).IsDone().Output;
        Assert.Matches(@"(?m)^power that passes +% +uncertainty/% +95 % interval/% +at least/%$", output);
        Assert.Matches(@"(?m)^now +\d+\.\d\d +\d+\.\d\d +\d+\.\d\d to \d+\.\d\d +\d+\.\d\d$", output);
        Assert.Matches(@"gains \d+\.\d\d % of its power", output);
    }

    [Fact]
    public async Task Marks_alone_give_the_beam_s_size()
    {
        JsonElement json = (await Run("aperture", "--marks", "2:2.94,4:4.16,8:5.10", "--json")).IsDone().Json;
        Assert.Equal(5, json.GetProperty("beam").GetProperty("diameter").GetDouble(), 0.1);
        Assert.Equal(JsonValueKind.Null, json.GetProperty("aperture").ValueKind);
    }

    [Theory]
    [InlineData("OPTION_MISSING", "shims")]
    [InlineData("NUMBER_UNREADABLE", "shims", "--height", "high")]
    [InlineData("SHIM_STOCK_UNREADABLE", "shims", "--height", "1", "--stock", "0,5")]
    [InlineData("FILE_MISSING", "survey", "--marks", "none.csv")]
    [InlineData("SURVEY_FILE_UNREADABLE", "survey", "--marks", "words.csv")]
    [InlineData("BED_UNREADABLE", "survey", "--marks", "survey.csv", "--bed", "500")]
    [InlineData("SURVEY_PLACE_OFF_BED", "survey", "--marks", "survey.csv", "--bed", "300,200")]
    [InlineData("OPTION_MISSING", "aperture", "--diameter", "12", "--beam", "5", "--offset-u", "1")]
    [InlineData("OPTION_MISSING", "aperture", "--diameter", "12", "--offset-u", "1", "--offset-v", "1")]
    [InlineData("OPTIONS_CONFLICT", "aperture", "--marks", "1:2,2:3", "--beam", "5")]
    [InlineData("TOO_FEW_ENERGIES", "aperture", "--marks", "1:2")]
    public async Task A_wrong_call_is_refused_in_one_line(string code, params string[] arguments)
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "words.csv"), "left,right\n1,2\n", TestContext.Current.CancellationToken);
        (await Run(arguments)).IsRefusal(2, code);
    }

    private Task<Answer> Run(params string[] arguments) => TheProgram.RunIn(_folder, arguments);
}
