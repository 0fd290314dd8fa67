using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using MarkReader.Application.Records;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Tests.Support;

namespace MarkReader.Application.Tests.Records;

/// <summary>The record as people get it: read back with programs that share no code with the ones that wrote it.</summary>
public sealed class RecordPagesTests(RecordedVisit visit) : IClassFixture<RecordedVisit>
{
    public static TheoryData<string, string, string> Formats => new() { { "a4", "mm", "point" }, { "letter", "in", "comma" } };

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_pages_hold_all_numbers_inside_their_margins_and_no_word_lies_on_another(string paper, string unit, string separator)
    {
        RecordFormat format = RecordFormat.Read(unit, separator, TimeZoneInfo.Utc).ValueOrThrow();
        byte[] pdf = RecordPdf.Write(visit.Record, format, Paper.Find(paper).ValueOrThrow());
        Keep($"record-{paper}.pdf", pdf);

        string info = Poppler.Info(pdf);
        (double width, double height) = paper == "a4" ? (595.276, 841.89) : (612, 792);
        Assert.Contains(paper == "a4" ? "595.276 x 841.89" : "612 x 792", info, StringComparison.Ordinal);
        Assert.Matches("Title: +Alignment record", info);
        Assert.Matches("Author: +A. Turner", info);

        XElement[] pages = [.. XDocument.Parse(Poppler.Boxes(pdf)).Descendants().Where(e => e.Name.LocalName == "page")];
        Assert.InRange(pages.Length, 3, 20);
        for (int i = 0; i < pages.Length; i++)
        {
            Word[] words = [.. pages[i].Elements().Select(Word.Of)];
            Assert.Equal($"{i + 1} of {pages.Length}", string.Join(' ', words.Select(w => w.Text).Skip(words.ToList().FindLastIndex(w => w.Text == "of") - 1).Take(3)));
            Assert.All(words, w => Assert.True(w.Left > 45 && w.Right < width - 45 && w.Top > 25 && w.Bottom < height - 20, w.Text));
            Assert.Empty(Overlapping(words));
        }

        string text = string.Join(' ', pages.SelectMany(p => p.Elements()).Select(e => e.Value));
        Assert.All(Numbers(format), number => Assert.Contains(number, text, StringComparison.Ordinal));
        Assert.Contains("Within tolerance", text, StringComparison.Ordinal);
        Assert.Contains("<b>on the right</b>", text, StringComparison.Ordinal);
        Assert.Contains("licensed or qualified service staff come first", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_html_stands_alone_and_takes_nothing_from_outside_for_markup()
    {
        byte[] bytes = RecordHtml.Write(visit.Record, RecordFormat.Plain);
        Keep("record.html", bytes);
        string text = Encoding.UTF8.GetString(bytes);
        XElement html = XDocument.Parse(text["<!DOCTYPE html>".Length..]).Root!;
        Assert.Equal("en", html.Attribute("lang")!.Value);
        Assert.Single(html.Descendants("h1"));
        Assert.NotEmpty(html.Descendants("h2"));
        Assert.Equal(visit.Record.Photos.Count, html.Descendants("img").Count(i => i.Attribute("src")!.Value.StartsWith("data:image/jpeg;base64,", StringComparison.Ordinal)));
        Assert.All(html.Descendants("img"), i => Assert.StartsWith("data:image/", i.Attribute("src")!.Value, StringComparison.Ordinal));
        Assert.All(html.Descendants("img"), i => Assert.NotNull(i.Attribute("alt")));
        Assert.DoesNotContain(html.Descendants(), e => e.Name.LocalName is "script" or "link" or "b" or "iframe" or "object" or "form");
        Assert.DoesNotContain(html.DescendantsAndSelf().Attributes(), a => a.Name.LocalName is "href" or "style" or "action" || a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        Assert.DoesNotContain("url(", html.Descendants("style").Single().Value, StringComparison.Ordinal);
        Assert.Contains(html.Descendants("dd"), d => d.Value == RecordedVisit.Note);
        Assert.All(Numbers(RecordFormat.Plain), number => Assert.Contains(html.Descendants("td"), td => td.Value == number));
        // The pictures inside are pictures alone as well.
        Assert.All(html.Descendants("img").Select(i => i.Attribute("src")!.Value).Where(s => s.StartsWith("data:image/svg", StringComparison.Ordinal)), s =>
            Assert.DoesNotContain(XDocument.Parse(Encoding.UTF8.GetString(Convert.FromBase64String(s[(s.IndexOf(',', StringComparison.Ordinal) + 1)..]))).Descendants(), e => e.Name.LocalName is "script" or "image" or "foreignObject"));
    }

    [Fact]
    public void Numbers_with_a_decimal_comma_are_kept_apart_by_semicolons()
    {
        string text = Encoding.UTF8.GetString(RecordHtml.Write(visit.Record, RecordFormat.Read("mm", "comma", TimeZoneInfo.Utc).ValueOrThrow()));
        XElement html = XDocument.Parse(text["<!DOCTYPE html>".Length..]).Root!;
        string[] said = [.. html.Descendants().Where(e => !e.HasElements).Select(e => e.Value), .. html.Descendants("img").Select(i => i.Attribute("alt")!.Value)];
        Assert.Contains(said, s => Regex.IsMatch(s, @"mark \d+ at u [+−]?\d+,\d\d; v [+−]?\d+,\d\d mm"));
        Assert.All(said, s => Assert.DoesNotMatch(@"\d,\d+(?:\s(?:mm|in))?, (?:[xyuv] )?[+−]?\d|\d, [xyuv] [+−]?\d+,\d", s));
    }

    [Theory]
    [InlineData("cm", null, "UNIT_UNKNOWN")]
    [InlineData(null, "dot", "DECIMAL_SIGN_UNKNOWN")]
    public void A_unit_or_sign_that_is_not_known_is_refused(string? unit, string? separator, string code)
    {
        Assert.False(RecordFormat.Read(unit, separator, TimeZoneInfo.Utc).TryGet(out _, out Quantities.Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    // Of each step as found and as left, and of each mark.
    private IEnumerable<string> Numbers(RecordFormat format) =>
        visit.Record.Steps.SelectMany(s => new[] { s.Found, s.Left }).Select(s => format.Length(s!.Value!.Vector.Magnitude, 2))
            .Concat(visit.Record.Marks.SelectMany(m => new[] { format.SignedLength(m.At.Point.U, 3), format.SignedLength(m.At.Point.V, 3) }));

    private static IEnumerable<string> Overlapping(Word[] words) =>
        from a in Enumerable.Range(0, words.Length)
        from b in Enumerable.Range(0, a)
        let first = words[a]
        let second = words[b]
        where Math.Min(first.Right, second.Right) - Math.Max(first.Left, second.Left) > 1 && Math.Min(first.Bottom, second.Bottom) - Math.Max(first.Top, second.Top) > 0.45 * Math.Min(first.Bottom - first.Top, second.Bottom - second.Top)
        select $"{first.Text} on {second.Text}";

    private static void Keep(string name, byte[] bytes)
    {
        if (RecordedVisit.Pictures is { } folder)
            File.WriteAllBytes(Path.Combine(folder, name), bytes);
    }

    private sealed record Word(string Text, double Left, double Top, double Right, double Bottom)
    {
        public static Word Of(XElement e)
        {
            double At(string name) => double.Parse(e.Attribute(name)!.Value, CultureInfo.InvariantCulture);
            return new(e.Value, At("xMin"), At("yMin"), At("xMax"), At("yMax"));
        }
    }
}
