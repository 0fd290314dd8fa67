using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>The mark farthest from the others, by the ellipse of all.</summary>
/// <param name="Index">Which mark, from 0.</param>
/// <param name="Probability">Upper bound of the probability that the farthest of as many normal marks lies so far out.</param>
/// <remarks>
/// n·d²/(n − 1)² is a Beta(1, (n − 3)/2) variable for each mark (S. S. Wilks, Sankhyā A 25 (1963) 407–426; R. Gnanadesikan and J. R. Kettenring,
/// Biometrics 28 (1972) 81–124), times n by Bonferroni's inequality.
/// </remarks>
public sealed record PulseOutlier(int Index, double Probability)
{
    /// <summary>With fewer marks no place could be told as an outlier.</summary>
    public const int LeastPulses = 6;

    /// <summary>Below it the mark is hinted at.</summary>
    public const double Level = 0.05;

    public bool StandsOut => Probability < Level;

    internal static PulseOutlier? Of(IReadOnlyList<MeasuredPoint> marks, CardPoint mean, Covariance2 observed)
    {
        int n = marks.Count;
        if (n < LeastPulses || observed.Determinant <= 0)
            return null;
        (int index, double farthest) = marks.Select((m, i) => (i, observed.MahalanobisSquared(m.Point - mean))).MaxBy(m => m.Item2);
        double part = Math.Clamp(n * farthest / ((n - 1.0) * (n - 1.0)), 0, 1);
        return new(index, Math.Min(1, n * Math.Pow(1 - part, (n - 3) / 2.0)));
    }
}
