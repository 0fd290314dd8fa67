using MarkReader.CommandLine.Tests.Support;

namespace MarkReader.CommandLine.Tests;

[Collection(nameof(PhotoTests))]
public sealed class FaultTests(Photos photos)
{
    /// <summary>Standard output on a full disk stands for any fault: /dev/full takes no byte.</summary>
    [Fact]
    public async Task A_fault_is_one_line_without_a_stack_trace_and_status_1()
    {
        Answer answer = await TheProgram.Start("/bin/sh", Path.GetTempPath(), "-c", $"'{TheProgram.File}' --help > /dev/full");
        answer.IsRefusal(1, "INTERNAL_FAULT");
        Assert.DoesNotContain("   at ", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_native_library_is_told_with_what_to_install()
    {
        // A copy of the program without its native libraries, and without the list that would ask for them at start.
        DirectoryInfo copy = Directory.CreateTempSubdirectory("no-native-");
        try
        {
            foreach (string file in Directory.GetFiles(AppContext.BaseDirectory).Where(f => Path.GetExtension(f) == ".dll" || f == TheProgram.File || f.EndsWith(".runtimeconfig.json", StringComparison.Ordinal)))
                File.Copy(file, Path.Combine(copy.FullName, Path.GetFileName(file)));
            Answer answer = await TheProgram.Start(Path.Combine(copy.FullName, "MarkReader.CommandLine"), copy.FullName, "measure", photos["near.jpg"]);
            answer.IsRefusal(1, "NATIVE_LIBRARY_MISSING");
            Assert.Contains("libgtk-3-0 libdrm2 libatomic1", answer.Error, StringComparison.Ordinal);
            Assert.Contains("libgtk-3-0t64", answer.Error, StringComparison.Ordinal);
        }
        finally
        {
            copy.Delete(recursive: true);
        }
    }
}
