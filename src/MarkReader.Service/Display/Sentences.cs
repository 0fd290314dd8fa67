using System.Collections.Concurrent;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Display;

/// <summary>Sentences of the adviser, which have lengths in mm and a decimal point, in the reader's unit and with the reader's sign.</summary>
/// <remarks>The adviser's lengths stand as "0.25 mm", or in a row of which the last has the unit: "x 0, y 400 mm", "u +0.10 and v -0.05 mm", "0.02 and 0.03 mm". The words that may stand between them are a text of their own.</remarks>
internal static partial class Sentences
{
    private static readonly ResourceManager s_pages = new(typeof(PageTexts));

    private static readonly ConcurrentDictionary<string, Regex> s_rows = [];

    public static string Show(string sentence, Preferences preferences)
    {
        string text = preferences.Inches ? Row(s_pages.GetString("sentence.between", CultureInfo.CurrentUICulture)!).Replace(sentence, row => Number().Replace(row.Value[..^2], number => Inches(number.Value)) + "in") : sentence;
        return preferences.Comma ? Decimal().Replace(Between().Replace(text, ";"), ",") : text;
    }

    // The adviser tells measured lengths with two decimals or more, stated ones with as few as they need.
    private static string Inches(string number)
    {
        int point = number.IndexOf('.', StringComparison.Ordinal), decimals = point < 0 ? 0 : number.Length - point - 1;
        double millimetres = double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture);
        return (number[0] == '+' ? "+" : "") + (decimals < 2 ? InchDigits.Stated(millimetres) : InchDigits.Told(millimetres, "0." + new string('0', decimals)));
    }

    private static Regex Row(string between) => s_rows.GetOrAdd(between, static words =>
    {
        string word = "(?:" + string.Join('|', words.Split(' ').Select(Regex.Escape)) + ")";
        return new($@"(?:[+-]?\d+(?:\.\d+)?(?:,| {word})? (?:{word} )?(?:[xyuv] )?)*[+-]?\d+(?:\.\d+)? mm\b", RegexOptions.CultureInvariant);
    });

    [GeneratedRegex(@"[+-]?\d+(?:\.\d+)?", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    // A comma between two numbers, of which at least one has decimals.
    [GeneratedRegex(@"(?<=\d\.\d+),(?= (?:[xyuv] )?[+-]?\d)|(?<=\d),(?= (?:[xyuv] )?[+-]?\d+\.\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex(@"(?<=\d)\.(?=\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();
}
