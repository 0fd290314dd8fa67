using MarkReader.Cards;
using MarkReader.Drawing.Fonts;
using MarkReader.Drawing.Texts;
using SkiaSharp;

namespace MarkReader.Drawing.Cards;

/// <summary>A page with the calibration board at exact size.</summary>
/// <remarks>The same board gives the same bytes.</remarks>
public static class BoardSheet
{
    private const float PointsPerMm = 72f / 25.4f;

    private static readonly DateTime s_date = new(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>The bytes of a PDF.</summary>
    /// <param name="notes">Lines printed under the board; as many as fit, two on every paper.</param>
    public static byte[] Write(CalibrationBoard board, Paper paper, params IReadOnlyList<string> notes)
    {
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(paper);
        SKDocumentPdfMetadata metadata = new()
        {
            Title = $"MarkReader {board.Name}",
            Subject = DrawingTexts.Say("boardSheet.forPrintAt", board.Purpose),
            Creator = "MarkReader",
            Creation = s_date,
            Modified = s_date,
            RasterDpi = 2540, // a coarser raster rounds the page's size
            EncodingQuality = 101,
        };
        using MemoryStream stream = new();
        using (SKDocument document = SKDocument.CreatePdf(stream, metadata))
        {
            (double width, double height) = (paper.Width.Millimetres, paper.Height.Millimetres);
            SKCanvas canvas = document.BeginPage((float)width * PointsPerMm, (float)height * PointsPerMm);
            canvas.Scale(PointsPerMm);
            using (SKAutoCanvasRestore restore = new(canvas))
            {
                canvas.Translate((float)(width / 2), (float)(SheetLayout.FootMargin + (board.Height / 2)));
                CardArt.Draw(canvas, board);
            }

            using SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };
            using SKFont font = Faces.Font(Faces.Regular, 3);
            double y = SheetLayout.FootMargin + board.Height + 3;
            foreach (string note in notes)
            {
                y += 4.2;
                if (y > height - 5)
                    break;
                canvas.DrawText(note, (float)((width - board.Width) / 2), (float)y, SKTextAlign.Left, font, ink);
            }

            document.EndPage();
            document.Close();
        }

        return stream.ToArray();
    }
}
