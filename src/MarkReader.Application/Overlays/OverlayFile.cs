using MarkReader.Drawing.Overlays;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Application.Overlays;

/// <summary>The bytes of an overlay and their format.</summary>
public sealed record OverlayFile(ReadOnlyMemory<byte> Bytes, OverlayFormat Format)
{
    /// <summary>Draws a scene; an SVG is the drawing alone, the others hold the photo, decoded again in colour.</summary>
    /// <param name="photo">The bytes of the photo that the scene was measured in.</param>
    public static Outcome<OverlayFile> Draw(OverlayScene scene, OverlayFormat format, ReadOnlyMemory<byte> photo, OverlayView view = OverlayView.Photo)
    {
        OverlayDrawing drawing = OverlayComposer.Compose(scene, view);
        if (format == OverlayFormat.Svg)
            return new OverlayFile(SvgOverlay.Write(drawing), format);
        return PhotoDecoder.DecodeColour(photo).TryGet(out ColourPhoto? colour, out Failure? failure)
            ? new OverlayFile(RasterOverlay.Write(drawing, format, new(colour.Size, colour.Rgba)), format)
            : failure;
    }
}
