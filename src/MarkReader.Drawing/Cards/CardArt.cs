using MarkReader.Cards;
using MarkReader.Drawing.Fonts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Cards;

/// <summary>The ink of a card as Skia paths in mm, origin at the card's centre, x right, y down.</summary>
internal static class CardArt
{
    /// <summary>Polygons as one path: filled together, shared edges leave no hairline.</summary>
    public static SKPath Polygons(IEnumerable<IReadOnlyList<CardPoint>> polygons)
    {
        using SKPathBuilder path = new() { FillType = SKPathFillType.Winding };
        foreach (IReadOnlyList<CardPoint> polygon in polygons)
            path.AddPoly([.. polygon.Select(p => new SKPoint((float)p.U, (float)-p.V))], true);
        return path.Detach();
    }

    /// <summary>The outline of a printed word, so that every format shows the same letters without a font at hand.</summary>
    public static SKPath Word(CardLabel label)
    {
        const double em = 100;
        using SKFont font = Faces.Font(Faces.Regular, em);
        double capHeight = font.Metrics.CapHeight;
        double width = font.MeasureText(label.Text);
        using SKPath outline = font.GetTextPath(label.Text, new SKPoint((float)(-width / 2), (float)(capHeight / 2)));
        float scale = (float)(label.Height / capHeight);
        SKMatrix place = SKMatrix.CreateScale(scale, scale)
            .PostConcat(SKMatrix.CreateRotationDegrees((float)-label.TurnDegrees))
            .PostConcat(SKMatrix.CreateTranslation((float)label.Centre.U, (float)-label.Centre.V));
        SKPath path = new(outline);
        path.Transform(place);
        return path;
    }

    /// <summary>Draws all ink of a card or board with the centre at the canvas's origin.</summary>
    public static void Draw(SKCanvas canvas, IPrint print)
    {
        using SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };
        using (SKPath polygons = Polygons(print.Ink))
            canvas.DrawPath(polygons, ink);
        foreach (CardLabel label in print.Labels)
        {
            using SKPath word = Word(label);
            canvas.DrawPath(word, ink);
        }
    }
}
