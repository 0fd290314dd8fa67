using System.Globalization;
using System.Security;
using System.Text;
using MarkReader.Cards;
using MarkReader.Drawing.Texts;
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
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escaped(DrawingTexts.Say("svgCard.title", kind.Name, kind.Purpose))}</title>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<desc>{Escaped(DrawingTexts.Say("svgCard.size", side, Number(kind.ZoneSide)))}</desc>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{corner}\" y=\"{corner}\" width=\"{side}\" height=\"{side}\" fill=\"#fff\"/>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<path id=\"ink\" fill=\"#000\" d=\"{Polygons(kind)}\"/>\n");
        foreach (CardLabel label in kind.Labels)
        {
            using SKPath word = CardArt.Word(label);
            svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"#000\" d=\"{word.ToSvgPathData()}\"/>\n");
        }

        return Encoding.UTF8.GetBytes(svg.Append("</svg>\n").ToString());
    }

    private static string Escaped(string words) => SecurityElement.Escape(words);

    private static string Polygons(CardKind kind) => string.Join('\n', PrintedInk.Polygons(kind).Select(polygon =>
        "M" + string.Join('L', polygon.Select(Point)) + "Z"));

    private static string Point(CardPoint point) => Number(point.U) + " " + Number(-point.V);

    private static string Number(double millimetres) => millimetres.ToString("0.######", CultureInfo.InvariantCulture);
}
