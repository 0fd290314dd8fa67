using System.Text.RegularExpressions;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Texts;

/// <summary>That pages and scripts hold no words of their own: those stand in the resource files.</summary>
/// <remarks>A look at the text, not a parser. It finds text between tags, attributes that are read out, and sentences and refusals in scripts.</remarks>
public sealed partial class LiteralWordsTests
{
    private static readonly string s_service = Path.GetFullPath(Path.Combine(Photos.Folder, "..", "..", "src", "MarkReader.Service"));

    // The program's name is the same in every language.
    private static readonly string[] s_names = ["MarkReader"];

    [Fact]
    public void No_page_holds_words_of_its_own() =>
        Assert.Empty(Found("Pages", "*.cshtml", InPages));

    [Fact]
    public void No_script_holds_sentences_of_its_own() =>
        Assert.Empty(Found(Path.Combine("wwwroot", "js"), "*.js", InScripts));

    [Theory]
    [InlineData("<p class=\"small\">Take a photo.</p>", 1)]
    [InlineData("<label>near <input></label>", 1)]
    [InlineData("<svg aria-label=\"The far photo\">", 1)]
    [InlineData("<p>@T[\"photo\"] <strong>@F.Unit</strong> mm</p>", 0)]
    [InlineData("<p>@(Model.Count > 1 ? T[\"one\"] : T[\"several\"])</p>", 0)]
    public void Words_in_a_page_are_seen(string page, int count) => Assert.Equal(count, InPages(page).Count());

    [Theory]
    [InlineData("this.say(\"There is no photo yet\");", 1)]
    [InlineData("say(`${count} marks were seen`);", 1)]
    [InlineData("refuse({ detail: \"gone\", hint: words.again });", 1)]
    [InlineData("place.textContent = 'Sent';", 1)]
    [InlineData("find(\"main input[type=text], main textarea\"); // not a word of the page", 0)]
    public void Words_in_a_script_are_seen(string script, int count) => Assert.Equal(count, InScripts(script).Count());

    private static string[] Found(string folder, string files, Func<string, IEnumerable<string>> look)
    {
        string[] all = Directory.GetFiles(Path.Combine(s_service, folder), files, SearchOption.AllDirectories);
        Assert.True(all.Length > 10);
        return [.. all.SelectMany(f => look(File.ReadAllText(f)).Select(words => $"{Path.GetFileName(f)}: {words}"))];
    }

    private static IEnumerable<string> InPages(string text) =>
        Between().Matches(text).Concat(ReadOut().Matches(text)).Select(m => m.Groups[1].Value.Trim()).Where(words => !s_names.Contains(words));

    private static IEnumerable<string> InScripts(string text)
    {
        string code = Comment().Replace(text, "");
        return Sentence().Matches(code).Concat(Told().Matches(code)).Select(m => m.Value);
    }

    // Between two tags, without anything that code would have in it; units of two letters pass.
    [GeneratedRegex(@"(?<==""[^""\n]*""|<[a-z0-9]+|</[a-z0-9]+|/)>([^<>@{}()""=;\n]*[A-Za-z]{3,}[^<>@{}()""=;\n]*)<", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex(@"\b(?:aria-label|alt|title|placeholder)=""(?!@)([^""]*[A-Za-z]{3,}[^""]*)""", RegexOptions.CultureInvariant)]
    private static partial Regex ReadOut();

    [GeneratedRegex(@"(?m)(?:^|\s)//.*$", RegexOptions.CultureInvariant)]
    private static partial Regex Comment();

    // Three words in a row within quotation marks.
    [GeneratedRegex(@"([""'`])[^""'`\n]*\b[A-Za-z]+ [a-z]+ [a-z]+\b[^""'`\n]*\1", RegexOptions.CultureInvariant)]
    private static partial Regex Sentence();

    [GeneratedRegex(@"(?:\b(?:detail|hint|alt): |\.(?:textContent|alt) = )[""'`][^""'`$]*[A-Za-z]{2,}", RegexOptions.CultureInvariant)]
    private static partial Regex Told();
}
