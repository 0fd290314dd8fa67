using MarkReader.Drawing.Photos;
using MarkReader.Quantities;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Drawing.Tests.Photos;

public sealed class JpegPhotoTests
{
    // Blocks of 16 px in a row: all colours survive the halved colour resolution.
    private static readonly PhotoSize s_size = new(64, 33);
    private static readonly (byte R, byte G, byte B)[] s_colours = [(200, 40, 30), (30, 180, 60), (40, 50, 210), (128, 128, 128)];

    private static byte[] Pixels() => [.. Enumerable.Range(0, s_size.Width * s_size.Height).Select(i => s_colours[i % s_size.Width / 16]).SelectMany<(byte R, byte G, byte B), byte>(c => [c.R, c.G, c.B])];

    /// <summary>Read back by ImageSharp, a decoder of its own.</summary>
    [Fact]
    public void Another_decoder_sees_the_same_picture()
    {
        byte[] photo = JpegPhoto.Write(s_size, Pixels());
        Assert.Equal("JPEG", Image.DetectFormat(photo).Name);
        using Image<Rgb24> image = Image.Load<Rgb24>(photo);
        Assert.Equal((64, 33), (image.Width, image.Height));
        for (int block = 0; block < 4; block++)
        {
            foreach (int y in (int[])[0, 16, 32])
            {
                Rgb24 seen = image[(16 * block) + 8, y];
                Assert.Equal(s_colours[block].R, seen.R, 6.0);
                Assert.Equal(s_colours[block].G, seen.G, 6.0);
                Assert.Equal(s_colours[block].B, seen.B, 6.0);
            }
        }
    }

    [Fact]
    public void A_lower_quality_makes_a_smaller_file() =>
        Assert.True(JpegPhoto.Write(s_size, Pixels(), 30).Length < JpegPhoto.Write(s_size, Pixels(), 98).Length);

    [Fact]
    public void Bytes_that_do_not_fill_the_picture_are_a_fault_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => JpegPhoto.Write(s_size, new byte[(3 * 64 * 33) - 1]));
        Assert.Throws<ArgumentException>(() => JpegPhoto.Write(new(0, 0), []));
        Assert.Throws<ArgumentException>(() => JpegPhoto.Write(new(70000, 1), new byte[210000]));
        Assert.Throws<ArgumentOutOfRangeException>(() => JpegPhoto.Write(s_size, Pixels(), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => JpegPhoto.Write(s_size, Pixels(), 101));
    }
}
