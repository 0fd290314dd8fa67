using BitMiracle.LibJpeg.Classic;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Scenes.Output;

/// <summary>JPEG of four inks with Adobe's marker, which says that values are stored inverted (255 = no ink), as printing programs write it.</summary>
internal static class CmykJpeg
{
    /// <param name="pixels">Rows from the top.</param>
    /// <param name="quality">1 to 100.</param>
    /// <param name="exif">An EXIF block with its "Exif" head, or null.</param>
    public static byte[] Write(ReadOnlySpan<Rgb24> pixels, int width, int quality, byte[]? exif)
    {
        const int App1 = 0xE1;
        int height = pixels.Length / width;
        using MemoryStream stream = new();
        jpeg_compress_struct jpeg = new()
        {
            Image_width = width,
            Image_height = height,
            Input_components = 4,
            In_color_space = J_COLOR_SPACE.JCS_CMYK,
        };
        jpeg.jpeg_set_defaults();
        jpeg.jpeg_set_quality(quality, true);
        jpeg.Write_Adobe_marker = true;
        jpeg.jpeg_stdio_dest(stream);
        jpeg.jpeg_start_compress(true);
        if (exif is not null)
            jpeg.jpeg_write_marker(App1, exif);
        byte[][] line = [new byte[4 * width]];
        for (int y = 0; y < height; y++)
        {
            Separate(pixels.Slice(y * width, width), line[0]);
            jpeg.jpeg_write_scanlines(line, 1);
        }

        jpeg.jpeg_finish_compress();
        return stream.ToArray();
    }

    /// <summary>All the darkness that the three colours share goes into black; colour = paper left by its ink times paper left by black.</summary>
    private static void Separate(ReadOnlySpan<Rgb24> line, byte[] inks)
    {
        for (int x = 0; x < line.Length; x++)
        {
            Rgb24 p = line[x];
            int black = Math.Max(p.R, Math.Max(p.G, p.B));
            byte Ink(byte value) => black == 0 ? byte.MaxValue : (byte)(((value * 255) + (black / 2)) / black);
            (inks[4 * x], inks[(4 * x) + 1], inks[(4 * x) + 2], inks[(4 * x) + 3]) = (Ink(p.R), Ink(p.G), Ink(p.B), (byte)black);
        }
    }
}
