using System.Runtime.InteropServices;
using MarkReader.Rendering.Exposure;
using MarkReader.Rendering.Specs;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Scenes.Output;

/// <summary>Linear light to the bytes of a photo file: sRGB, stored turned by the EXIF orientation.</summary>
internal static class PhotoEncoder
{
    public static byte[] Encode(LinearImage image, OutputSpec spec, double tone) => (spec.Format, spec.Grey, spec.Alpha) switch
    {
        (PhotoFormat.Png16, true, _) => Write<L16>(image, spec, new(tone), (r, g, b) => new(Luma16(r, g, b))),
        (PhotoFormat.Png16, _, true) => Write<Rgba64>(image, spec, new(tone), (r, g, b) => new(r, g, b, ushort.MaxValue)),
        (PhotoFormat.Png16, _, _) => Write<Rgb48>(image, spec, new(tone), (r, g, b) => new(r, g, b)),
        (PhotoFormat.CmykJpeg, true, _) => Write<Rgb24>(image, spec, new(tone), (r, g, b) => new(ToneCurve.ToByte(Luma16(r, g, b)), ToneCurve.ToByte(Luma16(r, g, b)), ToneCurve.ToByte(Luma16(r, g, b)))),
        (_, true, _) => Write<L8>(image, spec, new(tone), (r, g, b) => new(ToneCurve.ToByte(Luma16(r, g, b)))),
        (PhotoFormat.Png, _, true) => Write<Rgba32>(image, spec, new(tone), (r, g, b) => new(ToneCurve.ToByte(r), ToneCurve.ToByte(g), ToneCurve.ToByte(b), byte.MaxValue)),
        _ => Write<Rgb24>(image, spec, new(tone), (r, g, b) => new(ToneCurve.ToByte(r), ToneCurve.ToByte(g), ToneCurve.ToByte(b))),
    };

    private static byte[] Write<TPixel>(LinearImage image, OutputSpec spec, ToneCurve tone, Func<ushort, ushort, ushort, TPixel> convert)
        where TPixel : unmanaged, IPixel<TPixel>
    {
        (int w, int h) = (image.Width, image.Height);
        bool swaps = spec.Orientation >= 5;
        (int sw, int sh) = swaps ? (h, w) : (w, h);
        TPixel[] pixels = new TPixel[w * h];
        Parallel.For(0, sh, sy =>
        {
            for (int sx = 0; sx < sw; sx++)
            {
                (int x, int y) = Displayed(spec.Orientation, sx, sy, w, h);
                if (spec.Mirrored)
                    x = w - 1 - x;
                int at = (y * w) + x;
                pixels[(sy * sw) + sx] = convert(tone.At(image.Planes[0][at]), tone.At(image.Planes[1][at]), tone.At(image.Planes[2][at]));
            }
        });
        using Image<TPixel> picture = Image.LoadPixelData(pixels, sw, sh);
        if (spec.Orientation != 1 || spec.Lens is not null)
            picture.Metadata.ExifProfile = Exif(spec);

        using MemoryStream stream = new();
        switch (spec.Format)
        {
            case PhotoFormat.Jpeg:
                picture.Save(stream, new JpegEncoder { Quality = spec.Quality, ColorType = spec.Grey ? JpegColorType.Luminance : JpegColorType.YCbCrRatio420 });
                break;
            case PhotoFormat.CmykJpeg:
                return CmykJpeg.Write(MemoryMarshal.Cast<TPixel, Rgb24>(pixels), sw, spec.Quality, picture.Metadata.ExifProfile is { } exif ? [.. "Exif\0\0"u8, .. exif.ToByteArray()!] : null);
            case PhotoFormat.WebP or PhotoFormat.WebPLossless:
                picture.Save(stream, new WebpEncoder { FileFormat = spec.Format == PhotoFormat.WebP ? WebpFileFormatType.Lossy : WebpFileFormatType.Lossless, Quality = spec.Quality });
                break;
            default:
                picture.Save(stream, new PngEncoder { BitDepth = spec.Format == PhotoFormat.Png16 ? PngBitDepth.Bit16 : PngBitDepth.Bit8, ColorType = PngColour(spec) });
                break;
        }

        return stream.ToArray();
    }

    private static ExifProfile Exif(OutputSpec spec)
    {
        ExifProfile exif = new();
        exif.SetValue(ExifTag.Orientation, (ushort)spec.Orientation);
        if (spec.Lens is { } lens)
        {
            exif.SetValue(ExifTag.Model, lens.Model);
            exif.SetValue(ExifTag.FocalLength, new Rational((uint)Math.Round(100 * lens.FocalLength), 100));
            exif.SetValue(ExifTag.FocalLengthIn35mmFilm, (ushort)lens.FocalLength35);
        }

        return exif;
    }

    /// <summary>Which displayed pixel is stored at (sx, sy), by EXIF orientation (CIPA DC-008, 4.6.4, tag 274); w and h as displayed.</summary>
    private static (int X, int Y) Displayed(int orientation, int sx, int sy, int w, int h) => orientation switch
    {
        1 => (sx, sy),
        2 => (w - 1 - sx, sy),
        3 => (w - 1 - sx, h - 1 - sy),
        4 => (sx, h - 1 - sy),
        5 => (sy, sx),
        6 => (w - 1 - sy, sx),
        7 => (w - 1 - sy, h - 1 - sx),
        8 => (sy, h - 1 - sx),
        _ => throw new ArgumentOutOfRangeException(nameof(orientation), orientation, "EXIF orientations run from 1 to 8."),
    };

    private static PngColorType PngColour(OutputSpec spec) =>
        spec.Grey ? PngColorType.Grayscale : spec.Alpha ? PngColorType.RgbWithAlpha : PngColorType.Rgb;

    private static ushort Luma16(ushort r, ushort g, ushort b) => (ushort)((0.299 * r) + (0.587 * g) + (0.114 * b) + 0.5);
}
