using MarkReader.Application.Auditing;
using MarkReader.Drawing.Audits;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>Where the picture of an audit goes, checked before anything is measured.</summary>
internal sealed record PlotOutput(string Path, ChartFormat Format)
{
    /// <summary>Sets <paramref name="output"/> to null when no picture is asked for; returns why the name does not do.</summary>
    public static Failure? Read(string? path, out PlotOutput? output)
    {
        output = null;
        if (path is null)
            return null;
        if (!ChartFormat.OfFile(path).TryGet(out ChartFormat? format, out Failure? failure))
            return failure;
        output = new(path, format);
        return OutputFile.Check(path);
    }

    /// <summary>Null when the file is written, else why not.</summary>
    public Failure? Write(Audit audit) => OutputFile.Write(Path, AuditChartWriter.Write(AuditCharts.Of(audit), Format));

    /// <summary>The same for a picture, in print three pixels to its unit.</summary>
    public Failure? Write(IPicture picture) => OutputFile.Write(Path, Format == ChartFormat.Svg ? PictureFile.Svg(picture) : PictureFile.Png(picture, 3));
}
