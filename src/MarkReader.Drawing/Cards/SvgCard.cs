using System.Globalization;
using System.Text;
using MarkReader.Cards;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Cards;

/// <summary>The card alone as an SVG, one unit = 1 mm, the centre at (0, 0).</summary>
internal static class SvgCard
{
    public static byte[] Write(CardKind kind)
    {
        string side = Number(kind.OuterSide);
        string corner = Number(-kind.OuterSide / 2);
        StringBuilder svg = new();
        svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{side}mm\" height=\"{side}mm\" viewBox=\"{corner} {corner} {side} {side}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>Card '{kind.Name}', for {kind.Purpose}</title>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<desc>Print at 100 %: {side} mm × {side} mm. The free zone in the middle is {Number(kind.ZoneSide)} mm wide.</desc>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{corner}\" y=\"{corner}\" width=\"{side}\" height=\"{side}\" fill=\"#fff\"/>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<path id=\"ink\" fill=\"#000\" d=\"{Polygons(kind)}\"/>\n");
        foreach (CardLabel label in kind.Labels)
        {
            using SKPath word = CardArt.Word(label);
            svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"#000\" d=\"{word.ToSvgPathData()}\"/>\n");
        }

        return Encoding.UTF8.GetBytes(svg.Append("</svg>\n").ToString());
    }

    private static string Polygons(CardKind kind) => string.Join('\n', PrintedInk.Polygons(kind).Select(polygon =>
        "M" + string.Join('L', polygon.Select(Point)) + "Z"));

    private static string Point(CardPoint point) => Number(point.U) + " " + Number(-point.V);

    private static string Number(double millimetres) => millimetres.ToString("0.######", CultureInfo.InvariantCulture);
}
