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
    public async Task The_stock_that_was_read_is_listed_so_that_a_comma_for_a_point_shows()
    {
        string output = (await Run("shims", "--height", "1.5", "--stock", "1,5")).IsDone().Output;
        Assert.Contains("stock: 1.0 mm (as many as needed), 5.0 mm (as many as needed)", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2.5", "-1", "move the target's plate 2.50 mm to the right", "1.00 mm too low: raise the tube's end", "too high")]
    [InlineData("-2.5", "1", "move the target's plate 2.50 mm to the left", "1.00 mm too high: put shims under the target", "too low")]
    [InlineData("2.5", "0.1", "move the target's plate 2.50 mm to the right", "to the right, towards the beam", "too ")]
    public async Task An_aperture_names_only_the_steps_that_its_offset_asks_for(string u, string v, string first, string second, string not)
    {
        string output = (await Run("aperture", "--diameter", "8", "--beam", "5", "--offset-u", u, "--offset-v", v)).IsDone().Output;
        Assert.Contains(first, output, StringComparison.Ordinal);
        Assert.Contains(second, output, StringComparison.Ordinal);
        Assert.DoesNotContain(not, output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_survey_mark_off_the_bed_or_far_from_the_card_is_named_by_its_number()
    {
        Answer off = await Run("survey", "--marks", "survey.csv", "--bed", "300,500");
        off.IsRefusal(2, "SURVEY_PLACE_OFF_BED");
        Assert.Contains("mark 2 of the survey", off.Error, StringComparison.Ordinal);
        await File.WriteAllTextAsync(Path.Combine(_folder, "left.csv"), "x,y,u,v,uncertainty\n0,0,0,0,0.05\n0,400,0,0,0.05\n", TestContext.Current.CancellationToken);
        Answer left = await Run("survey", "--marks", "left.csv");
        left.IsRefusal(2, "BED_INVALID");
        Assert.Contains("with --bed X,Y", left.Error, StringComparison.Ordinal);
        await File.WriteAllTextAsync(Path.Combine(_folder, "far.csv"), Survey.Replace("0.84", "84", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        Answer far = await Run("survey", "--marks", "far.csv");
        far.IsRefusal(2, "SURVEY_MARK_INVALID");
        Assert.Contains("mark 4 of the survey is 84.0001, not between 0 and 50", far.Error, StringComparison.Ordinal);
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
    [InlineData("SHIM_COUNT_INVALID", "shims", "--height", "1", "--stock", "0.5x0,1.0")]
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
