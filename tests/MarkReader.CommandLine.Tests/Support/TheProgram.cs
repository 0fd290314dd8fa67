using System.Diagnostics;
using System.Text.Json;

namespace MarkReader.CommandLine.Tests.Support;

/// <summary>The built program, run as its own process.</summary>
internal static class TheProgram
{
    public static string File { get; } = Path.Combine(AppContext.BaseDirectory, "MarkReader.CommandLine");

    public static Task<Answer> Run(params string[] arguments) => RunIn(Path.GetTempPath(), arguments);

    public static Task<Answer> RunIn(string folder, params string[] arguments) => Start(File, folder, arguments);

    public static Task<Answer> Start(string file, string folder, params string[] arguments) => Start(file, folder, "", arguments);

    /// <summary>A call whose standard input holds these lines.</summary>
    public static Task<Answer> Type(string folder, string lines, params string[] arguments) => Start(File, folder, lines, arguments);

    private static async Task<Answer> Start(string file, string folder, string lines, string[] arguments)
    {
        ProcessStartInfo start = new(file, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        await process.StandardInput.WriteAsync(lines);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        return new(process.ExitCode, await output, await error);
    }
}

/// <summary>What the program answered.</summary>
internal sealed record Answer(int Status, string Output, string Error)
{
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;

    /// <summary>Asserts a refusal: the status, and one line "error: CODE: what is wrong; what to do".</summary>
    public void IsRefusal(int status, string code)
    {
        Assert.True(Status == status, $"status {Status} instead of {status}: {Error}");
        string[] lines = Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Single(lines);
        Assert.Matches($"^error: {code}: [^;]+; .+$", lines[0]);
    }

    /// <summary>Asserts that the call is done and nothing but progress went to standard error.</summary>
    public Answer IsDone()
    {
        Assert.True(Status == 0, $"status {Status}: {Error}");
        string[] lines = Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(lines, line => Assert.Matches(@"^\d+ of \d+ photos measured$", line));
        // Progress counts up and, once begun, ends with all.
        int[] counts = [.. lines.Select(line => int.Parse(line.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(counts.Order(), counts);
        Assert.True(lines.Length == 0 || lines[^1].StartsWith($"{lines[^1].Split(' ')[2]} of ", StringComparison.Ordinal), Error);
        return this;
    }
}
