using MarkReader.Drawing.Texts;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>What an overlay is written as.</summary>
public sealed record OverlayFormat
{
    private OverlayFormat(string mediaType, params string[] extensions) => (MediaType, Extensions) = (mediaType, extensions);

    public string MediaType { get; }

    /// <summary>The endings of file names, with their dot, lower case.</summary>
    public IReadOnlyList<string> Extensions { get; }

    /// <summary>The drawing alone, to be laid over the photo.</summary>
    public static OverlayFormat Svg { get; } = new("image/svg+xml", ".svg");

    /// <summary>The photo with the drawing.</summary>
    public static OverlayFormat Png { get; } = new("image/png", ".png");

    /// <summary>The photo with the drawing.</summary>
    public static OverlayFormat Jpeg { get; } = new("image/jpeg", ".jpg", ".jpeg");

    public static IReadOnlyList<OverlayFormat> All { get; } = [Svg, Png, Jpeg];

    /// <summary>The format that a file's name asks for by its ending.</summary>
    public static Outcome<OverlayFormat> OfFile(string fileName)
    {
        string extension = Path.GetExtension(fileName);
        OverlayFormat? format = All.FirstOrDefault(f => f.Extensions.Contains(extension, StringComparer.OrdinalIgnoreCase));
        return format is not null
            ? format
            : new Failure(DrawingFailures.OverlayFormatUnknown, DrawingTexts.Word("overlayFormat.overlayCannotBeWrittenAs", Path.GetFileName(fileName)), DrawingTexts.Get("overlayFormat.nameFilePngJpgOr"));
    }
}
