using MathNet.Numerics;

namespace MarkReader.Alignment.Estimates;

/// <summary>The noncentral χ² distribution with 2 degrees of freedom: the squared distance from a fixed point of a round bivariate normal variable.</summary>
/// <remarks>
/// F(x; 2, λ) = 1 − Q₁(√λ, √x), Q₁ Marcum's function. The library's function follows A. Gil, J. Segura and N. M. Temme, ACM Trans. Math.
/// Softw. 40 (2014) 20, doi:10.1145/2591004, whose arguments are λ/2 and x/2, not √λ and √x.
/// </remarks>
public static class NoncentralChiSquare
{
    // The library's function is made for this range of λ/2 and x/2, and does not refuse others; beyond it, and for x = λ, where the function gives no number, the integral by chords is as exact.
    private const double MostArgument = 10_000;

    // Standard deviations beyond which the normal tail is nothing to double precision.
    private const double Beyond = 38;

    /// <summary>Probability of a value of at most <paramref name="x"/> (≥ 0) for noncentrality λ (≥ 0).</summary>
    public static double Below(double x, double noncentrality) => 1 - Above(x, noncentrality);

    /// <summary>Probability of a value above <paramref name="x"/> (≥ 0) for noncentrality λ (≥ 0).</summary>
    public static double Above(double x, double noncentrality)
    {
        if (!(x >= 0 && noncentrality >= 0))
            throw new ArgumentOutOfRangeException(nameof(x), x, "Neither argument may be negative.");
        if (noncentrality == 0)
            return Math.Exp(-x / 2);
        if (x == 0)
            return 1;
        double root = Math.Sqrt(x), centre = Math.Sqrt(noncentrality);
        if (Math.Abs(root - centre) > Beyond)
            return root > centre ? 0 : 1;
        double above = x / 2 > MostArgument || noncentrality / 2 > MostArgument ? double.NaN : SpecialFunctions.MarcumQ(1, noncentrality / 2, x / 2);
        return double.IsNaN(above) ? 1 - BivariateNormal.OverDisc(new(centre, 0, 1, 1), root) : above;
    }
}
