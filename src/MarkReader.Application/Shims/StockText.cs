using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Alignment.Shims;
using MarkReader.Application.Inputs;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Shims;

/// <summary>The washers and sheets that a user has.</summary>
public sealed record Stock(IReadOnlyList<StockItem> Items);

/// <summary>Reads a stock: thicknesses in mm, each with a count when it is limited, like 0.5,0.8x3,1.0.</summary>
/// <remarks>A point before decimals and commas or blanks between the items, or semicolons between them and either before decimals.</remarks>
public static partial class StockText
{
    private static string Hint => InputTexts.Get("stockText.writeThicknessesInMmWith");

    public static Outcome<Stock> Read(string text)
    {
        List<StockItem> items = [];
        bool commas = !text.Contains(';', StringComparison.Ordinal) && !text.Contains('.', StringComparison.Ordinal) && text.Contains(',', StringComparison.Ordinal);
        if (commas && Mixed().IsMatch(text))
            return TwoWays(text);
        foreach (string item in ListText.Items(text))
        {
            // A comma that parts no items stands before decimals.
            Match match = Item().Match(item);
            if (!match.Success || !NumberText.Read(match.Groups["thickness"].Value.Replace(',', '.')).TryGet(out Number? thickness, out _) || !double.IsFinite(thickness.Value))
                return new Failure(StockFailures.Unreadable, InputTexts.Word("stockText.notThicknessWithOrWithout", ListText.Shown(item)), Hint);
            // "0,5" is nothing and five, or a half.
            if (commas && thickness.Value == 0)
                return TwoWays(text);
            items.Add(UsualStock.Piece(thickness.Value, match.Groups["count"] is { Success: true } count ? int.Parse(count.Value, CultureInfo.InvariantCulture) : null));
        }

        return new Stock(items);
    }

    private static Failure TwoWays(string text) => new(
        StockFailures.Unreadable, InputTexts.Word("stockText.canBeReadInTwo", ListText.Shown(text.Trim())), InputTexts.Get("stockText.writePointBeforeDecimalsOr"));

    // "1,5 2,5": commas between digits, and blanks between items.
    [GeneratedRegex(@"^(?=.*[0-9],[0-9])(?=.*[0-9]\s+[0-9])", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Mixed();

    [GeneratedRegex(@"^(?<thickness>[^x×*]+?)\s*([x×*]\s*(?<count>[0-9]{1,6}))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Item();
}
