using MarkReader.Application.Reports;

namespace MarkReader.Service.Pages;

/// <summary>An uncertainty budget as the pages show it: the largest source first, what hardly counts in one line.</summary>
/// <param name="Title">Whose uncertainty it is.</param>
/// <param name="Lines">At least one.</param>
public sealed record BudgetView(string Title, IReadOnlyList<BudgetLine> Lines)
{
    /// <summary>Sources below this part of the variance share a line.</summary>
    private const double LeastShare = 0.01;

    internal static BudgetView? From(string title, string other, IReadOnlyList<ComponentReport>? budget)
    {
        if (budget is not { Count: > 0 })
            return null;
        List<BudgetLine> lines = [.. budget
            .Where(c => c.Share >= LeastShare)
            .OrderByDescending(c => c.Share)
            .Select(c => new BudgetLine(ComponentReport.Words(c.Source), c.StandardUncertainty, c.Share))];
        ComponentReport[] small = [.. budget.Where(c => c.Share < LeastShare)];
        if (small.Sum(c => c.Share) >= LeastShare / 2)
            lines.Add(new(other, Math.Sqrt(small.Sum(c => c.StandardUncertainty * c.StandardUncertainty)), small.Sum(c => c.Share)));
        return new(title, lines);
    }
}

/// <summary>One source.</summary>
/// <param name="Words">Its name.</param>
/// <param name="StandardUncertainty">Root of the mean of both variances, mm.</param>
/// <param name="Share">Part of the variance, 0 to 1.</param>
public sealed record BudgetLine(string Words, double StandardUncertainty, double Share);
