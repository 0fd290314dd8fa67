using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;

namespace MarkReader.Scenes.Tests.Output;

public class PhotoEncoderTests
{
    private static readonly SceneSpec s_spec = new("plain", 1)
    {
        Plain = true,
        Camera = new(240, 180, 300),
        Pose = new(3),
        Burns = [new(3, 5)],
        Sensor = new(FullWell: 0),
        Output = new(PhotoFormat.Png16, Grey: true),
    };

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void A_photo_turned_by_its_orientation_shows_the_upright_picture(int orientation)
    {
        using Image<L16> upright = Image.Load<L16>(Scene.Render(s_spec).Photo);
        using Image<L16> turned = Image.Load<L16>(Scene.Render(s_spec with { Output = s_spec.Output with { Orientation = orientation } }).Photo);
        Assert.Equal(orientation >= 5, turned.Width < turned.Height);
        turned.Mutate(i => i.AutoOrient());
        Assert.Equal((upright.Width, upright.Height), (turned.Width, turned.Height));
        int different = 0;
        for (int y = 0; y < upright.Height; y++)
        {
            for (int x = 0; x < upright.Width; x++)
                different += upright[x, y] == turned[x, y] ? 0 : 1;
        }

        Assert.Equal(0, different);
    }

    [Fact]
    public void A_mirrored_photo_is_flipped_left_to_right_and_its_truth_with_it()
    {
        Scene scene = Scene.Render(s_spec);
        Scene flipped = Scene.Render(s_spec with { Output = s_spec.Output with { Mirrored = true } });
        using Image<L16> plain = Image.Load<L16>(scene.Photo);
        using Image<L16> mirrored = Image.Load<L16>(flipped.Photo);
        mirrored.Mutate(i => i.Flip(FlipMode.Horizontal));
        int different = 0;
        for (int y = 0; y < plain.Height; y++)
        {
            for (int x = 0; x < plain.Width; x++)
                different += plain[x, y] == mirrored[x, y] ? 0 : 1;
        }

        Assert.Equal(0, different);
        Assert.Equal(239 - Assert.Single(scene.Truth.Marks).X, Assert.Single(flipped.Truth.Marks).X, 1e-9);
    }

    [Theory]
    [InlineData(PhotoFormat.Jpeg, false, "JPEG", 24)]
    [InlineData(PhotoFormat.Jpeg, true, "JPEG", 8)]
    [InlineData(PhotoFormat.Png, false, "PNG", 24)]
    [InlineData(PhotoFormat.Png, true, "PNG", 8)]
    [InlineData(PhotoFormat.Png16, false, "PNG", 48)]
    [InlineData(PhotoFormat.Png16, true, "PNG", 16)]
    [InlineData(PhotoFormat.WebP, false, "Webp", 24)]
    [InlineData(PhotoFormat.WebPLossless, false, "Webp", 32)]
    [InlineData(PhotoFormat.CmykJpeg, false, "JPEG", 32)]
    [InlineData(PhotoFormat.CmykJpeg, true, "JPEG", 32)]
    public void Each_format_is_written_as_it_says(PhotoFormat format, bool grey, string name, int bits)
    {
        byte[] photo = Scene.Render(s_spec with { Output = new(format, Grey: grey) }).Photo;
        IImageInfo info = Image.Identify(photo, out IImageFormat found);
        Assert.Equal(name, found.Name, ignoreCase: true);
        Assert.Equal(bits, info.PixelType.BitsPerPixel);
        Assert.Equal((240, 180), (info.Width, info.Height));
    }

    /// <summary>ImageSharp reads inverted inks as Adobe's marker says.</summary>
    [Fact]
    public void A_photo_of_four_inks_shows_the_same_picture()
    {
        using Image<Rgb24> plain = Image.Load<Rgb24>(Scene.Render(s_spec with { Output = new(PhotoFormat.Png) }).Photo);
        byte[] bytes = Scene.Render(s_spec with { Output = new(PhotoFormat.CmykJpeg, Quality: 95) }).Photo;
        using Image<Rgb24> inks = Image.Load<Rgb24>(bytes);
        Assert.True(bytes.AsSpan().IndexOf("Adobe"u8) > 0, "no marker of Adobe");
        Assert.Equal((plain.Width, plain.Height), (inks.Width, inks.Height));
        double difference = 0;
        for (int y = 0; y < plain.Height; y++)
        {
            for (int x = 0; x < plain.Width; x++)
                difference += Math.Abs(plain[x, y].R - inks[x, y].R) + Math.Abs(plain[x, y].G - inks[x, y].G) + Math.Abs(plain[x, y].B - inks[x, y].B);
        }

        Assert.InRange(difference / (3 * plain.Width * plain.Height), 0, 4);
    }

    [Fact]
    public void An_upright_photo_carries_no_exif()
    {
        using Image image = Image.Load(Scene.Render(s_spec).Photo);
        ExifProfile? exif = image.Metadata.ExifProfile;
        Assert.Null(exif);
    }
}
