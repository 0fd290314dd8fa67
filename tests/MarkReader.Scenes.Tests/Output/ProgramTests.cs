using System.Diagnostics;

namespace MarkReader.Scenes.Tests.Output;

/// <summary>The built program, run as its own process in an empty folder.</summary>
public sealed class ProgramTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("scenes-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(0, "write photos of one card", "cardviews", "--help")]
    [InlineData(0, "draw scenes", "make", "--out", "here", "--help")]
    [InlineData(2, "There is no kind 'nonsense'. Kinds: ", "make", "--kind", "tidy,nonsense")]
    [InlineData(2, "There is no kind 'nonsense'. Kinds: ", "cardviews", "--kind", "nonsense")]
    public async Task Help_and_an_unknown_kind_are_answered_and_nothing_is_written(int status, string answer, params string[] call)
    {
        using Process process = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "MarkReader.Scenes"), call)
        {
            WorkingDirectory = _folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        string said = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken) + await error;
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal(status, process.ExitCode);
        Assert.Contains(answer, said, StringComparison.Ordinal);
        Assert.DoesNotContain("Unhandled", said, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
    }
}
