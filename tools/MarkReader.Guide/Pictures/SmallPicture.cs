using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;
using SixLabors.ImageSharp.Processing.Processors.Quantization;

namespace MarkReader.Guide.Pictures;

/// <summary>A picture with few colours, so that the repository and the page stay small.</summary>
internal sealed record SmallPicture(byte[] Png, int Width, int Height)
{
    public const int MostBytes = 60_000;

    private static readonly int[] s_colours = [128, 64, 32];
    private static readonly double[] s_scales = [1, 0.8, 0.67];

    /// <summary>The first of sizes and counts of colours that is small enough.</summary>
    public static SmallPicture Of(byte[] png)
    {
        using Image<Rgb24> whole = Image.Load<Rgb24>(png);
        SmallPicture? small = null;
        foreach (double scale in s_scales)
        {
            using Image<Rgb24> image = whole.Clone(i => i.Resize((int)Math.Round(scale * whole.Width), 0));
            foreach (int colours in s_colours)
            {
                small = Write(image, colours);
                if (small.Png.Length <= MostBytes)
                    return small;
            }
        }

        return small!;
    }

    // Scattered dots in place of missing colours would be larger than the colours.
    private static SmallPicture Write(Image<Rgb24> image, int colours)
    {
        using MemoryStream png = new();
        image.SaveAsPng(png, new()
        {
            ColorType = PngColorType.Palette,
            CompressionLevel = PngCompressionLevel.BestCompression,
            Quantizer = new WuQuantizer(new QuantizerOptions { MaxColors = colours, Dither = null }),
        });
        return new(png.ToArray(), image.Width, image.Height);
    }
}
