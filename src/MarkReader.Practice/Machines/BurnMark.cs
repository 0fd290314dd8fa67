using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>A burn mark as a user measures it.</summary>
/// <param name="Place">On the tape, from the target's middle: u right, v up, as one looks at the tape.</param>
/// <param name="Uncertainty">Standard uncertainty of the measurement on each axis; pulse-to-pulse scatter is not in it.</param>
/// <param name="Diameter">Diameter across the beam.</param>
public sealed record BurnMark(CardPoint Place, Length Uncertainty, Length Diameter)
{
    /// <summary>The mark with its covariance.</summary>
    public MeasuredPoint Measured => new(Place, Covariance2.Isotropic(Uncertainty.Millimetres));
}
