using System.Globalization;

namespace MarkReader.Quantities;

/// <summary>How lengths are rounded when they are told in inches, wherever they stand: pages, pictures, documents, sentences.</summary>
/// <remarks>
/// A measured length, which has a fixed count of decimals, gets two more than in mm: an inch has about 25 mm, so that one digit and a half more shows the same.
/// A stated length, which has as few decimals as it needs, gets four at most, beyond what any rule shows.
/// </remarks>
public static class InchDigits
{
    private const int More = 2;

    private const string AsNeeded = "0.####";

    /// <summary>Decimals of a measured length.</summary>
    /// <param name="ofMillimetres">Those that it has in mm.</param>
    public static int Measured(int ofMillimetres) => ofMillimetres + More;

    /// <summary>A stated length in inches, with a decimal point; no sign on what rounds to zero.</summary>
    public static string Stated(double millimetres) => Inches(millimetres, AsNeeded);

    /// <summary>A length in inches, with a decimal point, by how it is told in mm.</summary>
    /// <remarks>No sign on what rounds to zero.</remarks>
    /// <param name="format">Of the millimetres: 0.00 for a measured length, 0.### for a stated one.</param>
    public static string Told(double millimetres, string format)
    {
        if (format.Contains('#', StringComparison.Ordinal) || !format.Contains('.', StringComparison.Ordinal))
            return Stated(millimetres);
        int decimals = Measured(format.Length - format.IndexOf('.', StringComparison.Ordinal) - 1);
        return Inches(millimetres, "F" + decimals.ToString(CultureInfo.InvariantCulture));
    }

    private static string Inches(double millimetres, string format)
    {
        string text = (millimetres / Length.MillimetresPerInch).ToString(format, CultureInfo.InvariantCulture);
        return text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text;
    }
}
