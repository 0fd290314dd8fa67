using MarkReader.Alignment.History;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;

namespace MarkReader.Alignment.Tests.History;

/// <summary>Visits to a machine of which the truth is known.</summary>
/// <param name="Changes">Number of changes between visits.</param>
/// <param name="Sigma">Standard deviation of each component of each measurement.</param>
/// <param name="Truth">What the quantity really does between two visits: number of the change, months.</param>
internal sealed record SimulatedHistory(int Changes, double Sigma, Func<int, double, (double U, double V)> Truth)
{
    /// <summary>Probability that nothing is changed at a visit.</summary>
    public double LeftAlone { get; init; } = 0.5;

    /// <summary>Part of the found value's error that the left value has in common with it at a visit where something was changed, 0 to 1.</summary>
    public double Common { get; init; }

    /// <summary>Whether the visits come at uneven times, and are uneven in their uncertainties.</summary>
    public bool Uneven { get; init; }

    public IReadOnlyList<HistoryChange> Draw(Random random)
    {
        List<HistoryChange> changes = [];
        DateTimeOffset at = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
        (double u, double v) = (0.3, -0.2);
        ((double U, double V) error, Covariance2 covariance) = Error(random);
        HistoryValue left = new(u + error.U, v + error.V, covariance);
        bool same = false;
        for (int i = 0; i < Changes; i++)
        {
            DateTimeOffset next = at.AddDays(Uneven ? 3 + (80 * random.NextDouble()) : 365.25 / 12);
            (double du, double dv) = Truth(i, (next - at).TotalDays * 12 / 365.25);
            (u, v) = (u + du, v + dv);
            (error, covariance) = Error(random);
            HistoryValue found = new(u + error.U, v + error.V, covariance);
            changes.Add(new(at, next, left, found) { BeginsWhereLastEnded = same });
            at = next;
            same = random.NextDouble() < LeftAlone;
            left = same ? found : Anew(random, error, covariance, ref u, ref v);
        }

        return changes;
    }

    // The quantity is set to about zero, and measured again.
    private HistoryValue Anew(Random random, (double U, double V) error, Covariance2 covariance, ref double u, ref double v)
    {
        (u, v) = (Normal.Sample(random, 0, 0.2), Normal.Sample(random, 0, 0.2));
        (double ownU, double ownV) = Correlated(random, covariance);
        double own = Math.Sqrt(1 - (Common * Common));
        return new(u + (Common * error.U) + (own * ownU), v + (Common * error.V) + (own * ownV), covariance);
    }

    private ((double U, double V), Covariance2) Error(Random random)
    {
        double first = Sigma * (Uneven ? 0.3 + (2 * random.NextDouble()) : 1), second = Sigma * (Uneven ? 0.3 + (2 * random.NextDouble()) : 1);
        double correlation = Uneven ? (1.8 * random.NextDouble()) - 0.9 : 0;
        Covariance2 covariance = new(first * first, correlation * first * second, second * second);
        return (Correlated(random, covariance), covariance);
    }

    private static (double U, double V) Correlated(Random random, Covariance2 c)
    {
        double a = Normal.Sample(random, 0, 1), b = Normal.Sample(random, 0, 1), root = Math.Sqrt(c.Uu), slope = c.Uv / root;
        return (root * a, (slope * a) + (Math.Sqrt(c.Vv - (slope * slope)) * b));
    }
}
