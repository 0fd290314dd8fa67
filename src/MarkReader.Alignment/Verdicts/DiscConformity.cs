using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Verdicts;

/// <summary>A vector with a bivariate normal error against a circular tolerance about zero: an offset (mm), a walk (mm), a slope (mrad).</summary>
/// <remarks>Rule: <see cref="DecisionRule"/>. The conformance probability is the normal density's integral over the disc (<see cref="BivariateNormal"/>).</remarks>
public static class DiscConformity
{
    private const int Bearings = 64;

    /// <param name="vector">The measured vector.</param>
    /// <param name="covariance">Its covariance, in the square of its unit.</param>
    /// <param name="radius">The tolerance, above zero, in its unit.</param>
    public static Conformity Of(CardVector vector, Covariance2 covariance, double radius)
    {
        if (!(radius > 0 && double.IsFinite(radius)))
            throw new ArgumentOutOfRangeException(nameof(radius), radius, "The tolerance must be above zero.");
        if (!double.IsFinite(vector.Magnitude))
            throw new ArgumentOutOfRangeException(nameof(vector), vector, "The vector must be finite.");
        BivariateNormal.Principal p = BivariateNormal.Axes(vector, covariance);
        double level = Math.Exp(-SquaredDistanceToDisc(p, radius) / 2);
        Verdict verdict = Farthest(p, DecisionRule.RegionFactor) <= radius ? Verdict.Within
            : level <= DecisionRule.LargestError ? Verdict.Outside
            : Verdict.Undecided;
        return new(verdict, BivariateNormal.WithinDisc(vector, covariance, radius), level);
    }

    /// <summary>Distance from zero to the farthest point of the ellipse at this many standard deviations.</summary>
    internal static double Farthest(BivariateNormal.Principal p, double factor)
    {
        double a = factor * p.FirstSigma, b = factor * p.SecondSigma;
        double At(double bearing)
        {
            (double sin, double cos) = Math.SinCos(bearing);
            double x = p.First + (a * cos), y = p.Second + (b * sin);
            return (x * x) + (y * y);
        }

        // A trigonometric polynomial of degree 2: the best of 64 bearings has the greatest maximum beside it.
        const double step = 2 * Math.PI / Bearings;
        double best = Enumerable.Range(0, Bearings).Select(i => i * step).MaxBy(At), low = best - step, high = best + step;
        for (int i = 0; i < 60; i++)
        {
            double third = (high - low) / 3;
            if (At(low + third) < At(high - third))
                low += third;
            else
                high -= third;
        }

        return Math.Sqrt(At((low + high) / 2));
    }

    /// <summary>The least squared Mahalanobis distance from the mean to a point of the disc; zero when the mean lies in it.</summary>
    /// <remarks>
    /// The nearest point is (I + μC)⁻¹·m with the one μ ≥ 0 that puts it on the circle (J. J. Moré and D. C. Sorensen, SIAM J. Sci. Stat. Comput. 4 (1983) 553);
    /// the squared distance is then μ²·pᵀ·C·p, also for a singular C.
    /// </remarks>
    internal static double SquaredDistanceToDisc(BivariateNormal.Principal p, double radius)
    {
        double first = p.FirstSigma * p.FirstSigma, second = p.SecondSigma * p.SecondSigma;
        (double X, double Y) Nearest(double mu) => (p.First / (1 + (mu * first)), p.Second / (1 + (mu * second)));
        double Size(double mu)
        {
            (double x, double y) = Nearest(mu);
            return Math.Sqrt((x * x) + (y * y));
        }

        if (Size(0) <= radius)
            return 0;
        double high = 1 / Math.Max(first, 1e-300), low = 0;
        for (; Size(high) > radius; high *= 2)
        {
            if (high > 1e300)
                return double.PositiveInfinity;
        }

        for (int i = 0; i < 200 && high - low > 1e-14 * high; i++)
        {
            double middle = (low + high) / 2;
            if (Size(middle) > radius)
                low = middle;
            else
                high = middle;
        }

        (double u, double v) = Nearest(high);
        return high * high * ((first * u * u) + (second * v * v));
    }
}
