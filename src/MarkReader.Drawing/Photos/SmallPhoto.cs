using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Photos;

/// <summary>A photo made small for a document: cut, scaled down, a ring round a place in it; nothing but its pixels is left.</summary>
/// <param name="Jpeg">The bytes of a JPEG file without EXIF.</param>
/// <param name="Size">Its size in px.</param>
/// <param name="IsCut">Whether it shows a part of the photo only.</param>
public sealed record SmallPhoto(byte[] Jpeg, PhotoSize Size, bool IsCut)
{
    /// <summary>Longest side, px.</summary>
    public const int LongestSide = 1600;

    /// <summary>Largest file, bytes; a picture that stays above it at the lowest quality is made smaller.</summary>
    public const int MostBytes = 250 * 1024;

    private static readonly int[] s_qualities = [85, 75, 65, 55];

    /// <param name="cut">The part to be shown: centre and half of its side, px; null for the whole photo. What lies outside the photo is left out.</param>
    /// <param name="ring">Centre and radius of the ring, px of the photo; null for none.</param>
    public static SmallPhoto Of(PhotoRaster photo, (PixelPoint Centre, double Half)? cut = null, (PixelPoint Centre, double Radius)? ring = null)
    {
        ArgumentNullException.ThrowIfNull(photo);
        SKRectI part = Part(photo.Size, cut);
        using SKBitmap shown = Bitmap(photo, part);
        using SKImage image = SKImage.FromBitmap(shown);
        // Ours is a pixel's centre, Skia's (0, 0) a corner.
        (double, double, double)? place = ring is { } r ? (r.Centre.X + 0.5 - part.Left, r.Centre.Y + 0.5 - part.Top, r.Radius) : null;
        for (int side = Math.Min(LongestSide, Math.Max(part.Width, part.Height)); ; side = side * 3 / 4)
        {
            using SKBitmap small = Scaled(image, Math.Min(1, side / (double)Math.Max(part.Width, part.Height)), place);
            using SKPixmap pixels = small.PeekPixels();
            foreach (int quality in s_qualities)
            {
                using SKData? data = pixels.Encode(new SKJpegEncoderOptions(quality, SKJpegEncoderDownsample.Downsample420, SKJpegEncoderAlphaOption.Ignore));
                if (data is { Size: <= MostBytes } || (data is not null && side <= 64))
                    return new(data.ToArray(), new(small.Width, small.Height), part.Width < photo.Size.Width || part.Height < photo.Size.Height);
            }
        }
    }

    private static SKRectI Part(PhotoSize size, (PixelPoint Centre, double Half)? cut)
    {
        SKRectI all = new(0, 0, size.Width, size.Height);
        if (cut is not { } c || !double.IsFinite(c.Half) || c.Half < 8)
            return all;
        double half = Math.Min(c.Half, 1e6), x = Math.Clamp(c.Centre.X, 0, size.Width), y = Math.Clamp(c.Centre.Y, 0, size.Height);
        SKRectI part = SKRectI.Intersect(all, new((int)(x - half), (int)(y - half), (int)(x + half), (int)(y + half)));
        return part.Width < 16 || part.Height < 16 ? all : part;
    }

    private static SKBitmap Bitmap(PhotoRaster photo, SKRectI part)
    {
        SKBitmap bitmap = new(new SKImageInfo(part.Width, part.Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        for (int y = 0; y < part.Height; y++)
            photo.Rgba.AsSpan(4 * (((part.Top + y) * photo.Size.Width) + part.Left), 4 * part.Width).CopyTo(bitmap.GetPixelSpan()[(y * bitmap.RowBytes)..]);
        bitmap.SetImmutable(); // an image of it then shares its pixels
        return bitmap;
    }

    private static SKBitmap Scaled(SKImage image, double scale, (double X, double Y, double Radius)? ring)
    {
        SKImageInfo info = new(Math.Max(1, (int)Math.Round(scale * image.Width)), Math.Max(1, (int)Math.Round(scale * image.Height)), SKColorType.Rgba8888, SKAlphaType.Opaque);
        SKBitmap small = new(info);
        using SKCanvas canvas = new(small);
        canvas.DrawImage(image, SKRect.Create(info.Width, info.Height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        if (ring is not { } r)
            return small;
        (float x, float y) = ((float)(scale * r.X), (float)(scale * r.Y));
        float radius = (float)Math.Max(scale * r.Radius, 10), width = Math.Max(2, Math.Max(info.Width, info.Height) / 240f);
        using SKPaint casing = Stroke(OverlayColours.Dark, 2 * width);
        using SKPaint core = Stroke(OverlayColours.Aim, width);
        canvas.DrawCircle(x, y, radius, casing);
        canvas.DrawCircle(x, y, radius, core);
        return small;
    }

    private static SKPaint Stroke(Colour colour, float width) => new() { Color = new(colour.R, colour.G, colour.B), IsStroke = true, StrokeWidth = width, IsAntialias = true };
}
