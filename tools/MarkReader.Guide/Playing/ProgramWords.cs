using System.Xml.Linq;

namespace MarkReader.Guide.Playing;

/// <summary>The words of the visit pages, from their source: buttons are pressed by the names that people read.</summary>
internal sealed class ProgramWords
{
    private readonly Dictionary<string, string> _words;

    private ProgramWords(Dictionary<string, string> words) => _words = words;

    /// <exception cref="KeyNotFoundException">The pages have no such words any more: change what is played.</exception>
    public string this[string key] => _words[key];

    public static ProgramWords Read(string repository) => new(XDocument.Load(Path.Combine(repository, "src", "MarkReader.Service", "Texts", "VisitTexts.resx"))
        .Descendants("data").DistinctBy(data => data.Attribute("name")!.Value)
        .ToDictionary(data => data.Attribute("name")!.Value, data => data.Element("value")!.Value));
}
