using System.Buffers.Binary;
using System.IO.Hashing;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Imaging.Tests.Photos;

public sealed class PhotoHeaderReaderTests
{
    public static TheoryData<string> Formats => ["jpeg", "png", "webp"];

    [Theory]
    [MemberData(nameof(Formats))]
    public void Sizes_are_read_from_the_header_of_each_format(string format)
    {
        using Image<L8> image = Pictures.Gradient(321, 234);
        byte[] bytes = Encode(format, image);
        PhotoHeader header = PhotoHeaderReader.Read(bytes).ValueOrThrow();
        Assert.Equal((321, 234), (header.StoredWidth, header.StoredHeight));
        Assert.Equal(format, header.Format.ToString().ToLowerInvariant());
    }

    [Fact]
    public void An_empty_file_is_refused() => AssertRefused(PhotoFailures.Empty, []);

    [Fact]
    public void Text_is_refused() => AssertRefused(PhotoFailures.Format, "this is not a photo"u8.ToArray());

    [Fact]
    public void A_gif_is_refused_although_the_decoder_would_read_it()
    {
        using Image<L8> image = Pictures.Gradient(300, 300);
        AssertRefused(PhotoFailures.Format, Pictures.Gif(image));
    }

    [Fact]
    public void A_heic_file_is_refused_with_what_to_set_on_the_phone()
    {
        byte[] bytes = [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8];
        Failure failure = AssertRefused(PhotoFailures.Format, bytes);
        Assert.Contains("JPEG", failure.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void A_png_that_claims_30000_by_30000_pixels_is_refused_before_decoding() => AssertRefused(PhotoFailures.TooLarge, PngClaiming(30_000, 30_000));

    [Fact]
    public void A_png_of_one_line_too_long_is_refused() => AssertRefused(PhotoFailures.TooLarge, PngClaiming(PhotoLimits.MaxSide + 1, 300));

    [Fact]
    public void A_png_header_with_no_width_is_refused() => AssertRefused(PhotoFailures.Damaged, PngClaiming(0, 300));

    [Fact]
    public void A_thumbnail_is_refused()
    {
        using Image<L8> image = Pictures.Gradient(160, 120);
        AssertRefused(PhotoFailures.TooSmall, Pictures.Jpeg(image));
    }

    [Fact]
    public void A_file_over_the_limit_is_refused()
    {
        byte[] bytes = new byte[PhotoLimits.MaxBytes + 1];
        bytes[0] = 0xFF;
        AssertRefused(PhotoFailures.TooLarge, bytes);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_cut_file_of_any_length_gives_a_refusal_or_a_header_and_never_an_exception(string format)
    {
        using Image<L8> image = Pictures.Gradient(300, 300);
        byte[] bytes = Encode(format, image);
        for (int length = 0; length < Math.Min(bytes.Length, 600); length += 7)
            PhotoHeaderReader.Read(bytes.AsMemory(0, length)).TryGet(out _, out _);
    }

    private static byte[] Encode(string format, Image image) => format switch
    {
        "jpeg" => Pictures.Jpeg(image),
        "png" => Pictures.Png(image),
        _ => Pictures.WebP(image),
    };

    private static Failure AssertRefused(FailureCode code, byte[] bytes)
    {
        Assert.False(PhotoHeaderReader.Read(bytes).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code);
        return failure;
    }

    /// <summary>A PNG of a signature, a sound header chunk (ISO/IEC 15948, 11.2.2) and nothing else.</summary>
    private static byte[] PngClaiming(int width, int height)
    {
        byte[] chunk = [.. "IHDR"u8, 0, 0, 0, 0, 0, 0, 0, 0, 8, 0, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(chunk.AsSpan(4), width);
        BinaryPrimitives.WriteInt32BigEndian(chunk.AsSpan(8), height);
        byte[] crc = Crc32.Hash(chunk);
        Array.Reverse(crc);
        return [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13, .. chunk, .. crc];
    }
}
