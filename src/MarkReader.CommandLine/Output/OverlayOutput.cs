using MarkReader.Application.Overlays;
using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>Where an overlay goes, checked before anything is measured.</summary>
internal sealed record OverlayOutput(string Path, OverlayFormat Format)
{
    /// <summary>Sets <paramref name="output"/> to null when no overlay is asked for; returns why the name does not do.</summary>
    /// <param name="photos">The photos of the call, which an overlay must not replace.</param>
    public static Failure? Read(string? path, IEnumerable<string?> photos, out OverlayOutput? output)
    {
        output = null;
        if (path is null)
            return null;
        if (!OverlayFormat.OfFile(path).TryGet(out OverlayFormat? format, out Failure? failure))
            return failure;
        if (photos.Any(p => !string.IsNullOrEmpty(p) && System.IO.Path.GetFullPath(p) == System.IO.Path.GetFullPath(path)))
            return new(CommandLineFailures.OutputIsInput, OutputTexts.Word("overlayOutput.overlayPhotoItself", path), OutputTexts.Get("overlayOutput.nameAnotherFileSoThat"));
        output = new(path, format);
        return null;
    }

    /// <summary>Null when the file is written, else why not.</summary>
    public Failure? Write(OverlayScene scene, ReadOnlyMemory<byte> photo) =>
        OverlayFile.Draw(scene, Format, photo).TryGet(out OverlayFile? file, out Failure? failure) ? OutputFile.Write(Path, file.Bytes.Span) : failure;
}
