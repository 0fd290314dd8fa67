using System.Globalization;
using MarkReader.Drawing.Cards;
using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>Sets a document on paper as PDF: text that can be copied, drawings as vectors, photos as their JPEG bytes.</summary>
public static class PdfDocument
{
    private const float PointsPerMm = 72f / 25.4f;

    private const double AfterTitle = 1, AfterSubtitle = 5;

    public static byte[] Write(SheetDocument document, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(paper);
        // Set first, drawn afterwards: how many pages there are is not known before.
        PageFlow flow = new(paper);
        Title(flow, document);
        new BlockSetter(flow).Set(document.Blocks);
        SKDocumentPdfMetadata metadata = new()
        {
            Title = document.Title,
            Author = document.Author,
            Subject = document.Subject,
            Creator = "MarkReader",
            Creation = document.Written.UtcDateTime,
            Modified = document.Written.UtcDateTime,
            RasterDpi = 2540, // a coarser raster rounds the page's size
            EncodingQuality = 101,
        };
        // Skia ends the program when the stream cannot seek.
        using MemoryStream stream = new();
        using (SKDocument pdf = SKDocument.CreatePdf(stream, metadata))
        {
            for (int i = 0; i < flow.Pages.Count; i++)
            {
                SKCanvas canvas = pdf.BeginPage((float)paper.Width.Millimetres * PointsPerMm, (float)paper.Height.Millimetres * PointsPerMm);
                canvas.Scale(PointsPerMm);
                foreach (Action<SKCanvas> part in flow.Pages[i])
                    part(canvas);
                Frame(canvas, flow, document, i);
                pdf.EndPage();
            }

            pdf.Close();
        }

        return stream.ToArray();
    }

    private static void Title(PageFlow flow, SheetDocument document)
    {
        foreach (string line in Ink.Title.Wrap(document.Title, flow.Width))
            flow.Put(Ink.Title.Leading, (canvas, y) => Ink.Title.Draw(canvas, line, PageFlow.Left, y));
        flow.Gap(AfterTitle);
        foreach (string line in Ink.Subtitle.Wrap(document.Subtitle, flow.Width))
            flow.Put(Ink.Subtitle.Leading, (canvas, y) => Ink.Subtitle.Draw(canvas, line, PageFlow.Left, y));
        flow.Gap(AfterSubtitle);
    }

    private static void Frame(SKCanvas canvas, PageFlow flow, SheetDocument document, int page)
    {
        double foot = flow.PageHeight - PageFlow.FootLine;
        string number = string.Format(CultureInfo.InvariantCulture, document.PageNumber, page + 1, flow.Pages.Count);
        flow.Line(canvas, foot - 1.6, Ink.Line, 0.15);
        Ink.Small.Draw(canvas, Fitting(document.Foot, flow.Width - Ink.Small.Width(number) - 6), PageFlow.Left, foot);
        Ink.Small.Draw(canvas, number, flow.Right, foot, SKTextAlign.Right);
        if (page == 0)
            return;
        Ink.Small.Draw(canvas, Fitting($"{document.Title} · {document.Subtitle}", flow.Width), PageFlow.Left, PageFlow.HeadLine - 1);
        flow.Line(canvas, PageFlow.HeadLine + Ink.Small.Leading - 0.4, Ink.Line, 0.15);
    }

    private static string Fitting(string text, double width)
    {
        IReadOnlyList<string> lines = Ink.Small.Wrap(text.Replace('\n', ' '), width);
        return lines.Count == 1 ? lines[0] : Ink.Small.Wrap(text.Replace('\n', ' '), width - 3)[0] + " …";
    }
}
