using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Quantities;

namespace MarkReader.Service.Uploads;

/// <summary>Reads a number as people write it: with a point or a comma before the decimals.</summary>
public static partial class NumberText
{
    /// <summary>The number, or what is wrong with the text. A comma before exactly three digits is refused: it may stand for thousands.</summary>
    public static Outcome<Number> Read(string text)
    {
        string trimmed = text.Trim().Replace('−', '-');
        if (ThousandsOrDecimals().IsMatch(trimmed))
        {
            string digits = trimmed.Replace(",", "", StringComparison.Ordinal);
            return new Failure(
                ServiceFailures.NumberUnreadable,
                $"'{trimmed}' can be read in two ways",
                $"write {digits} or {trimmed.Replace(',', '.')}");
        }
        return Plain().IsMatch(trimmed)
            ? new Number(double.Parse(trimmed.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture))
            : new Failure(ServiceFailures.NumberUnreadable, $"'{Shorten(trimmed)}' is not a number", "write it like 80, 80.5 or 80,5");
    }

    private static string Shorten(string text) => text.Length > 20 ? text[..20] + "…" : text;

    [GeneratedRegex(@"^[+-]?[1-9]\d{0,2}(,\d{3})+$", RegexOptions.CultureInvariant)]
    private static partial Regex ThousandsOrDecimals();

    [GeneratedRegex(@"^[+-]?(\d{1,15}([.,]\d{0,15})?|[.,]\d{1,15})$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}

/// <summary>A number that was read.</summary>
public sealed record Number(double Value);
