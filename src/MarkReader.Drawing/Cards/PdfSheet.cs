using MarkReader.Cards;
using MarkReader.Drawing.Fonts;
using MarkReader.Drawing.Texts;
using SkiaSharp;

namespace MarkReader.Drawing.Cards;

/// <summary>A page with one card at exact size, rulers and instructions.</summary>
internal static class PdfSheet
{
    private const float PointsPerMm = 72f / 25.4f;

    private static readonly DateTime s_date = new(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc); // the same card, the same bytes
    private static readonly SKColor s_grey = new(0x99, 0x99, 0x99);

    public static byte[] Write(CardKind kind, Paper paper)
    {
        SheetLayout layout = SheetLayout.Of(kind, paper);
        SKDocumentPdfMetadata metadata = new()
        {
            Title = DrawingTexts.Say("pdfSheet.markreaderCard", kind.Name),
            Subject = SheetWords.Subject(kind),
            Creator = "MarkReader",
            Creation = s_date,
            Modified = s_date,
            RasterDpi = 2540, // a coarser raster rounds the page's size
            EncodingQuality = 101,
        };
        using MemoryStream stream = new();
        using (SKDocument document = SKDocument.CreatePdf(stream, metadata))
        {
            SKCanvas canvas = document.BeginPage((float)paper.Width.Millimetres * PointsPerMm, (float)paper.Height.Millimetres * PointsPerMm);
            canvas.Scale(PointsPerMm);
            Heading(canvas, kind, paper);
            Card(canvas, kind, layout);
            if (Texts(canvas, kind, layout) > paper.Height.Millimetres - SheetLayout.FootMargin)
                throw new InvalidDataException($"The card '{kind.Name}' leaves no room for its words on {paper.Name}.");
            if (layout.Scale is { } corner)
                Scale(canvas, corner.X, corner.Y);
            document.EndPage();
            document.Close();
        }

        return stream.ToArray();
    }

    private static void Heading(SKCanvas canvas, CardKind kind, Paper paper)
    {
        const float left = (float)SheetLayout.Margin;
        float right = (float)(paper.Width.Millimetres - SheetLayout.Margin);
        using SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };
        using SKFont name = Faces.Font(Faces.Bold, 7);
        using SKFont text = Faces.Font(Faces.Regular, 3.3);
        canvas.DrawText(kind.Name, left, 21, SKTextAlign.Left, name, ink);
        canvas.DrawText("MarkReader", right, 21, SKTextAlign.Right, text, ink);
        canvas.DrawText(SheetWords.Subtitle(kind), left, 27.2f, SKTextAlign.Left, text, ink);
        using SKPaint line = Stroke(SKColors.Black, 0.2f);
        canvas.DrawLine(left, (float)SheetLayout.HeadingEnd, right, (float)SheetLayout.HeadingEnd, line);
    }

    private static void Card(SKCanvas canvas, CardKind kind, SheetLayout layout)
    {
        using SKAutoCanvasRestore restore = new(canvas);
        canvas.Translate((float)layout.CardX, (float)layout.CardY);
        CardArt.Draw(canvas, kind);
        float half = (float)kind.OuterSide / 2;
        using SKPaint cut = Stroke(s_grey, 0.1f);
        canvas.DrawRect(-half, -half, 2 * half, 2 * half, cut);
        using SKPaint crop = Stroke(SKColors.Black, 0.12f);
        foreach (float sx in new[] { -1f, 1f })
        {
            foreach (float sy in new[] { -1f, 1f })
            {
                canvas.DrawLine(sx * (half + 1.5f), sy * half, sx * (half + 5), sy * half, crop);
                canvas.DrawLine(sx * half, sy * (half + 1.5f), sx * half, sy * (half + 5), crop);
            }
        }
    }

    /// <summary>Where the lowest text ends.</summary>
    private static double Texts(SKCanvas canvas, CardKind kind, SheetLayout layout)
    {
        TextBlock steps = new(canvas, layout.Steps);
        steps.Heading(DrawingTexts.Get("pdfSheet.usingCard"));
        int number = 0;
        foreach (string step in SheetWords.Steps(kind, layout.Scale is not null))
            steps.Item($"{++number}.", step);
        TextBlock cautions = layout.Cautions is null ? steps : new(canvas, layout.Cautions);
        cautions.Heading("Cautions");
        cautions.Paragraph(SheetWords.CautionsIntroduction);
        foreach (string caution in SheetWords.Cautions)
            cautions.Item("–", caution);
        return Math.Max(steps.End, cautions.End);
    }

    private static void Scale(SKCanvas canvas, double x, double y)
    {
        const double half = SheetLayout.ScaleLength / 2;
        const double stroke = 0.2;
        const double bar = half - (stroke / 2); // the bars lie inside, so that their outer edges end each other's length
        CardRuler across = new(new(-half, -bar), new(half, -bar), 10, 2, stroke);
        CardRuler up = new(new(-bar, -half), new(-bar, half), 10, 2, stroke);
        using SKAutoCanvasRestore restore = new(canvas);
        canvas.Translate((float)(x + half), (float)(y + half));
        using SKPath rulers = CardArt.Polygons([.. PrintedInk.Ruler(across), .. PrintedInk.Ruler(up)]);
        using SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };
        canvas.DrawPath(rulers, ink);
        using SKFont font = Faces.Font(Faces.Regular, 2.8);
        canvas.DrawText(SheetWords.ScaleCaption, (float)(-half + 5), (float)(half - 5), SKTextAlign.Left, font, ink);
    }

    private static SKPaint Stroke(SKColor colour, float width) =>
        new() { Color = colour, IsStroke = true, StrokeWidth = width, IsAntialias = true };
}
