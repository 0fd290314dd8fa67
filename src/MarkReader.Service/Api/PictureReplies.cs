using MarkReader.Drawing.Pictures;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;

namespace MarkReader.Service.Api;

/// <summary>A picture as the file that is asked for by its name: NAME.svg or NAME.png.</summary>
internal static class PictureReplies
{
    // Pixels to the picture's unit, for print.
    private const double Fineness = 3;

    /// <summary>The picture's name; null when the file is neither an SVG nor a PNG.</summary>
    public static string? Name(string file) => IsSvg(file) || file.EndsWith(".png", StringComparison.Ordinal) ? file[..^4] : null;

    public static FileContentHttpResult Of(IPicture picture, string file, EntityTagHeaderValue? tag = null) => IsSvg(file)
        ? TypedResults.File(PictureFile.Svg(picture), "image/svg+xml", entityTag: tag)
        : TypedResults.File(PictureFile.Png(picture, Fineness), "image/png", entityTag: tag);

    private static bool IsSvg(string file) => file.EndsWith(".svg", StringComparison.Ordinal);
}
