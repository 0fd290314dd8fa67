using System.Globalization;

namespace MarkReader.Drawing.Overlays;

/// <summary>An sRGB colour.</summary>
public readonly record struct Colour(byte R, byte G, byte B)
{
    /// <summary>As in SVG: #RRGGBB.</summary>
    public string Hex => string.Create(CultureInfo.InvariantCulture, $"#{R:X2}{G:X2}{B:X2}");

    /// <summary>Relative luminance, 0 to 1 (WCAG 2.2, "relative luminance").</summary>
    public double Luminance => (0.2126 * Linear(R)) + (0.7152 * Linear(G)) + (0.0722 * Linear(B));

    /// <summary>Contrast with another colour, 1 to 21 (WCAG 2.2, "contrast ratio").</summary>
    public double Contrast(Colour other)
    {
        (double a, double b) = (Luminance + 0.05, other.Luminance + 0.05);
        return Math.Max(a, b) / Math.Min(a, b);
    }

    private static double Linear(byte value)
    {
        double s = value / 255.0;
        return s <= 0.04045 ? s / 12.92 : Math.Pow((s + 0.055) / 1.055, 2.4);
    }
}

/// <summary>
/// The colours of an overlay, told apart with any common colour vision (M. Okabe and K. Ito, "Color Universal Design", 2002, revised 2008,
/// https://jfly.uni-koeln.de/color/). Each is light and has a dark casing, so that one of the two stands out on any ground.
/// </summary>
public static class OverlayColours
{
    /// <summary>Sky blue.</summary>
    public static readonly Colour Near = new(0x56, 0xB4, 0xE9);

    /// <summary>Vermilion.</summary>
    public static readonly Colour Far = new(0xD5, 0x5E, 0x00);

    /// <summary>Yellow.</summary>
    public static readonly Colour Aim = new(0xF0, 0xE4, 0x42);

    /// <summary>Lines and scales that belong to none of them.</summary>
    public static readonly Colour Plain = new(0xFF, 0xFF, 0xFF);

    /// <summary>Casings and halos.</summary>
    public static readonly Colour Dark = new(0x10, 0x10, 0x10);
}
