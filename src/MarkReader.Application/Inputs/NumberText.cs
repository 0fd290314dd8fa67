using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Inputs;

/// <summary>Reads a number as people write it: with a point or a comma before the decimals.</summary>
public static partial class NumberText
{
    /// <summary>The text is not a number, or can be read in two ways.</summary>
    public static readonly FailureCode Unreadable = new("NUMBER_UNREADABLE", FailureKind.BadInput);

    /// <summary>The number. NaN and infinity are read, so that the checks of what is meant can name them. A comma before exactly three digits is refused: it may stand for thousands.</summary>
    public static Outcome<Number> Read(string text) => Read(text, inches: false);

    /// <summary>The same.</summary>
    /// <param name="inches">Whether a length in inches is meant, which the example of a refusal then is.</param>
    public static Outcome<Number> Read(string text, bool inches)
    {
        string trimmed = text.Trim().Replace('−', '-');
        if (NotFinite().IsMatch(trimmed))
            return new Number(trimmed.Contains("nan", StringComparison.OrdinalIgnoreCase) ? double.NaN : trimmed[0] == '-' ? double.NegativeInfinity : double.PositiveInfinity);
        if (ThousandsOrDecimals().IsMatch(trimmed))
            return new Failure(Unreadable, InputTexts.Word("numberText.canBeReadInTwo", trimmed), InputTexts.Word("numberText.writeOr", trimmed.Replace(",", "", StringComparison.Ordinal), trimmed.Replace(',', '.')));
        return Plain().IsMatch(trimmed)
            ? new Number(double.Parse(trimmed.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture))
            : new Failure(Unreadable, InputTexts.Word("numberText.notNumber", Shorten(trimmed)), InputTexts.Get(inches ? "numberText.writeLikeInches" : "numberText.writeLikeOr"));
    }

    private static string Shorten(string text) => text.Length > 20 ? text[..20] + "..." : text;

    [GeneratedRegex("^[+-]?(nan|inf(inity)?|∞)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex NotFinite();

    [GeneratedRegex(@"^[+-]?[1-9][0-9]{0,2}(,[0-9]{3})+$", RegexOptions.CultureInvariant)]
    private static partial Regex ThousandsOrDecimals();

    [GeneratedRegex(@"^[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)(e[+-]?[0-9]{1,3})?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Plain();
}

/// <summary>A number that was read.</summary>
public sealed record Number(double Value);
