using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Estimates;

/// <summary>Checks of single numbers from outside; each returns what is wrong, or null.</summary>
public static class InputChecks
{
    /// <summary>The number lies between two bounds, both allowed.</summary>
    public static Failure? Between(double value, (double Least, double Most) range, FailureCode code, string what, string hint) =>
        value >= range.Least && value <= range.Most
            ? null
            : new(code, $"{what} is {Text(value)}, not between {Text(range.Least)} and {Text(range.Most)}", hint);

    /// <summary>A number as messages show it.</summary>
    public static string Text(double value) =>
        value.ToString(value == 0 || Math.Abs(value) is >= 1e-3 and < 1e7 ? "0.####" : "G4", CultureInfo.InvariantCulture);
}
