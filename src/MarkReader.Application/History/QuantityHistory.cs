using MarkReader.Alignment.History;
using MarkReader.Quantities;

namespace MarkReader.Application.History;

/// <summary>A quantity over the visits to a machine.</summary>
/// <param name="Points">The visits at which it was measured, in the order of time.</param>
/// <param name="Changes">What it did between them.</param>
/// <param name="Finding">Null for the spread over the bed, which has no direction that could be followed.</param>
/// <param name="Tolerance">As at the latest of the visits.</param>
public sealed record QuantityHistory(HistoryQuantity Quantity, IReadOnlyList<HistoryPoint> Points, IReadOnlyList<HistoryChange> Changes, HistoryFinding? Finding, double Tolerance)
{
    /// <returns>Null when it was measured at no visit.</returns>
    internal static QuantityHistory? Of(HistoryQuantity quantity, IReadOnlyList<HistoryVisit> visits)
    {
        HistoryPoint[] points = [.. from visit in visits
                                    where visit.States.ContainsKey(quantity)
                                    select new HistoryPoint(visit.Id, visit.At, visit.States[quantity])];
        HistoryPoint[] measured = [.. points.Where(p => p.State.Found is not null || p.State.Left is not null)];
        if (measured.Length == 0)
            return null;
        HistoryChange[] changes = quantity.Kind == HistoryKind.Spread ? [] : [.. Between(points)];
        return new(quantity, measured, changes, quantity.Kind == HistoryKind.Spread ? null : HistoryTest.Of(changes), measured[^1].State.Tolerance);
    }

    private static IEnumerable<HistoryChange> Between(IReadOnlyList<HistoryPoint> points)
    {
        HistoryPoint? before = null;
        bool ended = false;
        foreach (HistoryPoint point in points)
        {
            bool ends = false;
            if (before?.State.Left is { } left && point.State.Found is { } found && Unsettled(before.State, point.State) is { } more)
            {
                yield return new(before.At, point.At, left, found with { Covariance = found.Covariance + more }) { BeginsWhereLastEnded = ended && !before.State.IsChanged };
                ends = true;
            }

            if (point.State.Left is not null)
                (before, ended) = (point, ends);
            else if (point.State.IsChanged)
                before = null; // what it was left like is not known
        }
    }

    // A leg before it that was set anew does not stand quite as it was left last time. The difference enters with its own size in a direction that is not
    // known here (the mirrors turn it): for a vector d turned at random, E[d·dᵀ] = |d|²/2 on each axis. Null when it is not known.
    private static Covariance2? Unsettled(HistoryState left, HistoryState found)
    {
        double variance = 0;
        foreach (LegBefore leg in found.Before)
        {
            if (leg.Slope is not { } now || !left.Ends.TryGetValue(leg.Leg, out HistoryValue? then))
                return null;
            double square = Math.Pow(now.U - then.U, 2) + Math.Pow(now.V - then.V, 2) + now.Covariance.Uu + now.Covariance.Vv + then.Covariance.Uu + then.Covariance.Vv;
            variance += leg.Arm * leg.Arm * square / 2;
        }

        return Covariance2.Isotropic(Math.Sqrt(variance));
    }
}

/// <summary>A quantity at one of the visits.</summary>
/// <param name="Visit">The visit's number.</param>
/// <param name="At">When it began.</param>
public sealed record HistoryPoint(long Visit, DateTimeOffset At, HistoryState State);
