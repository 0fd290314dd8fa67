using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Rendering.Specs;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;
using PhotoFormat = MarkReader.Rendering.Specs.PhotoFormat;

namespace MarkReader.Imaging.Tests.Photos;

/// <summary>Each way of storing a photo gives the same brightness.</summary>
public sealed class PhotoFormatsTests
{
    private static readonly SceneSpec s_spec = Support.Scenes.Small(31) with { Camera = new(400, 300, 330), Pose = new(4.6, 12, 40, 7) };

    [Theory]
    [InlineData(PhotoFormat.Png, false, 0, 0)]
    [InlineData(PhotoFormat.Png, true, 0, 1)]
    [InlineData(PhotoFormat.Png16, false, 0, 1)]
    [InlineData(PhotoFormat.Png16, true, 0, 1)]
    [InlineData(PhotoFormat.WebPLossless, false, 0, 1)]
    [InlineData(PhotoFormat.WebP, false, 0, 4)]
    [InlineData(PhotoFormat.Jpeg, false, 0, 4)]
    [InlineData(PhotoFormat.Jpeg, true, 0, 4)]
    [InlineData(PhotoFormat.CmykJpeg, false, 0, 4)]
    [InlineData(PhotoFormat.CmykJpeg, true, 0, 4)]
    [InlineData(PhotoFormat.CmykJpeg, false, 6, 4)]
    public void A_scene_is_as_bright_in_every_format_as_in_a_png(PhotoFormat format, bool grey, int orientation, double allowed)
    {
        byte[,] expected = Grey(Photo(new(PhotoFormat.Png)));
        byte[,] found = Grey(Photo(new(format, Grey: grey, Orientation: Math.Max(1, orientation))));
        AssertAlike(expected, found, allowed);
    }

    [Theory]
    [InlineData(PhotoFormat.Png)]
    [InlineData(PhotoFormat.Png16)]
    public void An_opaque_alpha_channel_changes_nothing(PhotoFormat format) =>
        AssertAlike(Grey(Photo(new(format))), Grey(Photo(new(format, Alpha: true))), 0);

    [Fact]
    public void The_colours_of_a_cmyk_jpeg_are_those_of_the_scene()
    {
        ColourPhoto plain = PhotoDecoder.DecodeColour(Photo(new(PhotoFormat.Png))).ValueOrThrow();
        ColourPhoto inks = PhotoDecoder.DecodeColour(Photo(new(PhotoFormat.CmykJpeg))).ValueOrThrow();
        Assert.Equal(plain.Size, inks.Size);
        for (int channel = 0; channel < 3; channel++)
            Assert.InRange(Enumerable.Range(0, plain.Rgba.Length / 4).Average(i => Math.Abs(plain.Rgba[(4 * i) + channel] - inks.Rgba[(4 * i) + channel])), 0, 5);
    }

    /// <summary>Written by another program: Pillow 9.4, Image.new("CMYK", …) saved as JPEG; left half without ink, right half 80 % black.</summary>
    [Fact]
    public void A_cmyk_jpeg_of_another_program_is_not_inverted()
    {
        byte[,] grey = Grey(File.ReadAllBytes(Path.Combine(Repository.Root, "tests", "MarkReader.Imaging.Tests", "Photos", "cmyk-pillow.jpg")));
        Assert.InRange(grey[120, 60], 250, 255);
        Assert.InRange(grey[120, 260], 48, 54);
    }

    [Theory]
    [InlineData(PngBitDepth.Bit8)]
    [InlineData(PngBitDepth.Bit4)]
    public void A_palette_png_shows_its_colours(PngBitDepth depth)
    {
        using Image<Rgb24> image = new(320, 240, new Rgb24(40, 40, 40));
        Fill(image, 160, new Rgb24(200, 200, 200));
        byte[,] grey = Grey(Save(image, new PngEncoder { ColorType = PngColorType.Palette, BitDepth = depth }));
        Assert.Equal((40, 200), (grey[120, 40], grey[120, 280]));
    }

    public static TheoryData<string> Transparent => ["png", "png16", "palette", "webp", "webp-lossy"];

    /// <summary>0.4 of black over white is 153; the hidden colour of a transparent place is not seen.</summary>
    [Theory]
    [MemberData(nameof(Transparent))]
    public void Transparent_places_are_seen_on_white(string format)
    {
        using Image<Rgba32> image = new(320, 240, new Rgba32(80, 80, 80, 255));
        Fill(image, 100, new Rgba32(0, 0, 0, 102));
        Fill(image, 200, new Rgba32(0, 0, 0, 0));
        byte[] bytes = Encode(format, image);
        byte[,] grey = Grey(bytes);
        Assert.InRange(grey[120, 40], 78, 82);
        Assert.InRange(grey[120, 150], 151, 155);
        Assert.Equal(255, grey[120, 280]);
        ColourPhoto colour = PhotoDecoder.DecodeColour(bytes).ValueOrThrow();
        Assert.Equal(4 * 320 * 240, colour.Rgba.Length);
        Assert.InRange(colour.Rgba[4 * ((120 * 320) + 150)], 151, 155);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void A_picture_with_transparent_places_is_turned_as_one_without(ushort orientation)
    {
        using Image<Rgba32> image = new(320, 240);
        image.ProcessPixelRows(rows =>
        {
            for (int y = 0; y < 240; y++)
            {
                for (int x = 0; x < 320; x++)
                    rows.GetRowSpan(y)[x] = new((byte)(x / 2), (byte)(x / 2), (byte)y, 255);
            }
        });
        image.Metadata.ExifProfile = new ExifProfile();
        image.Metadata.ExifProfile.SetValue(ExifTag.Orientation, orientation);
        byte[,] opaque = Grey(Encode("png", image));
        image[160, 120] = new(0, 0, 0, 200);
        byte[,] transparent = Grey(Encode("png", image));
        // The two ways of decoding round grey differently, by less than one level.
        AssertAlike(opaque, transparent, 0.6);
    }

    [Fact]
    public void The_marks_of_a_cmyk_jpeg_are_measured()
    {
        SceneSpec spec = Support.Scenes.Small(32) with { Output = new(PhotoFormat.CmykJpeg) };
        PhotoMeasurement measured = PhotoMeasurer.Measure(spec.Photo()).ValueOrThrow();
        Assert.All(Truth.Errors(spec.Marks(), measured.Marks), e => Assert.InRange(e, 0, 0.03));
    }

    private static byte[] Photo(OutputSpec output) => (s_spec with { Output = output }).Photo();

    private static byte[,] Grey(byte[] bytes)
    {
        PhotoHeader header = PhotoHeaderReader.Read(bytes).ValueOrThrow();
        using GreyPhoto photo = PhotoDecoder.DecodeGrey(bytes, header).ValueOrThrow();
        byte[,] grey = new byte[photo.Size.Height, photo.Size.Width];
        for (int y = 0; y < photo.Size.Height; y++)
        {
            for (int x = 0; x < photo.Size.Width; x++)
                grey[y, x] = photo.Pixels.At<byte>(y, x);
        }

        return grey;
    }

    /// <summary>Equal sizes, and a mean difference of at most so many of 255 levels.</summary>
    private static void AssertAlike(byte[,] expected, byte[,] found, double allowed)
    {
        Assert.Equal((expected.GetLength(0), expected.GetLength(1)), (found.GetLength(0), found.GetLength(1)));
        Assert.InRange(expected.Cast<byte>().Zip(found.Cast<byte>(), (a, b) => Math.Abs(a - b)).Average(), 0, allowed);
    }

    private static byte[] Encode(string format, Image<Rgba32> image)
    {
        if (format.StartsWith("webp", StringComparison.Ordinal))
            return Save(image, new WebpEncoder { FileFormat = format == "webp" ? WebpFileFormatType.Lossless : WebpFileFormatType.Lossy, Quality = 100, TransparentColorMode = WebpTransparentColorMode.Preserve });
        if (format == "palette")
            return Save(image, new PngEncoder { ColorType = PngColorType.Palette, BitDepth = PngBitDepth.Bit8 });
        return Save(image, new PngEncoder { ColorType = PngColorType.RgbWithAlpha, BitDepth = format == "png16" ? PngBitDepth.Bit16 : PngBitDepth.Bit8, TransparentColorMode = PngTransparentColorMode.Preserve });
    }

    private static byte[] Save(Image image, SixLabors.ImageSharp.Formats.IImageEncoder encoder)
    {
        using MemoryStream stream = new();
        image.Save(stream, encoder);
        return stream.ToArray();
    }

    /// <summary>Fills the picture from a column to its right border.</summary>
    private static void Fill<TPixel>(Image<TPixel> image, int from, TPixel value)
        where TPixel : unmanaged, IPixel<TPixel> => image.ProcessPixelRows(rows =>
        {
            for (int y = 0; y < rows.Height; y++)
                rows.GetRowSpan(y)[from..].Fill(value);
        });
}
