using System.Text.RegularExpressions;

namespace MarkReader.Architecture.Tests;

/// <summary>Pages show what the layers below say: only the command line names its options.</summary>
public sealed partial class OptionNamesTests
{
    private static readonly string[] s_kinds = ["*.cs", "*.resx"], s_faces = ["MarkReader.CommandLine", "MarkReader.Service"];

    [Fact]
    public void No_text_below_the_faces_names_an_option_of_the_command_line()
    {
        string[] files = [.. s_kinds.SelectMany(kind => Directory.GetFiles(Path.Combine(Repository.Root, "src"), kind, SearchOption.AllDirectories))
            .Where(f => !s_faces.Append("obj").Append("bin").Any(part => f.Contains($"/{part}/", StringComparison.Ordinal)))];

        Assert.True(files.Length > 100, $"only {files.Length} files found");
        Assert.DoesNotContain(files, f => File.ReadLines(f).Any(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && Option().IsMatch(line)));
        Assert.Matches(Option(), "tap the mark (--near-at X,Y)");
    }

    // Not the -- of a counter, of a comment in XML or of a style's own property.
    [GeneratedRegex(@"(?<![\w!<-]|var\()--[a-z][a-z-]*[a-z](?![\w:-])", RegexOptions.CultureInvariant)]
    private static partial Regex Option();
}
