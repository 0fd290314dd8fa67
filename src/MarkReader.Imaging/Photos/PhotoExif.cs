using System.Security.Cryptography;
using System.Text;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;

namespace MarkReader.Imaging.Photos;

/// <summary>What EXIF says of the lens; null or 1 where it says nothing (CIPA DC-008).</summary>
/// <param name="FocalLength">mm.</param>
/// <param name="FocalLength35">35 mm equivalent, mm.</param>
/// <param name="Zoom">Digital zoom.</param>
/// <param name="ModelDigest">First 16 hexadecimal digits of the SHA-256 of the model's name; the name is not kept.</param>
/// <param name="Orientation">1 to 8.</param>
public sealed record PhotoExif(double? FocalLength, int? FocalLength35, double Zoom, string? ModelDigest, int Orientation)
{
    public static PhotoExif None { get; } = new(null, null, 1, null, 1);

    internal static PhotoExif Of(IEnumerable<MetadataExtractor.Directory> directories)
    {
        ExifIfd0Directory? first = directories.OfType<ExifIfd0Directory>().FirstOrDefault();
        ExifSubIfdDirectory? exif = directories.OfType<ExifSubIfdDirectory>().FirstOrDefault();
        double? focal = exif is not null && exif.TryGetRational(ExifDirectoryBase.TagFocalLength, out Rational f) && f.ToDouble() is > 0.5 and < 2000 ? f.ToDouble() : null;
        int? focal35 = exif is not null && exif.TryGetInt32(ExifDirectoryBase.Tag35MMFilmEquivFocalLength, out int e) && e is >= 8 and <= 400 ? e : null;
        double zoom = exif is not null && exif.TryGetRational(ExifDirectoryBase.TagDigitalZoomRatio, out Rational z) && z.ToDouble() is > 1 and < 1000 ? z.ToDouble() : 1;
        string? model = first?.GetString(ExifDirectoryBase.TagModel)?.Trim('\0', ' ');
        int orientation = first is not null && first.TryGetInt32(ExifDirectoryBase.TagOrientation, out int o) && o is >= 1 and <= 8 ? o : 1;
        return new(focal, focal35, zoom, string.IsNullOrEmpty(model) ? null : Digest(model), orientation);
    }

    private static string Digest(string model) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(model)).AsSpan(0, 8));
}
