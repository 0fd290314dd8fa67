using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>The pixels of a photo as displayed: rows from the top, four bytes R, G, B, A to the pixel, no padding; A is ignored.</summary>
public sealed record PhotoRaster
{
    /// <exception cref="ArgumentException">The bytes are not 4·width·height.</exception>
    public PhotoRaster(PhotoSize size, byte[] rgba)
    {
        ArgumentNullException.ThrowIfNull(rgba);
        if (size.Width < 1 || size.Height < 1 || rgba.LongLength != 4L * size.Width * size.Height)
            throw new ArgumentException($"{size.Width} × {size.Height} pixels need {4L * size.Width * size.Height} bytes, not {rgba.LongLength}.", nameof(rgba));
        (Size, Rgba) = (size, rgba);
    }

    public PhotoSize Size { get; }

    public byte[] Rgba { get; }
}
