using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Two photos that probably show the same pulses.</summary>
/// <param name="First">Which photo, from 0.</param>
/// <param name="Second">A later one.</param>
/// <param name="Marks">How many marks of both lie at the same places.</param>
/// <param name="ByChance">Upper bound of the probability that pulses of their own lie so in any two of the photos.</param>
/// <remarks>
/// Marks of one burn differ by what they are read with, marks of two pulses also by the pulses' scatter. Marks count as at one place inside the 99 % region of their
/// difference. Normal pulses come to lie inside it with a probability of at most its area times the highest density of the differences between pulses; sets of marks
/// are counted by Bonferroni's inequality, over all pairs of photos. A single mark is not judged: pulses often scatter hardly more than they are read with.
/// </remarks>
internal sealed record SamePulses(int First, int Second, int Marks, double ByChance)
{
    /// <summary>Above it nothing is said.</summary>
    public const double Level = 0.01;

    // 99 % of χ² with two degrees of freedom: −2·ln 0.01.
    private const double Gate = 9.210340371976182;
    private const int LeastMarks = 2;

    public static IReadOnlyList<SamePulses> Of(IReadOnlyList<IReadOnlyList<MeasuredPoint>> photos)
    {
        if (!PulseScatter.Of([.. photos.SelectMany(p => p)]).TryGet(out PulseScatter? scatter, out _) || scatter.Observed.Determinant <= 0)
            return [];
        double pairs = photos.Count * (photos.Count - 1) / 2.0, spread = 2 * Math.Sqrt(scatter.Observed.Determinant);
        List<SamePulses> same = [];
        for (int i = 0; i < photos.Count; i++)
        {
            for (int j = i + 1; j < photos.Count; j++)
            {
                (MeasuredPoint A, MeasuredPoint B)[] shared = [.. Shared(photos[i], photos[j])];
                if (shared.Length < LeastMarks)
                    continue;
                double chance = pairs * Ways(photos[i].Count, photos[j].Count, shared.Length) * shared.Select(s => Math.Min(1, Gate / 2 * Math.Sqrt(Both(s.A, s.B).Determinant) / spread)).Aggregate((a, b) => a * b);
                if (chance < Level)
                    same.Add(new(i, j, shared.Length, chance));
            }
        }

        return same;
    }

    // Nearest to each other, and no farther than what they are read with explains.
    private static IEnumerable<(MeasuredPoint A, MeasuredPoint B)> Shared(IReadOnlyList<MeasuredPoint> a, IReadOnlyList<MeasuredPoint> b) =>
        from x in a
        let y = b.MinBy(m => m.Point.DistanceTo(x.Point))
        where y is not null && ReferenceEquals(a.MinBy(m => m.Point.DistanceTo(y.Point)), x) && Both(x, y) is { Determinant: > 0 } c && c.MahalanobisSquared(y.Point - x.Point) <= Gate
        select (x, y);

    private static Covariance2 Both(MeasuredPoint a, MeasuredPoint b) => a.Covariance + b.Covariance;

    // How many sets of so many pairs there are: (n choose k)·(m choose k)·k!.
    private static double Ways(int n, int m, int k) => Enumerable.Range(0, k).Aggregate(1.0, (ways, i) => ways * (n - i) * (m - i) / (i + 1));
}
