using MarkReader.Drawing.Fonts;
using MarkReader.Drawing.Texts;
using SkiaSharp;

namespace MarkReader.Drawing.Audits;

/// <summary>The table of figures and the meaning of the symbols, beside the distances.</summary>
internal static class ChartKey
{
    private const int Line = 19;

    public static void Draw(SKCanvas canvas, float x, float y, float width, IReadOnlyList<FigureLine> figures)
    {
        using SKPaint ink = Fill(ChartStyle.Black);
        using SKPaint rule = Fill(ChartStyle.GridLine);
        using SKFont letters = Faces.Font(Faces.Regular, ChartStyle.Letters);
        using SKFont heads = Faces.Font(Faces.Bold, 13);
        canvas.DrawText(DrawingTexts.Get("chartKey.allKinds"), x, y, SKTextAlign.Left, heads, ink);
        foreach (FigureLine figure in figures)
        {
            y += Line;
            canvas.DrawText(figure.Name, x, y, SKTextAlign.Left, letters, ink);
            canvas.DrawText(figure.Value, x + width, y, SKTextAlign.Right, letters, ink);
            canvas.DrawRect(x, y + 5, width, 1, rule);
        }

        y += 2 * Line;
        canvas.DrawText("Symbols", x, y, SKTextAlign.Left, heads, ink);
        foreach ((Action<SKCanvas, float, float> symbol, string words) in s_symbols)
        {
            y += Line;
            symbol(canvas, x + 10, y - 4);
            canvas.DrawText(words, x + 28, y, SKTextAlign.Left, letters, ink);
        }
    }

    private static readonly (Action<SKCanvas, float, float> Symbol, string Words)[] s_symbols =
    [
        (Dot, DrawingTexts.Get("chartKey.mark")),
        (Bar, DrawingTexts.Get("chartKey.rmsKind")),
        (Diamond, DrawingTexts.Get("chartKey.rmsThatStatedCovariancesGive")),
        (Square, DrawingTexts.Get("chartKey.coverageConfidenceIntervalReachesBand")),
        (Triangle, DrawingTexts.Get("chartKey.doesNotOrDBeyond")),
        (Field, DrawingTexts.Get("chartKey.coverageRangeEachSortedD")),
    ];

    private static void Dot(SKCanvas canvas, float x, float y)
    {
        using SKPaint paint = Fill(ChartStyle.Blue);
        canvas.DrawCircle(x, y, 2.5f, paint);
    }

    private static void Bar(SKCanvas canvas, float x, float y)
    {
        using SKPaint paint = Fill(ChartStyle.Vermilion);
        canvas.DrawRect(x - 1.5f, y - 7, 3, 14, paint);
    }

    private static void Diamond(SKCanvas canvas, float x, float y)
    {
        using SKPaint paint = Fill(ChartStyle.Black);
        paint.IsStroke = true;
        Polygon(canvas, paint, (x - 4.5f, y), (x, y - 4.5f), (x + 4.5f, y), (x, y + 4.5f));
    }

    private static void Square(SKCanvas canvas, float x, float y)
    {
        using SKPaint paint = Fill(ChartStyle.Blue);
        canvas.DrawRect(x - 9, y - 0.75f, 18, 1.5f, paint);
        canvas.DrawRect(x - 3.5f, y - 3.5f, 7, 7, paint);
    }

    private static void Triangle(SKCanvas canvas, float x, float y)
    {
        using SKPaint paint = Fill(ChartStyle.Vermilion);
        Polygon(canvas, paint, (x - 4.5f, y + 4), (x, y - 4), (x + 4.5f, y + 4));
    }

    private static void Field(SKCanvas canvas, float x, float y)
    {
        using SKPaint paint = Fill(ChartStyle.Band);
        canvas.DrawRect(x - 9, y - 6, 18, 12, paint);
    }

    private static void Polygon(SKCanvas canvas, SKPaint paint, params (float X, float Y)[] corners)
    {
        using SKPathBuilder builder = new();
        builder.AddPoly([.. corners.Select(c => new SKPoint(c.X, c.Y))], close: true);
        using SKPath path = builder.Detach();
        canvas.DrawPath(path, paint);
    }

    private static SKPaint Fill(ScottPlot.Color colour) => new() { Color = colour.ToSKColor(), IsAntialias = true };
}
