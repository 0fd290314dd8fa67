namespace MarkReader.Architecture.Tests;

public sealed class FileLengthTests
{
    private const int Limit = 400;

    private static readonly string[] s_folders = ["src", "tools", "tests"];

    [Fact]
    public void No_source_file_has_more_than_400_lines()
    {
        string[] files = [.. s_folders.SelectMany(f => Directory.GetFiles(Path.Combine(Repository.Root, f), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))];

        Assert.True(files.Length > 20, $"only {files.Length} files found");
        Assert.DoesNotContain(files, f => File.ReadLines(f).Count() > Limit);
    }
}
