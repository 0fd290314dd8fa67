using MarkReader.Quantities;

namespace MarkReader.Alignment.Verdicts;

/// <summary>The rule of decision: guarded acceptance and guarded rejection (JCGM 106:2012, 8.3; ISO 14253-1:2017).</summary>
/// <remarks>
/// It promises error rates, not averages over machines: of true values outside or on the limit at most 2.5 % are called within, of true values inside
/// or on it at most 2.5 % are called outside. Values: the guard band is 1.96·u on each side of a limit. Points in the plane: within when the 95 % ellipse (χ² with
/// 2 degrees of freedom, factor 2.448) lies in the tolerance's circle; it then lies beyond no tangent of the circle, so that the error is below 0.8 %.
/// Outside when the 97.5 % ellipse (factor 2.716) has no point in the circle: with a circle smaller than the uncertainty the 95 % one would err in up to 5 %.
/// </remarks>
public static class DecisionRule
{
    /// <summary>Largest probability of a wrong verdict, each way.</summary>
    public const double LargestError = 0.025;

    /// <summary>The 97.5 % quantile of the standard normal distribution: guard band over standard uncertainty.</summary>
    public const double GuardFactor = Normal95.Factor;

    /// <summary>Semi-axes of the 95 % ellipse over standard uncertainties: √5.991465.</summary>
    public static readonly double RegionFactor = Math.Sqrt(Covariance2.ChiSquare95);

    /// <summary>The guard band of a limit for a value of this standard uncertainty, in the same unit.</summary>
    public static double GuardBand(double uncertainty) => GuardFactor * uncertainty;

    /// <summary>The limit up to which a measured value is accepted under an upper limit (JCGM 106:2012, 8.3.2).</summary>
    public static double AcceptanceLimit(double upperLimit, double uncertainty) => upperLimit - GuardBand(uncertainty);
}
