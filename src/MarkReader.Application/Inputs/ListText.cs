using System.Text.RegularExpressions;

namespace MarkReader.Application.Inputs;

/// <summary>Splits a list as people write it.</summary>
internal static partial class ListText
{
    /// <summary>
    /// The items: apart by semicolons when there are any, and then a comma may stand before decimals; else by commas or blanks.
    /// Blanks before a count ("0.8 x3") part nothing; empty items are left out.
    /// </summary>
    public static IReadOnlyList<string> Items(string text) =>
        [.. (text.Contains(';', StringComparison.Ordinal) ? text.Split(';') : CommasOrBlanks().Split(text)).Select(item => item.Trim()).Where(item => item.Length > 0)];

    /// <summary>An item as messages show it.</summary>
    public static string Shown(string item) => item.Length > 20 ? item[..20] + "..." : item;

    [GeneratedRegex(@"\s*,\s*|\s+(?![x×*\s])", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex CommasOrBlanks();
}
