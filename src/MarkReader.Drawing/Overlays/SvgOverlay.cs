using System.Globalization;
using System.Security;
using System.Text;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>The drawing alone as an SVG whose view box is the frame in photo pixels: laid over the photo (or its crop) at the same size, it fits.</summary>
public static class SvgOverlay
{
    // Lengths of texts are given, so that a browser without this font keeps the labels apart.
    private const string Fonts = "'DejaVu Sans Condensed','DejaVu Sans',Verdana,sans-serif";

    public static byte[] Write(OverlayDrawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        PixelBox box = drawing.Frame.Box;
        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{N(box.Left)} {N(box.Top)} {N(box.Width)} {N(box.Height)}\" role=\"img\" aria-label=\"{Escaped(drawing.Title)}\" ");
        svg.Append(CultureInfo.InvariantCulture, $"font-family=\"{Fonts}\" fill=\"none\" stroke-linejoin=\"round\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escaped(drawing.Title)}</title>\n<desc>{Escaped(drawing.Description)}</desc>\n");
        foreach (OverlayPrimitive primitive in drawing.Primitives)
            Append(svg, primitive);
        return Encoding.UTF8.GetBytes(svg.Append("</svg>\n").ToString());
    }

    private static void Append(StringBuilder svg, OverlayPrimitive primitive)
    {
        string part = Escaped(primitive.Part);
        switch (primitive)
        {
            case OverlayLine line:
                string data = Data(line.Points, line.Closed);
                LineStyle style = line.Style;
                string dash = style.Dash is { } d ? $" stroke-dasharray=\"{N(d.On)} {N(d.Off)}\"" : " stroke-linecap=\"round\"";
                svg.Append(CultureInfo.InvariantCulture, $"<path data-part=\"{part}\" d=\"{data}\" stroke=\"{OverlayColours.Dark.Hex}\" stroke-width=\"{N(style.Width + (2 * style.Casing))}\" stroke-linecap=\"round\"/>\n");
                svg.Append(CultureInfo.InvariantCulture, $"<path data-part=\"{part}\" d=\"{data}\" stroke=\"{style.Colour.Hex}\" stroke-width=\"{N(style.Width)}\"{dash}/>\n");
                break;
            case OverlayArea area:
                svg.Append(CultureInfo.InvariantCulture, $"<path data-part=\"{part}\" d=\"{Data(area.Points, closed: true)}\" fill=\"{area.Colour.Hex}\" fill-opacity=\"{N(area.Opacity)}\"/>\n");
                break;
            case OverlayText text:
                svg.Append(CultureInfo.InvariantCulture, $"<text data-part=\"{part}\" x=\"{N(text.Start.X)}\" y=\"{N(text.Start.Y)}\" font-size=\"{N(text.Style.Size)}\"{(text.Style.Bold ? " font-weight=\"bold\"" : string.Empty)} ");
                svg.Append(CultureInfo.InvariantCulture, $"textLength=\"{N(text.Width)}\" lengthAdjust=\"spacingAndGlyphs\" fill=\"{text.Style.Colour.Hex}\" stroke=\"{OverlayColours.Dark.Hex}\" stroke-width=\"{N(2 * text.Style.Halo)}\" paint-order=\"stroke\">{Escaped(text.Text)}</text>\n");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(primitive));
        }
    }

    private static string Data(IReadOnlyList<PixelPoint> points, bool closed) =>
        "M" + string.Join('L', points.Select(p => N(p.X) + " " + N(p.Y))) + (closed ? "Z" : string.Empty);

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Escaped(string text) => SecurityElement.Escape(text);
}
