using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>Sets drawings over the whole width, and photos two in a row.</summary>
internal sealed class FigureSetter(PageFlow flow)
{
    private const double Gutter = 6, TallestPhoto = 72, TallestPicture = 118, BelowPhoto = 1.2, BelowRow = 3;

    private double PhotoWidth => (flow.Width - Gutter) / 2;

    /// <summary>Of the first row.</summary>
    public double Height(DocumentBlock.Photos photos) => photos.All.Count == 0 ? 0 : RowHeight([.. photos.All.Take(2)]);

    public double Height(DocumentBlock.Picture picture) => Words(picture).Sum(w => w.Ink.Leading) + 1 + Scaled(picture).Height;

    public void Set(DocumentBlock.Photos photos)
    {
        foreach (DocumentPhoto[] row in photos.All.Chunk(2))
            flow.Put(RowHeight(row), (canvas, y) => Row(canvas, y, row));
    }

    public void Set(DocumentBlock.Picture picture)
    {
        (float scale, double width, double height) = Scaled(picture);
        flow.Put(Height(picture), (canvas, y) =>
        {
            foreach ((Ink ink, string line) in Words(picture))
            {
                ink.Draw(canvas, line, PageFlow.Left, y);
                y += ink.Leading;
            }

            using SKAutoCanvasRestore restore = new(canvas);
            canvas.Translate((float)(PageFlow.Left + ((flow.Width - width) / 2)), (float)y + 1);
            canvas.ClipRect(new(0, 0, (float)width, (float)height));
            canvas.Scale(scale);
            picture.Drawing.Draw(canvas);
        });
    }

    private IReadOnlyList<(Ink Ink, string Line)> Words(DocumentBlock.Picture picture) =>
        [.. Ink.Strong.Wrap(picture.Title, flow.Width).Select(l => (Ink.Strong, l)), .. Ink.Small.Wrap(picture.Description, flow.Width).Select(l => (Ink.Small, l))];

    private (float Scale, double Width, double Height) Scaled(DocumentBlock.Picture picture)
    {
        double scale = Math.Min(flow.Width / picture.Drawing.Width, TallestPicture / picture.Drawing.Height);
        return ((float)scale, scale * picture.Drawing.Width, scale * picture.Drawing.Height);
    }

    private void Row(SKCanvas canvas, double y, DocumentPhoto[] row)
    {
        double tallest = row.Max(p => Size(p).Height);
        for (int i = 0; i < row.Length; i++)
        {
            double x = PageFlow.Left + (i * (PhotoWidth + Gutter));
            (double width, double height) = Size(row[i]);
            // The bytes of a JPEG go into the PDF as they are.
            using SKData data = SKData.CreateCopy(row[i].Jpeg.Span);
            using SKImage? image = SKImage.FromEncodedData(data);
            if (image is not null)
                canvas.DrawImage(image, new SKRect((float)x, (float)y, (float)(x + width), (float)(y + height)), new SKSamplingOptions(SKFilterMode.Linear));
            IReadOnlyList<string> lines = Ink.Small.Wrap(row[i].Caption, PhotoWidth);
            for (int line = 0; line < lines.Count; line++)
                Ink.Small.Draw(canvas, lines[line], x, y + tallest + BelowPhoto + (line * Ink.Small.Leading));
        }
    }

    private (double Width, double Height) Size(DocumentPhoto photo)
    {
        double scale = Math.Min(PhotoWidth / photo.Width, TallestPhoto / photo.Height);
        return (scale * photo.Width, scale * photo.Height);
    }

    private double RowHeight(DocumentPhoto[] row) =>
        row.Max(p => Size(p).Height) + BelowPhoto + row.Max(p => Ink.Small.Wrap(p.Caption, PhotoWidth).Count * Ink.Small.Leading) + BelowRow;
}
