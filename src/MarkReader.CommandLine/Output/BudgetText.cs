using MarkReader.Application.Reports;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>Uncertainty budgets for people: one column for each point, the largest source first.</summary>
internal static class BudgetText
{
    /// <summary>Below this part of the variance in every column a source is not worth a line.</summary>
    private const double LeastShare = 0.005;

    public static string Of(params (string Name, IReadOnlyList<UncertaintyComponent> Budget)[] points)
    {
        IReadOnlyList<ComponentReport>[] columns = [.. points.Select(p => ComponentReport.From(p.Budget))];
        Table table = new([Get("budget.uncertaintyFrom"), .. points.SelectMany(p => new[] { $"{p.Name} u/mm", Get("budget.share") })]);
        IEnumerable<string> sources = columns.SelectMany(c => c).GroupBy(c => c.Source)
            .Where(g => g.Max(c => c.Share) >= LeastShare)
            .OrderByDescending(g => g.Max(c => c.Share))
            .Select(g => g.Key);
        foreach (string source in sources)
            table.Add([ComponentReport.Words(source), .. columns.SelectMany(column => Cells(column.FirstOrDefault(c => c.Source == source)))]);
        return table.ToString();
    }

    private static string[] Cells(ComponentReport? component) => component is null
        ? ["-", "-"]
        : [Words.Fixed(component.StandardUncertainty, 4), Words.Fixed(100 * component.Share, 1)];
}
