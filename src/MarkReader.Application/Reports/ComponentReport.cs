using System.Text.Json;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>One line of an uncertainty budget as JSON; the covariances of all lines add up to that of the point.</summary>
/// <param name="Source">What it comes from: noise, markShape, cardView, flatness, interpolation, printScale, parallax, pathLengths, pivotOffset, screwTurns.</param>
/// <param name="Covariance">[[uu, uv], [uv, vv]], mm².</param>
/// <param name="StandardUncertainty">Root of the mean of both variances, mm.</param>
/// <param name="Share">Its part of the sum of all variances, 0 to 1.</param>
public sealed record ComponentReport(string Source, double[][] Covariance, double StandardUncertainty, double Share)
{
    // A part in one direction has a covariance of rank one.
    private const double Rounding = 1e-9;

    /// <summary>A budget, in the order in which it is given.</summary>
    public static IReadOnlyList<ComponentReport> From(IReadOnlyList<UncertaintyComponent> budget)
    {
        double total = budget.Sum(c => Trace(c.Covariance));
        return [.. budget.Select(c => new ComponentReport(
            Name(c.Source), MarkReport.Matrix(c.Covariance), Math.Sqrt(Trace(c.Covariance) / 2), total > 0 ? Trace(c.Covariance) / total : 0))];
    }

    /// <summary>A budget as it was given; null when a report of another version has none, or one that is not understood.</summary>
    public static IReadOnlyList<UncertaintyComponent>? Read(IReadOnlyList<ComponentReport>? budget)
    {
        if (budget is not { Count: > 0 })
            return null;
        List<UncertaintyComponent> read = [];
        foreach (ComponentReport c in budget)
        {
            if (c is not { Covariance: [[var uu, var uv], [_, var vv]] } || !Enum.TryParse(c.Source, ignoreCase: true, out UncertaintySource source)
                || !(uu >= 0 && vv >= 0 && uv * uv <= (1 + Rounding) * uu * vv && double.IsFinite(uu + vv)))
                return null;
            read.Add(new(source, new(uu, uv, vv)));
        }

        return read;
    }

    /// <summary>The source's name in JSON.</summary>
    public static string Name(UncertaintySource source) => JsonNamingPolicy.CamelCase.ConvertName(source.ToString());

    /// <summary>A source in words, from its name in JSON; the name itself when a later version wrote it.</summary>
    public static string Words(string source) => Enum.TryParse(source, ignoreCase: true, out UncertaintySource known)
        ? known switch
        {
            UncertaintySource.Noise => AdviceTexts.Get("source.noise"),
            UncertaintySource.MarkShape => AdviceTexts.Get("source.markShape"),
            UncertaintySource.CardView => AdviceTexts.Get("source.cardView"),
            UncertaintySource.Flatness => AdviceTexts.Get("source.flatness"),
            UncertaintySource.Interpolation => AdviceTexts.Get("source.interpolation"),
            UncertaintySource.PrintScale => AdviceTexts.Get("source.printScale"),
            UncertaintySource.Parallax => AdviceTexts.Get("source.parallax"),
            UncertaintySource.PathLengths => AdviceTexts.Get("source.pathLengths"),
            UncertaintySource.PivotOffset => AdviceTexts.Get("source.pivotOffset"),
            UncertaintySource.ScrewTurns => AdviceTexts.Get("source.screwTurns"),
            _ => source,
        }
        : source;

    private static double Trace(Covariance2 c) => c.Uu + c.Vv;
}
