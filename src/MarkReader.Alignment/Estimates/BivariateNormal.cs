using MarkReader.Quantities;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace MarkReader.Alignment.Estimates;

/// <summary>A bivariate normal variable and a disc about the origin of its frame.</summary>
internal static class BivariateNormal
{
    // Standard deviations on either side of the mean that are integrated over: what lies beyond is less than 1e-18.
    private const double Reach = 9;

    private const int Nodes = 32;

    private static readonly GaussLegendreRule s_rule = new(-1, 1, Nodes);

    /// <summary>Mean and standard deviations along the principal axes of the covariance, the first axis the longer.</summary>
    internal readonly record struct Principal(double First, double Second, double FirstSigma, double SecondSigma);

    /// <summary>The mean turned into the principal axes.</summary>
    public static Principal Axes(CardVector mean, Covariance2 covariance)
    {
        Ellipse ellipse = covariance.Ellipse(1);
        (double sin, double cos) = Math.SinCos(ellipse.Direction.Radians);
        return new((mean.U * cos) + (mean.V * sin), (mean.V * cos) - (mean.U * sin), ellipse.SemiMajor, ellipse.SemiMinor);
    }

    /// <summary>
    /// Probability that the variable lies within <paramref name="radius"/> of the origin: the noncentral χ² when the covariance is round,
    /// else an integral over chords square to the longer axis (W. C. Guenther and P. J. Terragno, Ann. Math. Stat. 35 (1964) 232).
    /// </summary>
    public static double WithinDisc(CardVector mean, Covariance2 covariance, double radius)
    {
        if (radius <= 0)
            return 0;
        Principal p = Axes(mean, covariance);
        if (p.FirstSigma == 0)
            return mean.Magnitude <= radius ? 1 : 0;
        if (p.FirstSigma - p.SecondSigma < 1e-9 * p.FirstSigma)
        {
            double variance = p.FirstSigma * p.SecondSigma;
            return NoncentralChiSquare.Below(radius * radius / variance, ((mean.U * mean.U) + (mean.V * mean.V)) / variance);
        }

        return OverDisc(p, radius);
    }

    /// <summary>The integral by chords of the disc, for standard deviations of which the first is not zero.</summary>
    public static double OverDisc(Principal p, double radius)
    {
        double low = Math.Max(-radius, p.First - (Reach * p.FirstSigma)), high = Math.Min(radius, p.First + (Reach * p.FirstSigma));
        return low >= high ? 0 : Math.Clamp(Pieces(p, radius, low, high).Sum(piece => OverChords(p, radius, piece)), 0, 1);
    }

    // Cut where the integrand turns: about the mean, and where the chord's end passes the mean of the shorter axis.
    private static IEnumerable<(double Low, double High)> Pieces(Principal p, double radius, double low, double high)
    {
        List<double> cuts = [low, high, p.First, 0];
        cuts.AddRange(new[] { -4.0, -2, -1, 1, 2, 4 }.Select(s => p.First + (s * p.FirstSigma)));
        foreach (double s in new[] { -Reach, -4, -2, -1, 0, 1, 2, 4, Reach })
        {
            double edge = p.Second + (s * p.SecondSigma), chord = (radius * radius) - (edge * edge);
            if (chord > 0)
                cuts.AddRange([Math.Sqrt(chord), -Math.Sqrt(chord)]);
        }

        double[] inside = [.. cuts.Where(c => c >= low && c <= high).Distinct().Order()];
        return inside.Zip(inside.Skip(1));
    }

    private static double OverChords(Principal p, double radius, (double Low, double High) piece)
    {
        // x = R·sin t takes away the root at the ends of the disc.
        double from = Math.Asin(Math.Clamp(piece.Low / radius, -1, 1)), to = Math.Asin(Math.Clamp(piece.High / radius, -1, 1));
        double middle = (from + to) / 2, half = (to - from) / 2, sum = 0;
        for (int i = 0; i < Nodes; i++)
        {
            (double sin, double cos) = Math.SinCos(middle + (half * s_rule.GetAbscissa(i)));
            double z = ((radius * sin) - p.First) / p.FirstSigma;
            sum += s_rule.GetWeight(i) * Math.Exp(-z * z / 2) * Chord(p, radius * cos) * radius * cos;
        }

        return half * sum / (p.FirstSigma * Math.Sqrt(2 * Math.PI));
    }

    private static double Chord(Principal p, double halfLength) => p.SecondSigma == 0
        ? (Math.Abs(p.Second) <= halfLength ? 1 : 0)
        : NormalBetween((-halfLength - p.Second) / p.SecondSigma, (halfLength - p.Second) / p.SecondSigma);

    /// <summary>Probability of a standard normal variable between two bounds, exact in both tails.</summary>
    public static double NormalBetween(double low, double high) => low > 0
        ? (SpecialFunctions.Erfc(low / Math.Sqrt(2)) - SpecialFunctions.Erfc(high / Math.Sqrt(2))) / 2
        : (SpecialFunctions.Erfc(-high / Math.Sqrt(2)) - SpecialFunctions.Erfc(-low / Math.Sqrt(2))) / 2;
}
