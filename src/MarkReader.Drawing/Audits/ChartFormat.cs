using MarkReader.Drawing.Texts;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Audits;

/// <summary>What the picture of an audit is written as.</summary>
public sealed record ChartFormat
{
    private ChartFormat(string extension) => Extension = extension;

    /// <summary>The ending of the file's name, with its dot, lower case.</summary>
    public string Extension { get; }

    public static ChartFormat Svg { get; } = new(".svg");

    /// <summary>Two pixels to the SVG's unit, for print.</summary>
    public static ChartFormat Png { get; } = new(".png");

    public static IReadOnlyList<ChartFormat> All { get; } = [Svg, Png];

    /// <summary>The format that a file's name asks for by its ending.</summary>
    public static Outcome<ChartFormat> OfFile(string fileName)
    {
        string extension = Path.GetExtension(fileName);
        ChartFormat? format = All.FirstOrDefault(f => string.Equals(f.Extension, extension, StringComparison.OrdinalIgnoreCase));
        return format is not null
            ? format
            : new Failure(DrawingFailures.ChartFormatUnknown, DrawingTexts.Word("chartFormat.plotCannotBeWrittenAs", Path.GetFileName(fileName)), DrawingTexts.Get("chartFormat.nameFileSvgOrPng"));
    }
}
