using System.Globalization;
using System.Text;
using System.Xml.Linq;
using MarkReader.Cards;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Tests.Cards;

public sealed class SvgCardTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Kinds { get; } = new(CardKinds.All.Select(k => k.Name));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_drawing_has_the_cards_size_in_millimetres_and_its_centre_in_the_middle(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        XElement root = Read(kind);

        string side = kind.OuterSide.ToString(CultureInfo.InvariantCulture);
        string corner = (-kind.OuterSide / 2).ToString(CultureInfo.InvariantCulture);
        Assert.Equal(side + "mm", root.Attribute("width")!.Value);
        Assert.Equal(side + "mm", root.Attribute("height")!.Value);
        Assert.Equal($"{corner} {corner} {side} {side}", root.Attribute("viewBox")!.Value);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_ink_is_the_kinds_polygons(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        string data = Read(kind).Elements(s_svg + "path").Single(p => (string?)p.Attribute("id") == "ink").Attribute("d")!.Value;

        CardPoint[][] found = [.. data.Split('M', StringSplitOptions.RemoveEmptyEntries).Select(Points)];
        IReadOnlyList<IReadOnlyList<CardPoint>> expected = PrintedInk.Polygons(kind);
        Assert.Equal(expected.Count, found.Length);
        for (int i = 0; i < found.Length; i++)
        {
            Assert.Equal(expected[i].Count, found[i].Length);
            Assert.All(expected[i].Zip(found[i]), pair => Assert.Equal(0, pair.First.DistanceTo(pair.Second), 1e-5));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Drawing_picture_and_page_show_the_same_ink(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        GreyPicture png = GreyPicture.FromPng(CardSheet.Write(kind, CardFormat.Png, Paper.A4));
        GreyPicture svg = Render(kind, png.Width);
        Assert.Equal(png.Pixels.Length, svg.Pixels.Length);
        Assert.Equal(0, Differing(png, svg));

        double half = kind.OuterSide / 2;
        SheetLayout layout = SheetLayout.Of(kind, Paper.A4);
        GreyPicture page = Poppler.Render(CardSheet.Write(kind, CardFormat.Pdf, Paper.A4), (layout.CardX - half, layout.CardY - half, kind.OuterSide, kind.OuterSide), 20);
        GreyPicture svgFine = Render(kind, page.Width);
        Assert.Equal(svgFine.Pixels.Length, page.Pixels.Length);
        // The two renderers differ by a pixel along letters and slants at most; the cut line is grey and does not count.
        Assert.InRange(Differing(svgFine, page), 0, page.Pixels.Length / 5000);
    }

    private static XElement Read(CardKind kind) => XDocument.Parse(Encoding.UTF8.GetString(CardSheet.Write(kind, CardFormat.Svg, Paper.A4))).Root!;

    private static CardPoint[] Points(string loop) => [.. loop.Trim().TrimEnd('Z').Split('L').Select(p => p.Split(' '))
        .Select(p => new CardPoint(double.Parse(p[0], CultureInfo.InvariantCulture), -double.Parse(p[1], CultureInfo.InvariantCulture)))];

    private static GreyPicture Render(CardKind kind, int pixels)
    {
        using SKBitmap bitmap = new(new SKImageInfo(pixels, pixels, SKColorType.Gray8, SKAlphaType.Opaque));
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Translate(pixels / 2f, pixels / 2f);
        canvas.Scale((float)(pixels / kind.OuterSide));
        using SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };
        foreach (XElement element in Read(kind).Elements(s_svg + "path"))
        {
            using SKPath path = SKPath.ParseSvgPathData(element.Attribute("d")!.Value)!;
            canvas.DrawPath(path, ink);
        }

        return new(pixels, pixels, bitmap.Bytes);
    }

    /// <summary>Pixels that are mostly ink in one picture and mostly paper in the other.</summary>
    private static int Differing(GreyPicture a, GreyPicture b)
    {
        int count = 0;
        for (int i = 0; i < a.Pixels.Length; i++)
        {
            if (a.Pixels[i] < 100 != b.Pixels[i] < 100 && Math.Abs(a.Pixels[i] - b.Pixels[i]) > 100)
                count++;
        }

        return count;
    }
}
