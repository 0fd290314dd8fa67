using MarkReader.Alignment.Aiming;
using MarkReader.Application.Screws;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of screw turns: mm, mrad, turns, their squares for covariances; uncertainties are standard uncertainties.</summary>
/// <param name="Spread">Over the travel; null without path lengths.</param>
/// <param name="Screws">In the order given.</param>
/// <param name="After">To expect after all turns, rounded and in the right direction.</param>
public sealed record ScrewsReport(
    FrameReport Frame, SlopeReport Slope, SlopeSpreadReport? Spread, IReadOnlyList<ScrewReport> Screws, AfterTurnsReport After, IReadOnlyList<WarningReport> Warnings)
{
    public static ScrewsReport From(ScrewsFinding finding) => new(
        FrameReport.From(finding.Frame),
        Of(finding.Slope),
        finding.Spread is { } s ? new(s.Size.Millimetres, s.Tolerance.Millimetres, SurveyReport.Name(s.Verdict.Verdict), s.Verdict.Probability) : null,
        [.. finding.Screws.Select(ScrewReport.From)],
        new(Of(finding.After.Slope), Mark(finding.After.Near), Mark(finding.After.Far), finding.After.Spread?.Millimetres),
        WarningReport.From(finding.Warnings));

    private static SlopeReport Of(Slope slope) => new(slope.U, slope.V, MarkReport.Matrix(slope.Covariance));

    private static MeasuredPairReport? Mark(MeasuredPoint? mark) =>
        mark is null ? null : new(mark.Point.U, mark.Point.V, MarkReport.Matrix(mark.Covariance));
}

/// <summary>The frame, in the words of a visit.</summary>
/// <param name="Pivot">Null when all contacts are screws.</param>
public sealed record FrameReport(string? Pivot, IReadOnlyList<FrameScrewReport> Screws, double Arm, double Pitch, double IncidenceDegrees)
{
    internal static FrameReport From(FrameInput frame) => new(
        frame.Pivot is { } pivot ? SurveyReport.Name(pivot) : null,
        [.. frame.Screws.Select(s => new FrameScrewReport(s.Screw, SurveyReport.Name(s.At)))],
        frame.Arm,
        frame.Pitch,
        frame.IncidenceDegrees);
}

public sealed record FrameScrewReport(string Name, string At);

/// <summary>Slope times travel against its tolerance.</summary>
/// <param name="Verdict">within, outside, undecided.</param>
public sealed record SlopeSpreadReport(double Size, double Tolerance, string Verdict, double Probability);

/// <summary>One screw.</summary>
/// <param name="Response">What one turn does to the slope, mrad per turn, clockwise; either way when the direction is not known.</param>
/// <param name="FarMove">What one turn does to the far mark, mm per turn; null without path lengths.</param>
/// <param name="Size">Size of the turn that the slope asks for.</param>
/// <param name="Turns">The turn, positive clockwise; null when the direction is not known.</param>
/// <param name="Hand">Size of the turn in parts that a hand can set, with its words.</param>
/// <param name="FirstTurn">What to try first, either way; null when the direction is known or nothing is to be turned.</param>
public sealed record ScrewReport(
    string Screw,
    bool DirectionKnown,
    MeasuredPairReport Response,
    MeasuredPairReport? FarMove,
    double Size,
    double? Turns,
    double Uncertainty,
    HandTurnReport Hand,
    FirstTurnReport? FirstTurn)
{
    internal static ScrewReport From(ScrewAdvice screw)
    {
        bool known = screw.Response.SenseKnown;
        return new(
            screw.Response.Screw,
            known,
            new(screw.Response.U, screw.Response.V, MarkReport.Matrix(screw.Response.Covariance)),
            screw.FarMove is { } move ? new(move.Vector.U, move.Vector.V, MarkReport.Matrix(move.Covariance)) : null,
            Math.Abs(screw.Wanted.Turns),
            known ? screw.Wanted.Turns : null,
            screw.Wanted.Uncertainty,
            new(known ? screw.Turn.Turns : Math.Abs(screw.Turn.Turns), known ? screw.Turn.Text : screw.Turn.Size),
            screw.First is { } first ? new(first.Turn.Turns, first.Turn.Size, first.Tells, first.IsMoreThanWanted) : null);
    }
}

/// <summary>A turn set by hand.</summary>
/// <param name="Turns">Positive clockwise when the direction is known, else its size.</param>
public sealed record HandTurnReport(double Turns, string Text);

/// <summary>A first turn.</summary>
/// <param name="Tells">Whether one more far mark after it tells the direction.</param>
/// <param name="MoreThanWanted">Whether it is more than the slope asks for, because lost motion may swallow a smaller one.</param>
public sealed record FirstTurnReport(double Turns, string Text, bool Tells, bool MoreThanWanted);

/// <summary>What to expect after the turns.</summary>
/// <param name="Spread">Slope times travel; null without path lengths.</param>
public sealed record AfterTurnsReport(SlopeReport Slope, MeasuredPairReport? Near, MeasuredPairReport? Far, double? Spread);

/// <summary>Two components along u and v with their covariance.</summary>
public sealed record MeasuredPairReport(double U, double V, double[][] Covariance);
