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
/// <param name="FocalLength35">Focal length as 35 mm equivalent, mm, from EXIF; null when it is not given.</param>
public sealed record PhotoHeader(PhotoFormat Format, int StoredWidth, int StoredHeight, int? FocalLength35)
{
    /// <summary>Whether the file says that it has an alpha channel.</summary>
    public bool HasAlpha { get; init; }

    /// <summary>EXIF orientation of PNG and WebP, 1 to 8; for JPEG, which has no alpha, the decoder reads it itself.</summary>
    public int Orientation { get; init; } = 1;
}
