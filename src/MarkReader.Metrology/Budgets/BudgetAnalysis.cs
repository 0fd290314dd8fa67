using MarkReader.Quantities;

namespace MarkReader.Metrology.Budgets;

/// <summary>What the parts of a budget do to the whole: independent parts add as squares (JCGM 100:2008, 5.1.2).</summary>
/// <param name="Whole">Standard uncertainty of all parts together, root of the mean of both variances.</param>
/// <param name="Parts">The largest first.</param>
/// <param name="Halving">What would halve the whole.</param>
public sealed record BudgetAnalysis(Length Whole, IReadOnlyList<BudgetPart> Parts, BudgetHalving Halving)
{
    /// <summary>
    /// No part is asked to shrink to less than this part of itself: what would need more is left to several parts together. All parts together need a half,
    /// so that there is always an answer.
    /// </summary>
    private const double LeastFactor = 1.0 / 3;

    /// <summary>The analysis; null when nothing of the budget is above zero.</summary>
    /// <param name="budget">Independent components, covariances in mm².</param>
    public static BudgetAnalysis? Of(IReadOnlyList<UncertaintyComponent> budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        (UncertaintySource Source, double Variance)[] parts =
            [.. budget.Select(c => (c.Source, (c.Covariance.Uu + c.Covariance.Vv) / 2)).Where(p => p.Item2 > 0).OrderByDescending(p => p.Item2)];
        double whole = parts.Sum(p => p.Variance);
        if (!(whole > 0 && double.IsFinite(whole)))
            return null;
        return new(
            Root(whole),
            [.. parts.Select(p => new BudgetPart(p.Source, Root(p.Variance), p.Variance / whole, Root(Math.Max(0, whole - p.Variance))))],
            Halve([.. parts.Select(p => (p.Source, p.Variance / whole))]));
    }

    // Parts with the share S that all shrink to f times their size leave 1 - S + S f² of the variance; a quarter is wanted.
    private static BudgetHalving Halve((UncertaintySource Source, double Share)[] parts)
    {
        double share = 0;
        for (int n = 1; n < parts.Length; n++)
        {
            share += parts[n - 1].Share;
            double left = (share - 0.75) / share;
            if (left >= LeastFactor * LeastFactor)
                return new([.. parts.Take(n).Select(p => p.Source)], Math.Sqrt(left));
        }

        return new([.. parts.Select(p => p.Source)], 0.5);
    }

    private static Length Root(double variance) => Length.FromMillimetres(Math.Sqrt(variance));
}

/// <summary>A part of a budget.</summary>
/// <param name="Uncertainty">Standard uncertainty that it alone would give.</param>
/// <param name="Share">Its part of the whole variance, 0 to 1.</param>
/// <param name="WholeWithout">The whole if it were known exactly.</param>
public sealed record BudgetPart(UncertaintySource Source, Length Uncertainty, double Share, Length WholeWithout);

/// <summary>What would halve a budget: the fewest of the largest parts, and what they must shrink to.</summary>
/// <param name="Parts">The largest first, at least one.</param>
/// <param name="Factor">To this part of their size, above 0 and at most 0.5.</param>
public sealed record BudgetHalving(IReadOnlyList<UncertaintySource> Parts, double Factor);
