using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace MarkReader.Alignment.Tests.Texts;

/// <summary>The names of a resource file's texts, and those that the code of its project asks for.</summary>
internal static partial class TextUse
{
    private static readonly string s_sources = Path.Combine(
        typeof(TextUse).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!, "src");

    /// <param name="project">The project's folder.</param>
    /// <param name="texts">The class that reads the texts; its resource file stands beside it.</param>
    public static string[] Given(string project, string texts) =>
        [.. XDocument.Load(Path.Combine(s_sources, project, "Texts", texts + ".resx")).Root!.Elements("data").Select(d => (string)d.Attribute("name")!)];

    public static IReadOnlySet<string> Used(string project, string texts) => Directory.EnumerateFiles(Path.Combine(s_sources, project), "*.cs", SearchOption.AllDirectories)
        .Where(f => !Path.GetRelativePath(s_sources, f).Split(Path.DirectorySeparatorChar).Contains("obj"))
        .Select(File.ReadAllText)
        .Where(code => code.Contains(texts, StringComparison.Ordinal))
        .SelectMany(code => Named().Matches(code))
        .Select(m => m.Groups["name"].Value)
        .ToHashSet();

    [GeneratedRegex(@"\b(?:Get|Say)\(""(?<name>[^""]+)""", RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}
