using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>A finished overlay: primitives in photo pixels, from the back to the front. Both writers draw this and nothing else.</summary>
/// <param name="Photo">Size of the whole photo, px.</param>
/// <param name="Crop">A part of the photo about the free zone and the aim point, to be shown when the card is small in the photo.</param>
/// <param name="Frame">The part that the overlay was drawn for: the whole photo or the crop.</param>
/// <param name="Title">What is shown, in a few words.</param>
/// <param name="Description">The numbers, in sentences.</param>
public sealed record OverlayDrawing(
    PhotoSize Photo,
    PixelFrame Crop,
    PixelFrame Frame,
    IReadOnlyList<OverlayPrimitive> Primitives,
    string Title,
    string Description);

/// <summary>One thing to be drawn. <paramref name="Part"/> names what it belongs to, such as "near" or "scale".</summary>
public abstract record OverlayPrimitive(string Part);

/// <summary>A line through points, in a casing of the contrasting colour.</summary>
public sealed record OverlayLine(string Part, IReadOnlyList<PixelPoint> Points, bool Closed, LineStyle Style) : OverlayPrimitive(Part);

/// <summary>A filled area.</summary>
/// <param name="Opacity">0 (nothing) to 1 (opaque).</param>
public sealed record OverlayArea(string Part, IReadOnlyList<PixelPoint> Points, Colour Colour, double Opacity) : OverlayPrimitive(Part);

/// <summary>A line of text with a halo of the contrasting colour.</summary>
/// <param name="Start">Left end of the baseline.</param>
/// <param name="Style">Size, weight and colour.</param>
/// <param name="Width">Length of the text, px.</param>
public sealed record OverlayText(string Part, string Text, PixelPoint Start, TextStyle Style, double Width) : OverlayPrimitive(Part)
{
    /// <summary>The room it takes, with its halo.</summary>
    public PixelBox Box => new(
        Start.X - Style.Halo, Start.Y - (TextStyle.Ascent * Style.Size) - Style.Halo,
        Start.X + Width + Style.Halo, Start.Y + (TextStyle.Descent * Style.Size) + Style.Halo);
}

/// <summary>How a line looks, px.</summary>
/// <param name="Casing">Width of the casing on either side.</param>
/// <param name="Dash">Lengths of dash and gap; null for a full line. The casing is full in any case.</param>
public sealed record LineStyle(Colour Colour, double Width, double Casing, (double On, double Off)? Dash = null);

/// <summary>How text looks, px.</summary>
/// <param name="Size">The em.</param>
/// <param name="Halo">Width of the halo outside the letters.</param>
public sealed record TextStyle(Colour Colour, double Size, bool Bold, double Halo)
{
    /// <summary>Height above the baseline that letters and digits reach, in ems (DejaVu Sans: b, d, l 0.76).</summary>
    public const double Ascent = 0.76;

    /// <summary>Depth below the baseline, in ems (DejaVu Sans: g, p 0.24).</summary>
    public const double Descent = 0.24;
}
