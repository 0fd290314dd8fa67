using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Output;

/// <summary>Names of photo files.</summary>
public static class PhotoFiles
{
    public static string Extension(PhotoFormat format) => format switch
    {
        PhotoFormat.Jpeg or PhotoFormat.CmykJpeg => ".jpg",
        PhotoFormat.WebP or PhotoFormat.WebPLossless => ".webp",
        PhotoFormat.Png or PhotoFormat.Png16 => ".png",
        _ => throw new ArgumentOutOfRangeException(nameof(format), format, null),
    };
}
