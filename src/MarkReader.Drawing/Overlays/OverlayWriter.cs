namespace MarkReader.Drawing.Overlays;

/// <summary>Writes a finished overlay.</summary>
public static class OverlayWriter
{
    /// <summary>The bytes of the file; an SVG is the drawing alone, the others are the photo's frame with the drawing on it.</summary>
    /// <param name="photo">The photo that the overlay was made for.</param>
    /// <exception cref="ArgumentException">The photo is not of the drawing's size.</exception>
    public static byte[] Write(OverlayDrawing drawing, OverlayFormat format, PhotoRaster photo)
    {
        ArgumentNullException.ThrowIfNull(format);
        return format == OverlayFormat.Svg ? SvgOverlay.Write(drawing) : RasterOverlay.Write(drawing, format, photo);
    }
}
