using MarkReader.Application.Studies;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of the scatter of pulses: mm, mm², mrad; intervals at 95 %.</summary>
/// <param name="Covariance">Of the marks' places, as observed.</param>
/// <param name="Component">Either component, root mean square over both: the type A component of a visit.</param>
/// <param name="PulseScatter">The value for a machine's document: of the larger axis where they clearly differ, else of both together; null when none is offered, and the first note says why.</param>
/// <param name="Principal">Standard deviations along the principal axes, as observed.</param>
/// <param name="Outlier">The mark farthest out; null with fewer than six pulses.</param>
/// <param name="PulsesWanted">For the wished width.</param>
public sealed record ScatterReport(
    int Pulses, PulseMeanReport Mean, double[][] Covariance, AxisScatterReport U, AxisScatterReport V, AxisScatterReport Component, double? PulseScatter,
    PrincipalReport Principal, StabilityReport Stability, PulseOutlierReport? Outlier, PulsesWantedReport PulsesWanted, IReadOnlyList<string> Notes)
{
    public static ScatterReport From(ScatterAnswer answer)
    {
        PulseScatter s = answer.Scatter;
        return new(
            s.Marks.Count, new(s.Mean.U, s.Mean.V), MarkReport.Matrix(s.Observed), AxisScatterReport.From(s.U), AxisScatterReport.From(s.V), AxisScatterReport.From(s.Component), answer.ForVisits,
            new(s.Principal.SemiMajor, s.Principal.SemiMinor, s.Principal.Direction.Degrees), StabilityReport.From(answer),
            s.Outlier is { } o ? new(answer.Marks.All[o.Index].Name, o.Probability, o.StandsOut) : null,
            new(answer.Plan.Wanted, answer.Plan.Pulses), [.. ScatterWords.Notes(answer)]);
    }
}

/// <summary>The middle of the marks.</summary>
public sealed record PulseMeanReport(double U, double V);

/// <param name="Observed">Standard deviation of the marks, with its interval.</param>
/// <param name="Corrected">With the photos' own uncertainty taken off, with its interval.</param>
public sealed record AxisScatterReport(double Observed, double[] Interval, double Corrected, double[] CorrectedInterval, double Dof)
{
    internal static AxisScatterReport From(AxisScatter s) => new(s.Observed, StudyComponentReport.Ends(s.Interval), s.Corrected, StudyComponentReport.Ends(s.CorrectedInterval), s.Dof);
}

/// <param name="DirectionDegrees">Of the larger axis, counter-clockwise from u.</param>
public sealed record PrincipalReport(double Larger, double Smaller, double DirectionDegrees);

/// <summary>Stability as in ISO 11670; the forms for both axes together and for the angle are from memory.</summary>
/// <param name="Both">2√2·√(su² + sv²).</param>
/// <param name="Angular">Two standard deviations of the angle; null without a path.</param>
public sealed record StabilityReport(double U, double V, double Both, AngularReport? Angular)
{
    internal static StabilityReport From(ScatterAnswer answer)
    {
        PulseScatter s = answer.Scatter;
        (Angle U, Angle V)? angle = answer.Path is { } path ? s.AngularStability(path) : null;
        return new(
            s.PositionalStabilityU.Millimetres, s.PositionalStabilityV.Millimetres, s.PositionalStability.Millimetres,
            angle is { } a ? new(a.U.Milliradians, a.V.Milliradians) : null);
    }
}

/// <summary>mrad.</summary>
public sealed record AngularReport(double U, double V);

/// <param name="Probability">Upper bound of the probability that the farthest mark lies so far out by chance.</param>
public sealed record PulseOutlierReport(string Name, double Probability, bool StandsOut);

/// <param name="Wanted">Half-width of the 95 % interval as a part of the standard deviation.</param>
public sealed record PulsesWantedReport(double Wanted, int Pulses);
