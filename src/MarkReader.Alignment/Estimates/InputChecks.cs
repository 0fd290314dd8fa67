using System.Globalization;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Estimates;

/// <summary>Checks of single numbers from outside; each returns what is wrong, or null.</summary>
public static class InputChecks
{
    /// <summary>The number lies between two bounds, both allowed.</summary>
    public static Failure? Between(double value, (double Least, double Most) range, FailureCode code, string what, string hint) =>
        value >= range.Least && value <= range.Most
            ? null
            : new(code, AlignmentTexts.Word("inputChecks.notBetweenAnd", what, Text(value), Text(range.Least), Text(range.Most)), hint);

    /// <summary>The same of a length in mm.</summary>
    /// <param name="what">What it is, without its unit.</param>
    public static Failure? Lengths(double value, (double Least, double Most) range, FailureCode code, string what, Wording hint) =>
        value >= range.Least && value <= range.Most
            ? null
            : new(code, AlignmentTexts.Word("inputChecks.inNotBetweenAnd", what, Wording.Unit, Bare(value), Bare(range.Least), Bare(range.Most)), hint);

    /// <summary>A length in a message, with its unit.</summary>
    public static SaidLength Mm(double value) => new(value, Format(value));

    /// <summary>A length in a message, without its unit.</summary>
    public static SaidLength Bare(double value) => new(value, Format(value), HasUnit: false);

    /// <summary>A number as messages show it.</summary>
    public static string Text(double value) =>
        value.ToString(Format(value), CultureInfo.InvariantCulture);

    private static string Format(double value) => value == 0 || Math.Abs(value) is >= 1e-3 and < 1e7 ? "0.####" : "G4";
}
