using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Pictures;

/// <summary>The language of a picture: its words and how it writes numbers.</summary>
public sealed record PictureStyle(PictureWords Words, PictureNumbers Numbers)
{
    /// <summary>The reader's language (CurrentUICulture), millimetres, a decimal point.</summary>
    public static PictureStyle Default => new(new(), PictureNumbers.Millimetres);
}

/// <summary>How a picture writes numbers.</summary>
/// <param name="Measured">A measured length with its unit, such as "0.84 mm".</param>
/// <param name="Fine">A small one with one digit more.</param>
/// <param name="Round">A length of the drawing itself, such as "5 mm".</param>
/// <param name="Number">A number without unit, at most two decimals.</param>
/// <param name="Inches">Whether grids go by parts of an inch.</param>
public sealed record PictureNumbers(Func<Length, string> Measured, Func<Length, string> Fine, Func<Length, string> Round, Func<double, string> Number, bool Inches)
{
    public static PictureNumbers Millimetres { get; } = new(Text("0.00"), Text("0.000"), Text("0.###"), n => n.ToString("0.##", CultureInfo.InvariantCulture), false);

    private static Func<Length, string> Text(string format) => l => l.Millimetres.ToString(format, CultureInfo.InvariantCulture) + " mm";
}
