using MarkReader.Application.Overlays;
using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>Where an overlay goes, checked before anything is measured.</summary>
internal sealed record OverlayOutput(string Path, OverlayFormat Format)
{
    /// <summary>Sets <paramref name="output"/> to null when no overlay is asked for; returns why the name does not do.</summary>
    public static Failure? Read(string? path, out OverlayOutput? output)
    {
        output = null;
        if (path is null)
            return null;
        if (!OverlayFormat.OfFile(path).TryGet(out OverlayFormat? format, out Failure? failure))
            return failure;
        output = new(path, format);
        return null;
    }

    /// <summary>Null when the file is written, else why not.</summary>
    public Failure? Write(OverlayScene scene, ReadOnlyMemory<byte> photo) =>
        OverlayFile.Draw(scene, Format, photo).TryGet(out OverlayFile? file, out Failure? failure) ? OutputFile.Write(Path, file.Bytes.Span) : failure;
}
