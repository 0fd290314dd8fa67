using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Imaging.Tests.Photos;

public sealed class PhotoDecoderTests
{
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.6)]
    [InlineData(0.98)]
    public void A_jpeg_cut_short_is_refused_as_truncated(double part)
    {
        using Image<L8> image = Pictures.Gradient(800, 600);
        byte[] bytes = Pictures.Jpeg(image);
        AssertRefused(PhotoFailures.Truncated, bytes[..(int)(part * bytes.Length)]);
    }

    [Fact]
    public void A_png_cut_short_is_refused_as_truncated()
    {
        using Image<L8> image = Pictures.Gradient(800, 600);
        byte[] bytes = Pictures.Png(image);
        AssertRefused(PhotoFailures.Truncated, bytes[..(bytes.Length / 2)]);
    }

    [Fact]
    public void A_webp_cut_short_is_refused_as_truncated()
    {
        using Image<L8> image = Pictures.Gradient(800, 600);
        byte[] bytes = Pictures.WebP(image);
        AssertRefused(PhotoFailures.Truncated, bytes[..(bytes.Length - 40)]);
    }

    [Theory]
    [InlineData(1, 640, 480)]
    [InlineData(3, 640, 480)]
    [InlineData(6, 480, 640)]
    [InlineData(8, 480, 640)]
    public void The_photo_is_turned_as_exif_says(ushort orientation, int width, int height)
    {
        using Image<L8> image = Pictures.Gradient(640, 480);
        image.Metadata.ExifProfile = new ExifProfile();
        image.Metadata.ExifProfile.SetValue(ExifTag.Orientation, orientation);
        byte[] bytes = Pictures.Jpeg(image);
        PhotoHeader header = PhotoHeaderReader.Read(bytes).ValueOrThrow();
        using GreyPhoto photo = PhotoDecoder.DecodeGrey(bytes, header).ValueOrThrow();
        Assert.Equal(new PhotoSize(width, height), photo.Size);
        // The gradient is dark at the stored upper left; orientation 3 puts it lower right, 6 upper right, 8 lower left.
        (int x, int y) = orientation switch { 1 => (3, 3), 3 => (width - 4, height - 4), 6 => (width - 4, 3), _ => (3, height - 4) };
        Assert.InRange(photo.Pixels.At<byte>(y, x), 0, 12);
    }

    [Fact]
    public void Colour_pixels_come_in_the_order_red_green_blue()
    {
        using Image<Rgb24> image = new(320, 240, new Rgb24(200, 100, 30));
        ColourPhoto photo = PhotoDecoder.DecodeColour(Pictures.Png(image)).ValueOrThrow();
        Assert.Equal(320 * 240 * 4, photo.Rgba.Length);
        Assert.Equal([200, 100, 30, 255], photo.Rgba[..4]);
    }

    private static void AssertRefused(FailureCode code, byte[] bytes)
    {
        if (PhotoHeaderReader.Read(bytes).TryGet(out PhotoHeader? header, out Failure? failure))
        {
            Assert.False(PhotoDecoder.DecodeGrey(bytes, header).TryGet(out GreyPhoto? photo, out failure));
            Assert.Null(photo);
        }

        Assert.Equal(code, failure.Code);
    }
}
