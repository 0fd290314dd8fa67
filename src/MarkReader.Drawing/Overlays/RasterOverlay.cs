using MarkReader.Drawing.Fonts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Overlays;

/// <summary>The photo, or the frame of it that the overlay was drawn for, with the drawing on it.</summary>
public static class RasterOverlay
{
    private const int JpegQuality = 90;

    /// <exception cref="ArgumentException">The photo is not of the drawing's size.</exception>
    public static byte[] Write(OverlayDrawing drawing, OverlayFormat format, PhotoRaster photo)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(format);
        ArgumentNullException.ThrowIfNull(photo);
        if (photo.Size != drawing.Photo)
            throw new ArgumentException($"The drawing is for {drawing.Photo}, the photo has {photo.Size}.", nameof(photo));
        using SKBitmap bitmap = Cut(photo, drawing.Frame);
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Translate(0.5f - drawing.Frame.Left, 0.5f - drawing.Frame.Top); // Skia's (0, 0) is a corner, ours a pixel's centre
            foreach (OverlayPrimitive primitive in drawing.Primitives)
                Draw(canvas, primitive);
        }

        using SKData data = bitmap.Encode(format == OverlayFormat.Png ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg, JpegQuality);
        return data.ToArray();
    }

    private static SKBitmap Cut(PhotoRaster photo, PixelFrame frame)
    {
        SKBitmap bitmap = new(new SKImageInfo(frame.Width, frame.Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        Span<byte> pixels = bitmap.GetPixelSpan();
        for (int row = 0; row < frame.Height; row++)
        {
            int from = 4 * (((frame.Top + row) * photo.Size.Width) + frame.Left);
            photo.Rgba.AsSpan(from, 4 * frame.Width).CopyTo(pixels[(row * bitmap.RowBytes)..]);
        }

        return bitmap;
    }

    private static void Draw(SKCanvas canvas, OverlayPrimitive primitive)
    {
        switch (primitive)
        {
            case OverlayLine line:
                using (SKPath path = Path(line.Points, line.Closed))
                {
                    using SKPaint casing = Stroke(OverlayColours.Dark, line.Style.Width + (2 * line.Style.Casing), null);
                    canvas.DrawPath(path, casing);
                    using SKPathEffect? dash = line.Style.Dash is { } d ? SKPathEffect.CreateDash([(float)d.On, (float)d.Off], 0) : null;
                    using SKPaint core = Stroke(line.Style.Colour, line.Style.Width, dash);
                    canvas.DrawPath(path, core);
                }

                break;
            case OverlayArea area:
                using (SKPath path = Path(area.Points, closed: true))
                {
                    using SKPaint fill = new() { Color = Skia(area.Colour).WithAlpha((byte)Math.Round(255 * area.Opacity)), IsAntialias = true };
                    canvas.DrawPath(path, fill);
                }

                break;
            case OverlayText text:
                using (SKFont font = Faces.Font(text.Style.Bold ? Faces.Bold : Faces.Regular, text.Style.Size))
                {
                    (float x, float y) = ((float)text.Start.X, (float)text.Start.Y);
                    using SKPaint halo = Stroke(OverlayColours.Dark, 2 * text.Style.Halo, null);
                    canvas.DrawText(text.Text, x, y, SKTextAlign.Left, font, halo);
                    using SKPaint letters = new() { Color = Skia(text.Style.Colour), IsAntialias = true };
                    canvas.DrawText(text.Text, x, y, SKTextAlign.Left, font, letters);
                }

                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(primitive));
        }
    }

    private static SKPath Path(IReadOnlyList<PixelPoint> points, bool closed)
    {
        using SKPathBuilder builder = new();
        builder.AddPoly([.. points.Select(p => new SKPoint((float)p.X, (float)p.Y))], closed);
        return builder.Detach();
    }

    private static SKPaint Stroke(Colour colour, double width, SKPathEffect? dash) => new()
    {
        Color = Skia(colour),
        IsStroke = true,
        StrokeWidth = (float)width,
        StrokeJoin = SKStrokeJoin.Round,
        StrokeCap = dash is null ? SKStrokeCap.Round : SKStrokeCap.Butt,
        PathEffect = dash,
        IsAntialias = true,
    };

    private static SKColor Skia(Colour colour) => new(colour.R, colour.G, colour.B);
}
