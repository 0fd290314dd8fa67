using MarkReader.Quantities;

namespace MarkReader.Imaging.Fiducials;

/// <summary>The scale of a reduced copy. The one place of the half-pixel convention: pixel centres stand at integers, so full = (small + ½)/s − ½.</summary>
internal readonly record struct PixelScale(double Factor)
{
    public PixelPoint ToFull(double x, double y) => new(((x + 0.5) / Factor) - 0.5, ((y + 0.5) / Factor) - 0.5);

    public PixelPoint ToReduced(PixelPoint full) => new(((full.X + 0.5) * Factor) - 0.5, ((full.Y + 0.5) * Factor) - 0.5);
}
