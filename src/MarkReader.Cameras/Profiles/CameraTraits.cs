using MarkReader.Quantities;

namespace MarkReader.Cameras.Profiles;

/// <summary>By what a photo's camera and lens are told, without keeping its maker's or model's name.</summary>
/// <param name="Sensor">Size of the picture as the sensor gave it, before any turn for display.</param>
/// <param name="FocalLength">EXIF FocalLength, mm; null when it is not given.</param>
/// <param name="FocalLength35">EXIF FocalLengthIn35mmFilm, mm; null when it is not given.</param>
/// <param name="Zoom">EXIF DigitalZoomRatio; 1 for none or not given.</param>
/// <param name="ModelDigest">First 16 hexadecimal digits of the SHA-256 of EXIF's model name; null when it is not given.</param>
public sealed record CameraTraits(PhotoSize Sensor, double? FocalLength, int? FocalLength35, double Zoom, string? ModelDigest)
{
    /// <summary>Whether they tell a camera and lens from others.</summary>
    public bool Tell => ModelDigest is not null && FocalLength is not null;

    /// <summary>Whether both are of one lens of one camera, as far as both say.</summary>
    public bool SameLens(CameraTraits other) =>
        ModelDigest == other.ModelDigest && FocalLength35 == other.FocalLength35 && Near(FocalLength, other.FocalLength) && Math.Abs(Zoom - other.Zoom) < 0.005;

    /// <summary>Whether both are of one camera and one focal length, as they are when one of them was zoomed digitally.</summary>
    public bool SameOptics(CameraTraits other) => ModelDigest == other.ModelDigest && Near(FocalLength, other.FocalLength);

    private static bool Near(double? a, double? b) => a is null == b is null && (a is null || Math.Abs(a.Value - b!.Value) < 0.005);
}
