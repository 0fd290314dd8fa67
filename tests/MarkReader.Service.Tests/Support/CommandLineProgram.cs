using System.Diagnostics;
using System.Text.Json;

namespace MarkReader.Service.Tests.Support;

/// <summary>The program of the command line, built beside these tests, run as a process of its own.</summary>
internal static class CommandLineProgram
{
    public static async Task<JsonElement> JsonAsync(params string[] arguments)
    {
        // …/tests/MarkReader.Service.Tests/bin/Release/net10.0/linux-x64/
        string built = Path.GetRelativePath(Path.GetFullPath(Path.Combine(Photos.Folder, "..", "..", "tests", "MarkReader.Service.Tests")), AppContext.BaseDirectory);
        string program = Path.GetFullPath(Path.Combine(Photos.Folder, "..", "..", "src", "MarkReader.CommandLine", built, "MarkReader.CommandLine"));
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        string text = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"{string.Join(' ', arguments)}: {await errors}");
        return JsonSerializer.Deserialize<JsonElement>(text);
    }
}
