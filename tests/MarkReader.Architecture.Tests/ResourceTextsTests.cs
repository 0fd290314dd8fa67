using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace MarkReader.Architecture.Tests;

/// <summary>That what people read stands in resource files, each text once, and nowhere in the code.</summary>
/// <remarks>A look at the text, not a parser. Left out are what only programmers read: exceptions, the log, the description of the API.</remarks>
public sealed partial class ResourceTextsTests
{
    private static readonly string s_sources = Path.Combine(Repository.Root, "src");

    // Names of columns in a table for programs; what a person's browser reads, not the person.
    private static readonly string[] s_forPrograms = ["RecordCsv.cs", "RecordStyle.cs", "SecurityHeaders.cs", "JoinFirst.cs"];

    private static readonly string[] s_kinds = ["*.cs", "*.cshtml"];

    public static TheoryData<string> Resources { get; } =
        [.. Directory.EnumerateFiles(s_sources, "*.resx", SearchOption.AllDirectories).Where(IsSource).Where(f => Reader(f) is not null).Select(f => Path.GetRelativePath(s_sources, f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Resources))]
    public void Every_text_is_used_and_every_text_that_the_code_names_is_given(string resource)
    {
        string file = Path.Combine(s_sources, resource), reader = Path.GetFileNameWithoutExtension(file);
        XElement[] data = [.. XDocument.Load(file).Root!.Elements("data")];
        string[] given = [.. data.Select(d => (string)d.Attribute("name")!)];
        string[] codes = [.. s_kinds.SelectMany(kind => Directory.EnumerateFiles(s_sources, kind, SearchOption.AllDirectories)).Where(IsSource).Select(File.ReadAllText)];
        HashSet<string> keys = [.. codes.SelectMany(c => Key().Matches(c)).Select(m => m.Groups["key"].Value)];
        string[] prefixes = [.. keys.Where(k => k.EndsWith('.'))];
        string[] named = [.. codes.SelectMany(code => Named().Matches(code).Where(m => IsOf(m.Groups["reader"].Value, code, reader))).Select(m => m.Groups["key"].Value)];

        Assert.NotEmpty(given);
        Assert.Equal(given.Length, given.Distinct().Count());
        Assert.All(data, d => Assert.False(string.IsNullOrWhiteSpace(d.Element("value")?.Value), (string?)d.Attribute("name")));
        Assert.DoesNotContain(given, key => !keys.Contains(key) && !prefixes.Any(p => key.StartsWith(p, StringComparison.Ordinal)));
        Assert.Empty(named.Except(given));
    }

    [Fact]
    public void No_sentence_or_refusal_stands_in_the_code()
    {
        string[] found = [.. Directory.EnumerateFiles(s_sources, "*.cs", SearchOption.AllDirectories).Where(IsSource).Where(f => !s_forPrograms.Contains(Path.GetFileName(f)))
            .SelectMany(f => Words(File.ReadAllText(f), describes: f.Contains("/Api/", StringComparison.Ordinal)).Select(words => $"{Path.GetRelativePath(s_sources, f)}: {words}"))];

        Assert.True(found.Length == 0, string.Join("\n", found));
    }

    [Theory]
    [InlineData("return new Failure(PhotoFailures.Empty, \"empty\", Hint);", 1)]
    [InlineData("return new Failure(PhotoFailures.Empty, Texts.Get(\"x.empty\"), \"send it\");", 1)]
    [InlineData("writer.WriteLine($\"{count} of the marks were found\");", 1)]
    [InlineData("new(Code, $\"'{path}' is a folder\")", 1)]
    [InlineData("Failure(PhotoFailures.Empty, Texts.Word(\"x.y\", a, \"b\"), Texts.Get(\"x.z\"));", 0)]
    [InlineData("throw new ArgumentException(\"No such card at all.\", nameof(x));", 0)]
    [InlineData("connection.Execute(\"DELETE FROM photos where id = @id\");", 0)]
    [InlineData("/// <summary>See \"the marks that were found\".</summary>", 0)]
    public void Words_in_code_are_seen(string code, int count) => Assert.Equal(count, Words(code, describes: false).Count());

    /// <param name="describes">Whether the file describes the API, in sentences.</param>
    private static IEnumerable<string> Words(string source, bool describes)
    {
        string code = ForProgrammers().Replace(Comment().Replace(source, ""), "");
        return Literal().Matches(code).Select(m => m.Groups["text"].Value).Where(t => !describes && Sentence().IsMatch(t) && !Syntax().IsMatch(t))
            .Concat(Refusal().Matches(code).Select(m => m.Groups["text"].Value))
            .Distinct();
    }

    private static bool IsSource(string file) => !Path.GetRelativePath(s_sources, file).Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin");

    // The class beside the resource file, when it is one that reads it by name.
    private static string? Reader(string resource)
    {
        string code = Path.ChangeExtension(resource, ".cs");
        return File.Exists(code) && File.ReadAllText(code).Contains(": Texts<", StringComparison.Ordinal) ? code : null;
    }

    private static bool IsOf(string named, string code, string reader) =>
        named == reader || (named.Length == 0 && Regex.IsMatch(code, $@"using static MarkReader\.Quantities\.Texts<[\w.]*\b{reader}>;", RegexOptions.CultureInvariant));

    [GeneratedRegex(@"(?:\b(?<reader>\w+Texts)\.|(?<![\w.]))(?:Get|Say|Word)\(""(?<key>[^""]+)""(?! \+)", RegexOptions.CultureInvariant)]
    private static partial Regex Named();

    // A name as such, or what all names of a kind begin with.
    [GeneratedRegex(@"""(?<key>[\w.]+)(?=[""{])", RegexOptions.CultureInvariant)]
    private static partial Regex Key();

    [GeneratedRegex(@"(?<![""\\'])\$?""(?<text>(?:[^""\\\n]|\\.)+)""(?!"")", RegexOptions.CultureInvariant)]
    private static partial Regex Literal();

    // Three words in a row, or a hole and two words.
    [GeneratedRegex(@"\b[A-Za-z']{1,} [a-z']{2,} [a-z']{1,}\b|\}'? [a-z]{2,} [a-z]", RegexOptions.CultureInvariant)]
    private static partial Regex Sentence();

    // Statements for the database, markup and rules for browsers.
    [GeneratedRegex(@"\b(?:SELECT|INSERT|UPDATE|DELETE|PRAGMA|AS) |<|-src ", RegexOptions.CultureInvariant)]
    private static partial Regex Syntax();

    [GeneratedRegex(@"(?m)(?:^|\s)//.*$", RegexOptions.CultureInvariant)]
    private static partial Regex Comment();

    [GeneratedRegex(@"new \w*Exception\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\)|[lL]ogger\.\w+\((?:[^()]|\([^()]*\))*\)|\[[A-Z]\w+\((?:[^()]|\([^()]*\))*\)\]", RegexOptions.CultureInvariant)]
    private static partial Regex ForProgrammers();

    // A text beside the code of a refusal, as what is wrong or as what to do.
    [GeneratedRegex(@"(?<!\w)\w*Failures\.\w+, (?:\$?""(?<text>[^""]*[A-Za-z][^""]*)""|\w*Texts\.\w+\((?:[^()]|\([^()]*\))*\), \$?""(?<text>[^""]*[A-Za-z][^""]*)"")", RegexOptions.CultureInvariant)]
    private static partial Regex Refusal();
}
