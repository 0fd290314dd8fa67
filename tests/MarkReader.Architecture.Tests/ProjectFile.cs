using System.Xml.Linq;

namespace MarkReader.Architecture.Tests;

/// <summary>What a project file asks for.</summary>
internal sealed record ProjectFile(string Name, IReadOnlyList<string> Projects, IReadOnlyList<string> Packages)
{
    private const string Prefix = "MarkReader.";

    /// <summary>The projects of a folder of the repository, by the name behind "MarkReader.".</summary>
    public static IReadOnlyList<ProjectFile> In(string folder) =>
        [.. Directory.GetFiles(Path.Combine(Repository.Root, folder), "*.csproj", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(Read)];

    public static string ShortName(string name) => name.StartsWith(Prefix, StringComparison.Ordinal) ? name[Prefix.Length..] : name;

    private static ProjectFile Read(string path)
    {
        XDocument xml = XDocument.Load(path);
        string[] Included(string element) => [.. xml.Descendants(element).Select(e => e.Attribute("Include")!.Value)];
        return new(
            ShortName(Path.GetFileNameWithoutExtension(path)),
            [.. Included("ProjectReference").Select(r => ShortName(Path.GetFileNameWithoutExtension(r.Replace('\\', '/'))))],
            Included("PackageReference"));
    }
}
