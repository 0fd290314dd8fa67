using MathNet.Numerics.Distributions;

namespace MarkReader.Metrology.Coverage;

/// <summary>What the sorted squared Mahalanobis distances of n points must be when the stated covariances are right: χ² with 2 degrees of freedom.</summary>
/// <remarks>
/// The k-th smallest of n has the probability of a Beta(k, n + 1 − k) variable (H. A. David and H. N. Nagaraja, Order Statistics, 3rd ed., Wiley 2003, 2.1);
/// the quantile of χ² with 2 degrees of freedom is −2·ln(1 − p).
/// </remarks>
public static class DistanceQuantiles
{
    /// <summary>The squared distance of which the part p (0 to 1, not 1) of correct statements stays below.</summary>
    public static double Of(double p) => -2 * Math.Log(1 - p);

    /// <summary>The median of the k-th smallest of n squared distances, k from 1.</summary>
    public static double Median(int k, int n) => Of(Beta.InvCDF(k, n + 1 - k, 0.5));

    /// <summary>The range that holds the k-th smallest of n squared distances with this probability, k from 1.</summary>
    public static (double Low, double High) Range(int k, int n, double probability = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(k, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(k, n);
        double tail = (1 - probability) / 2;
        return (Of(Beta.InvCDF(k, n + 1 - k, tail)), Of(Beta.InvCDF(k, n + 1 - k, 1 - tail)));
    }
}
