using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.LineFitting;

namespace MarkReader.Alignment.Survey;

/// <summary>How the mark at a corner moves for a shim under that corner: mm of mark for one mm of shim.</summary>
/// <remarks>
/// A raised corner raises the head past a level beam: −1. When mirror two rolls with the gantry the beam rolls along and the mark moves less, down to
/// not at all. So the prior is wide, and one survey after a shim teaches the machine's own response (linear Gaussian update).
/// </remarks>
public sealed record ShimResponse(double Mean, double StandardDeviation)
{
    /// <summary>−1 with a standard deviation of 0.5.</summary>
    public static ShimResponse Prior { get; } = new(-1, 0.5);

    /// <summary>Whether a shim's effect is known well enough to work with: the mean is at least 1.5 standard deviations from none.</summary>
    public bool IsKnown => Math.Abs(Mean) >= 1.5 * StandardDeviation;

    /// <summary>The response after the corner's mark was seen to move.</summary>
    /// <param name="shim">The shim put under the corner.</param>
    /// <param name="before">Height of the corner's mark above the plane of the other three before, mm.</param>
    /// <param name="after">The same from the survey after.</param>
    public ShimResponse After(MeasuredLength shim, Prediction before, Prediction after)
    {
        double h = shim.Value.Millimetres, variance = StandardDeviation * StandardDeviation;
        double noise = (before.Uncertainty * before.Uncertainty) + (after.Uncertainty * after.Uncertainty)
            + (((Mean * Mean) + variance) * shim.Uncertainty.Millimetres * shim.Uncertainty.Millimetres);
        double spread = (h * h * variance) + noise;
        if (spread <= 0)
            return this;
        double gain = h * variance / spread;
        return new(Mean + (gain * (after.Value - before.Value - (h * Mean))), Math.Sqrt(variance * noise / spread));
    }
}
