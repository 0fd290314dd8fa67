using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Photos;

/// <summary>A picture as the bytes of a JPEG file, as a phone stores it: 8 bits, colour at half the resolution, no EXIF.</summary>
public static class JpegPhoto
{
    /// <param name="size">Width and height in pixels.</param>
    /// <param name="rgb">sRGB, rows from the top, three bytes R, G, B to the pixel, no padding.</param>
    /// <param name="quality">1 to 100.</param>
    /// <exception cref="ArgumentException">The bytes are not 3·width·height, or a side is beyond JPEG's 65 535 pixels.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The quality is not between 1 and 100.</exception>
    public static byte[] Write(PhotoSize size, ReadOnlySpan<byte> rgb, int quality = 92)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quality, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(quality, 100);
        if (size.Width is < 1 or > ushort.MaxValue || size.Height is < 1 or > ushort.MaxValue || rgb.Length != 3L * size.Width * size.Height)
            throw new ArgumentException($"{size.Width} × {size.Height} pixels need {3L * size.Width * size.Height} bytes, not {rgb.Length}.", nameof(rgb));
        using SKBitmap bitmap = new(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        for (int row = 0; row < size.Height; row++)
            Widen(rgb.Slice(3 * row * size.Width, 3 * size.Width), bitmap.GetPixelSpan()[(row * bitmap.RowBytes)..]);
        using SKPixmap pixels = bitmap.PeekPixels();
        using SKData? data = pixels.Encode(new SKJpegEncoderOptions(quality, SKJpegEncoderDownsample.Downsample420, SKJpegEncoderAlphaOption.Ignore));
        return data?.ToArray() ?? throw new InvalidOperationException($"A picture of {size.Width} × {size.Height} pixels could not be encoded.");
    }

    private static void Widen(ReadOnlySpan<byte> rgb, Span<byte> rgba)
    {
        for (int from = 0, to = 0; from < rgb.Length; from += 3, to += 4)
        {
            rgb.Slice(from, 3).CopyTo(rgba[to..]);
            rgba[to + 3] = byte.MaxValue;
        }
    }
}
