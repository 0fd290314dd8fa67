namespace MarkReader.Imaging.Photos;

/// <summary>The file formats that are taken.</summary>
public enum PhotoFormat
{
    Jpeg,
    Png,
    WebP,
}

/// <summary>What the header says, before any pixel is decoded.</summary>
/// <param name="StoredWidth">Width as stored, before EXIF orientation, px.</param>
/// <param name="StoredHeight">Height as stored, px.</param>
/// <param name="Exif">What EXIF says of the lens, and how the picture is turned for display.</param>
public sealed record PhotoHeader(PhotoFormat Format, int StoredWidth, int StoredHeight, PhotoExif Exif)
{
    /// <summary>Whether the file says that it has an alpha channel.</summary>
    public bool HasAlpha { get; init; }
}
