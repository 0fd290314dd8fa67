using MarkReader.Alignment.Shims;
using MarkReader.Application.Shims;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a stack of shims, mm; uncertainties are standard uncertainties.</summary>
/// <param name="Reached">Whether the stack's height is within the tolerance; if not, no stack of the stock is, and this is the nearest.</param>
/// <param name="Difference">The stack's height minus the wanted one.</param>
/// <param name="Parts">The pieces, thickest first; empty for no shim at all.</param>
public sealed record StackReport(
    double Wanted, double Tolerance, bool Reached, double Height, double Uncertainty, double Difference, int Pieces, IReadOnlyList<StackPartReport> Parts)
{
    public static StackReport From(StackAdvice advice) => new(
        advice.Wanted.Millimetres,
        advice.Tolerance.Millimetres,
        advice.Reached,
        Micrometres(advice.Stack.Height.Millimetres),
        advice.Stack.Uncertainty.Millimetres,
        Micrometres(advice.Difference.Millimetres),
        advice.Stack.Pieces,
        [.. advice.Stack.Parts.Select(p => new StackPartReport(p.Item.Name, p.Item.Thickness.Millimetres, p.Item.Uncertainty.Millimetres, p.Count))]);

    // The search works in whole micrometres; sums of decimals do not.
    private static double Micrometres(double mm) => Math.Round(mm, 6);
}

/// <summary>So many pieces of one thickness.</summary>
public sealed record StackPartReport(string Name, double Thickness, double Uncertainty, int Count);

/// <summary>The JSON of the command: the stack, and the stock that it is taken from (a null count: as many as needed).</summary>
public sealed record ShimsReport(StackReport Stack, IReadOnlyList<StockItemReport> Stock)
{
    public static ShimsReport From(StackFinding finding) => new(
        StackReport.From(finding.Advice),
        [.. finding.Stock.Select(i => new StockItemReport(i.Name, i.Thickness.Millimetres, i.Uncertainty.Millimetres, i.Count))]);
}

public sealed record StockItemReport(string Name, double Thickness, double Uncertainty, int? Count);
