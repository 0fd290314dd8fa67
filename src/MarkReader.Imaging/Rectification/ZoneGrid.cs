using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>A square grid over the middle of the card: pixel (0, 0) is the upper left one, its centre half a pixel inside.</summary>
/// <param name="HalfSide">Half the covered side, mm.</param>
/// <param name="Size">Pixels on a side.</param>
internal sealed record ZoneGrid(double HalfSide, int Size)
{
    public double PixelsPerMm { get; } = Size / (2 * HalfSide);

    public CardPoint ToCard(double x, double y) => new(((x + 0.5) / PixelsPerMm) - HalfSide, HalfSide - ((y + 0.5) / PixelsPerMm));

    public (double X, double Y) ToPixel(CardPoint p) => (((p.U + HalfSide) * PixelsPerMm) - 0.5, ((HalfSide - p.V) * PixelsPerMm) - 0.5);

    /// <summary>The smallest divisor of the grid's size that is not below a factor.</summary>
    public int Divisor(int atLeast)
    {
        int divisor = Math.Clamp(atLeast, 1, Size);
        while (Size % divisor != 0)
            divisor++;
        return divisor;
    }
}
