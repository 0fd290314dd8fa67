using System.Text.RegularExpressions;
using System.Xml.Linq;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Texts;

/// <summary>That the pages' texts stand in the resource files: a missing one would show its key.</summary>
public sealed partial class TextsTests
{
    private static readonly string s_service = Path.GetFullPath(Path.Combine(Photos.Folder, "..", "..", "src", "MarkReader.Service"));

    [Fact]
    public void Every_text_that_a_page_names_is_in_its_resource_file()
    {
        List<string> missing = [];
        int named = 0;
        foreach (string view in Directory.EnumerateFiles(Path.Combine(s_service, "Pages"), "*.cshtml", SearchOption.AllDirectories))
        {
            string text = File.ReadAllText(view);
            string imports = string.Concat(Folders(view).Select(f => Path.Combine(f, "_ViewImports.cshtml")).Where(File.Exists).Select(File.ReadAllText));
            Dictionary<string, HashSet<string>> texts = Injected().Matches(imports + text)
                .GroupBy(m => m.Groups["name"].Value)
                .ToDictionary(g => g.Key, g => Keys(g.Last().Groups["texts"].Value));
            foreach (Match use in Used().Matches(text))
            {
                if (!texts.TryGetValue(use.Groups["name"].Value, out HashSet<string>? keys))
                    continue;
                named++;
                if (!keys.Contains(use.Groups["key"].Value))
                    missing.Add($"{Path.GetFileName(view)}: {use.Groups["key"].Value}");
            }
        }

        Assert.Empty(missing);
        Assert.True(named > 100);
    }

    [Fact]
    public void No_text_is_empty_or_given_twice()
    {
        foreach (string file in Directory.EnumerateFiles(Path.Combine(s_service, "Texts"), "*.resx"))
        {
            XElement[] texts = [.. XDocument.Load(file).Root!.Elements("data")];
            Assert.NotEmpty(texts);
            Assert.All(texts, t => Assert.False(string.IsNullOrWhiteSpace(t.Element("value")?.Value), (string?)t.Attribute("name")));
            Assert.Equal(texts.Length, texts.Select(t => (string?)t.Attribute("name")).Distinct().Count());
        }
    }

    private static IEnumerable<string> Folders(string view)
    {
        for (string folder = Path.GetDirectoryName(view)!; folder.Length >= s_service.Length; folder = Path.GetDirectoryName(folder)!)
            yield return folder;
    }

    private static HashSet<string> Keys(string texts) =>
        [.. XDocument.Load(Path.Combine(s_service, "Texts", texts + ".resx")).Root!.Elements("data").Select(d => (string)d.Attribute("name")!)];

    [GeneratedRegex(@"@inject IStringLocalizer<(?<texts>\w+)> (?<name>\w+)", RegexOptions.CultureInvariant)]
    private static partial Regex Injected();

    // A key that is put together from parts is not looked at here; the pages' own tests meet it.
    [GeneratedRegex(@"\b(?<name>[A-Z])\[""(?<key>[^""]+)""(?=[\],])", RegexOptions.CultureInvariant)]
    private static partial Regex Used();
}
