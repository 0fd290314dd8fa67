using MarkReader.Drawing.Fonts;
using MarkReader.Drawing.Texts;
using ScottPlot;
using SkiaSharp;

namespace MarkReader.Drawing.Audits;

/// <summary>Puts the panels of an audit's picture together: errors and coverage by kind, below them the distances and a table of figures.</summary>
public static class AuditChartWriter
{
    private const int Width = 1000;
    private const int Head = 40;
    private const int Lower = 400;
    private const float HeadLetters = 13;

    // Errors from the left border, coverage beside them; the rows of both stand at the same height.
    private const int Split = 570;
    private static readonly PixelPadding s_errors = new(110, 20, 48, 34);
    private static readonly PixelPadding s_coverage = new(10, 96, 48, 34);
    private static readonly PixelPadding s_distances = new(110, 20, 48, 34);

    /// <summary>The bytes of the file.</summary>
    public static byte[] Write(AuditChart chart, ChartFormat format)
    {
        ArgumentNullException.ThrowIfNull(chart);
        KindRows rows = new(chart);
        int upper = (rows.All.Count * rows.Height) + 82;
        int height = Head + upper + Lower;
        return format == ChartFormat.Svg
            ? Svg(height, canvas => Draw(canvas, chart, rows, upper))
            : Png(height, canvas => Draw(canvas, chart, rows, upper));
    }

    private static byte[] Svg(int height, Action<SKCanvas> draw)
    {
        using MemoryStream stream = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(SKRect.Create(Width, height), stream))
            draw(canvas);
        return stream.ToArray();
    }

    private static byte[] Png(int height, Action<SKCanvas> draw)
    {
        const int Scale = 2;
        using SKBitmap bitmap = new(new SKImageInfo(Width * Scale, height * Scale, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Scale(Scale);
            draw(canvas);
        }

        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static void Draw(SKCanvas canvas, AuditChart chart, KindRows rows, int upper)
    {
        canvas.Clear(SKColors.White);
        Render(canvas, ErrorPanel.Of(rows, s_errors), 0, Head, Split, upper);
        Render(canvas, CoveragePanel.Of(rows, s_coverage), Split, Head, Width - Split, upper);
        Render(canvas, DistancePanel.Of(chart.Distances, s_distances), 0, Head + upper, Split, Lower);
        Write(canvas, chart.Title, 16, 28, 17);
        Write(canvas, DrawingTexts.Get("auditChartWriter.distanceFromTruth"), 110, Head + 24, HeadLetters);
        Write(canvas, DrawingTexts.Get("auditChartWriter.truthsInsideStatedRegion"), Split + 10, Head + 24, HeadLetters);
        Write(canvas, DrawingTexts.Get("auditChartWriter.foundFalse"), Width - 90, Head + 24, HeadLetters);
        Write(canvas, DrawingTexts.Get("auditChartWriter.squaredMahalanobisDistancesD"), 110, Head + upper + 24, HeadLetters);
        ChartKey.Draw(canvas, Split + 14, Head + upper + 24, Width - Split - 34, chart.Figures);
    }

    private static void Render(SKCanvas canvas, Plot plot, int left, int top, int width, int height)
    {
        PixelRect place = new(left, left + width, top + height, top);
        using (plot)
        {
            // The first time a plot draws itself twice, to settle its layout: once into nothing, so that an SVG holds it once.
            using (SKNoDrawCanvas nothing = new(Width, top + height))
                plot.Render(nothing, place);
            // It begins by clearing all that it may draw on.
            canvas.Save();
            canvas.ClipRect(SKRect.Create(left, top, width, height));
            plot.Render(canvas, place);
            canvas.Restore();
        }
    }

    private static void Write(SKCanvas canvas, string text, float x, float y, float size)
    {
        using SKFont font = Faces.Font(Faces.Bold, size);
        using SKPaint ink = new() { Color = ChartStyle.Black.ToSKColor(), IsAntialias = true };
        canvas.DrawText(text, x, y, SKTextAlign.Left, font, ink);
    }
}
