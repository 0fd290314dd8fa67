using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Imaging.Tests.Support;

/// <summary>Plain pictures as real file bytes, written by a library other than the one that reads them.</summary>
internal static class Pictures
{
    public static Image<L8> Gradient(int width, int height)
    {
        Image<L8> image = new(width, height);
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
                image[x, y] = new L8((byte)(255 * (x + y) / (width + height)));
        }

        return image;
    }

    public static byte[] Jpeg(Image image) => Save(image, (i, s) => i.Save(s, new JpegEncoder { Quality = 92 }));

    public static byte[] Png(Image image) => Save(image, (i, s) => i.Save(s, new PngEncoder()));

    public static byte[] WebP(Image image) => Save(image, (i, s) => i.Save(s, new WebpEncoder { FileFormat = WebpFileFormatType.Lossless }));

    public static byte[] Gif(Image image) => Save(image, (i, s) => i.SaveAsGif(s));

    private static byte[] Save(Image image, Action<Image, Stream> write)
    {
        using MemoryStream stream = new();
        write(image, stream);
        return stream.ToArray();
    }
}
