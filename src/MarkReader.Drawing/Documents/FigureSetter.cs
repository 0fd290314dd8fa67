using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>Sets drawings and photos, two in a row.</summary>
internal sealed class FigureSetter(PageFlow flow)
{
    private const double Gutter = 6, TallestPhoto = 68, TallestPicture = 86, BelowImage = 1.2, BelowRow = 3.4, BetweenTexts = 2.4;

    private double Column => (flow.Width - Gutter) / 2;

    /// <summary>Of the first row.</summary>
    public double Height(DocumentBlock.Photos photos) => photos.All.Count == 0 ? 0 : Height([.. photos.All.Take(2)]);

    /// <summary>Of the first row.</summary>
    public double Height(DocumentBlock.Pictures pictures) => pictures.All.Count == 0 ? 0 : Math.Max(Height([.. pictures.All.Take(2)]), HeightBeside(pictures));

    public void Set(DocumentBlock.Photos photos)
    {
        foreach (DocumentPhoto[] row in photos.All.Chunk(2))
            flow.Put(Height(row), (canvas, y) => Row(canvas, y, row));
    }

    public void Set(DocumentBlock.Pictures pictures)
    {
        foreach (DocumentPicture[] row in pictures.All.Chunk(2))
        {
            flow.Put(Math.Max(Height(row), HeightBeside(pictures)), (canvas, y) =>
            {
                Row(canvas, y, row);
                foreach (string text in pictures.Beside)
                {
                    Lines(canvas, Ink.Body, text, Left(1), y);
                    y += Height(Ink.Body, text) + BetweenTexts;
                }
            });
        }
    }

    private void Row(SKCanvas canvas, double y, DocumentPicture[] row)
    {
        double tallest = row.Max(p => Size(p).Height);
        for (int i = 0; i < row.Length; i++)
        {
            double x = Left(i);
            Lines(canvas, Ink.Small, row[i].Caption, x, y + tallest + BelowImage);
            (double width, double height) = Size(row[i]);
            using SKAutoCanvasRestore restore = new(canvas);
            canvas.Translate((float)x, (float)y);
            canvas.ClipRect(new(0, 0, (float)width, (float)height));
            canvas.Scale((float)(width / row[i].Drawing.Width));
            row[i].Drawing.Draw(canvas);
        }
    }

    private void Row(SKCanvas canvas, double y, DocumentPhoto[] row)
    {
        double tallest = row.Max(p => Size(p).Height);
        for (int i = 0; i < row.Length; i++)
        {
            double x = Left(i);
            (double width, double height) = Size(row[i]);
            // The bytes of a JPEG go into the PDF as they are.
            using SKData data = SKData.CreateCopy(row[i].Jpeg.Span);
            using SKImage? image = SKImage.FromEncodedData(data);
            if (image is not null)
                canvas.DrawImage(image, new SKRect((float)x, (float)y, (float)(x + width), (float)(y + height)), new SKSamplingOptions(SKFilterMode.Linear));
            Lines(canvas, Ink.Small, row[i].Caption, x, y + tallest + BelowImage);
        }
    }

    private double HeightBeside(DocumentBlock.Pictures pictures) => pictures.Beside.Sum(t => Height(Ink.Body, t) + BetweenTexts);

    private double Left(int column) => PageFlow.Left + (column * (Column + Gutter));

    private void Lines(SKCanvas canvas, Ink ink, string text, double x, double y)
    {
        foreach (string line in ink.Wrap(text, Column))
        {
            ink.Draw(canvas, line, x, y);
            y += ink.Leading;
        }
    }

    private double Height(Ink ink, string text) => ink.Wrap(text, Column).Count * ink.Leading;

    private double Height(DocumentPicture[] row) => row.Max(p => Size(p).Height) + BelowImage + row.Max(p => Height(Ink.Small, p.Caption)) + BelowRow;

    private double Height(DocumentPhoto[] row) => row.Max(p => Size(p).Height) + BelowImage + row.Max(p => Height(Ink.Small, p.Caption)) + BelowRow;

    private (double Width, double Height) Size(DocumentPhoto photo) => Fit(photo.Width, photo.Height, TallestPhoto);

    private (double Width, double Height) Size(DocumentPicture picture) => Fit(picture.Drawing.Width, picture.Drawing.Height, TallestPicture);

    private (double Width, double Height) Fit(double width, double height, double tallest)
    {
        double scale = Math.Min(Column / width, tallest / height);
        return (scale * width, scale * height);
    }
}
