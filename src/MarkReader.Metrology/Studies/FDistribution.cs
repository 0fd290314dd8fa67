using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace MarkReader.Metrology.Studies;

/// <summary>Fisher's F distribution with any degrees of freedom above zero.</summary>
internal static class FDistribution
{
    /// <summary>Probability of a value above <paramref name="f"/>.</summary>
    public static double Tail(double f, double above, double below) =>
        f <= 0 ? 1 : double.IsPositiveInfinity(f) ? 0 : SpecialFunctions.BetaRegularized(below / 2, above / 2, below / (below + (above * f)));

    /// <summary>The value that is not exceeded with probability <paramref name="p"/>.</summary>
    public static double Quantile(double p, double above, double below)
    {
        // By the tail that is small, where the beta quantile keeps its digits.
        if (p > 0.5)
            return 1 / Quantile(1 - p, below, above);
        double x = Beta.InvCDF(above / 2, below / 2, p);
        return below * x / (above * (1 - x));
    }

    /// <summary>The same with infinitely many degrees of freedom below: χ² over its degrees of freedom.</summary>
    public static double Quantile(double p, double above) => ChiSquared.InvCDF(above, p) / above;
}
