namespace MarkReader.Imaging.Photos;

/// <summary>Bounds on what is decoded; a header is checked against them before any pixel is.</summary>
public static class PhotoLimits
{
    /// <summary>Largest file, bytes.</summary>
    public const int MaxBytes = 40 * 1024 * 1024;

    /// <summary>Largest area, pixels: 64 million covers the full resolution of common phones and needs 64 MB as grey.</summary>
    public const long MaxPixels = 64_000_000;

    /// <summary>Largest area of a picture with an alpha channel, pixels: its four channels of up to 16 bits need 256 MB.</summary>
    public const long MaxPixelsWithAlpha = 32_000_000;

    /// <summary>Longest side, pixels.</summary>
    public const int MaxSide = 16_384;

    /// <summary>Shortest side, pixels: a card needs some 250 px to be read.</summary>
    public const int MinSide = 200;
}
