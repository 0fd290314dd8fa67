using MarkReader.Drawing.Fonts;
using SkiaSharp;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>Widths and sizes for a frame: chosen so that all is legible when the frame is shown 360 CSS pixels wide, as on a phone held upright.</summary>
internal sealed class Pen(PixelFrame frame)
{
    private const double PhoneWidth = 360;
    private const double LetterSize = 13;
    private const double HaloWidth = 1.7;

    /// <summary>Photo pixels to the CSS pixel.</summary>
    public double Css { get; } = frame.Width / PhoneWidth;

    public LineStyle Bold(Colour colour) => new(colour, 2.2 * Css, 1.1 * Css);

    public LineStyle Plain(Colour colour) => new(colour, 1.5 * Css, 0.9 * Css);

    public LineStyle Fine(Colour colour) => new(colour, 1.5 * Css, 0.6 * Css);

    public LineStyle Dashed(Colour colour) => new(colour, 1.5 * Css, 0.9 * Css, (5 * Css, 4 * Css));

    public TextStyle Text(Colour colour, bool bold) => new(colour, LetterSize * Css, bold, HaloWidth * Css);

    /// <summary>Length of a text in a style, px.</summary>
    public static double Measure(string text, TextStyle style)
    {
        using SKFont font = Faces.Font(style.Bold ? Faces.Bold : Faces.Regular, style.Size);
        return font.MeasureText(text);
    }
}
