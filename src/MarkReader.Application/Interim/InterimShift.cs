using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>One mark before and now.</summary>
/// <param name="Before">With the uncertainty that was stated for it.</param>
public sealed record InterimShift(MeasuredPoint Before, CardPoint Now)
{
    public CardVector Moved => Now - Before.Point;

    /// <summary>How far it moved, mm.</summary>
    public double Distance => Moved.Magnitude;

    /// <summary>The distance over that to the border of the stated 95 % region in the same direction.</summary>
    public double OfRegion => Math.Sqrt(Before.Covariance.MahalanobisSquared(Moved) / Covariance2.ChiSquare95);

    /// <summary>Whether it left the region that was stated to hold it with 95 %.</summary>
    public bool IsBeyond => OfRegion > 1;

    /// <summary>Distance to the border of that region in the direction of the move, mm; of a mark that stayed, to the nearest part of the border.</summary>
    public double Allowed => Distance > 0 ? Distance / OfRegion : Before.Covariance.Ellipse95().SemiMinor;
}
