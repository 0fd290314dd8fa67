using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests;

public sealed class CallTests
{
    [Theory]
    [InlineData("COMMAND_MISSING")]
    [InlineData("COMMAND_UNKNOWN", "mesure", "a.jpg")]
    [InlineData("ARGUMENT_MISSING", "measure")]
    [InlineData("ARGUMENT_MISSING", "audit")]
    [InlineData("ARGUMENT_UNKNOWN", "measure", "a.jpg", "b.jpg")]
    [InlineData("ARGUMENT_UNKNOWN", "measure", "--jsn", "a.jpg")]
    [InlineData("ARGUMENT_UNKNOWN", "measure", "a.jpg", "--jsn")]
    [InlineData("OPTION_MISSING", "aim", "--near", "a.jpg", "--far", "b.jpg", "--far-path", "480")]
    [InlineData("OPTION_WITHOUT_VALUE", "aim", "--near", "a.jpg", "--far", "b.jpg", "--near-path", "80", "--far-path")]
    [InlineData("OPTION_REPEATED", "aim", "--near", "a.jpg", "--near", "b.jpg", "--near-path", "80", "--far-path", "480")]
    [InlineData("FILE_MISSING", "measure", "@a.rsp")]
    [InlineData("FILE_MISSING", "measure", "two\nlines.jpg")]
    public async Task A_wrong_call_is_one_line_with_its_own_code_and_status_2(string code, params string[] arguments)
    {
        Answer answer = await TheProgram.Run(arguments);
        answer.IsRefusal(2, code);
        Assert.Equal("", answer.Output);
    }

    [Fact]
    public async Task With_json_a_wrong_call_is_also_an_error_object()
    {
        Answer answer = await TheProgram.Run("measure", "--json");
        answer.IsRefusal(2, "ARGUMENT_MISSING");
        Assert.Equal("ARGUMENT_MISSING", answer.Json.GetProperty("error").GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("aim", "--help")]
    public async Task Help_is_given_on_standard_output(params string[] arguments) =>
        Assert.Contains("aim", (await TheProgram.Run(arguments)).IsDone().Output, StringComparison.Ordinal);

    [Theory]
    [InlineData("tools/run [command] [options]", "--help")]
    [InlineData("tools/run measure <PHOTO> [options]", "measure", "--help")]
    public async Task Help_calls_the_program_as_one_calls_it(string usage, params string[] arguments) =>
        Assert.Contains(usage, (await TheProgram.Run(arguments)).IsDone().Output, StringComparison.Ordinal);
}
