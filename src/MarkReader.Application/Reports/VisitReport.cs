using System.Text.Json.Serialization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Survey;
using static MarkReader.Quantities.Texts<MarkReader.Application.Texts.AdviceTexts>;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a visit's next action: mm, mrad, turns; covariances mm².</summary>
/// <param name="Expected">Where the next mark should lie; null when none is asked for or nothing can be said yet.</param>
/// <param name="State">By leg's name, and survey, centring and machine.</param>
/// <param name="Step">Name of the step that the action belongs to: 1, 2, survey, centring, 3; null when the visit is done.</param>
/// <param name="Skipped">Steps that were skipped, with the reasons.</param>
/// <param name="Stale">Steps whose marks count no longer; a fresh mark on clean tape is asked for in its time.</param>
public sealed record VisitReport(
    VisitActionReport Action,
    string Reason,
    VisitExpectedReport? Expected,
    IReadOnlyDictionary<string, object> State,
    IReadOnlyList<WarningReport> Warnings,
    string? Step,
    IReadOnlyDictionary<string, string> Skipped,
    IReadOnlyList<string> Stale)
{
    public static VisitReport From(VisitAdvice advice)
    {
        Dictionary<string, object> state = [];
        foreach ((string name, VisitLegState leg) in advice.State.Legs)
            state.Add(name, VisitLegReport.From(leg));
        if (advice.State.Survey is { } survey)
            state.Add("survey", VisitSurveyReport.From(survey));
        if (advice.State.Centring is { } centring)
            state.Add("centring", VisitCentringReport.From(centring));
        state.Add("machine", new VisitVerdictReport(SurveyReport.Name(advice.State.Machine.Verdict), advice.State.Machine.Probability));
        return new(
            VisitActionReport.From(advice.Action), advice.Reason, VisitExpectedReport.From(advice.Expected), state, WarningReport.From(advice.Warnings),
            advice.State.Current?.Name(), advice.State.Skipped.ToDictionary(s => s.Key.Name(), s => s.Value), [.. advice.State.Stale.Order().Select(s => s.Name())]);
    }
}

/// <summary>An action: fields that do not belong to it are left out.</summary>
/// <param name="Kind">fire, turn, survey, shim, moveTarget, raiseTube, realign, done, stop.</param>
/// <param name="Gantry">Of a pulse on leg 2: where the gantry stands, from its near end.</param>
/// <param name="Turns">Clockwise positive, facing the knob.</param>
/// <param name="At">Of a realignment: the end of the gantry's travel, near or far.</param>
public sealed record VisitActionReport(
    string Kind,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Leg = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Path = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Gantry = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Screw = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Turns = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? X = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Y = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Corner = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Height = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? U = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? V = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? At = null)
{
    internal static VisitActionReport From(VisitAction action) => action switch
    {
        VisitAction.Fire fire => new("fire", fire.Leg, fire.Path, fire.Gantry?.Millimetres),
        VisitAction.Turn turn => new("turn", turn.Leg, Screw: turn.Screw, Turns: turn.Turns),
        VisitAction.Survey survey => new("survey", X: survey.X.Millimetres, Y: survey.Y.Millimetres),
        VisitAction.Shim shim => new("shim", Corner: SurveyReport.Name(shim.Corner), Height: shim.Height.Millimetres),
        VisitAction.MoveTarget move => new("moveTarget", U: move.By.U, V: move.By.V),
        VisitAction.RaiseTube raise => new("raiseTube", Height: raise.Height.Millimetres),
        VisitAction.Realign realign => new("realign", realign.Leg, At: SurveyReport.Name(realign.At)),
        VisitAction.Done => new("done"),
        _ => new("stop"),
    };
}

/// <summary>Where the next mark should lie.</summary>
/// <param name="Branches">The places one by one while the sense of a screw is open; empty otherwise.</param>
public sealed record VisitExpectedReport(double U, double V, double[][] Covariance, IReadOnlyList<VisitBranchReport> Branches)
{
    internal static VisitExpectedReport? From(ExpectedPlace? expected) => expected is null ? null : new(
        expected.Mark.Point.U,
        expected.Mark.Point.V,
        MarkReport.Matrix(expected.Mark.Covariance),
        [.. expected.Branches.Select(b => new VisitBranchReport(b.Probability, b.Mark.Point.U, b.Mark.Point.V, MarkReport.Matrix(b.Mark.Covariance)))]);
}

public sealed record VisitBranchReport(double Probability, double U, double V, double[][] Covariance);

/// <summary>A verdict and a lower bound of its conformance probability.</summary>
public sealed record VisitVerdictReport(string Verdict, double Probability);

/// <summary>A leg: slope in mrad and aim point in mm are null until two stations have told them.</summary>
/// <param name="Responses">What one turn clockwise of each screw does to the slope, as learned. Those with a known sense can be given at the next visit as frame.response.</param>
public sealed record VisitLegReport(string Verdict, double Probability, SlopeReport? Slope, VisitAimReport? Aim, IReadOnlyList<VisitResponseReport> Responses)
{
    internal static VisitLegReport From(VisitLegState leg) => new(
        SurveyReport.Name(leg.State.Verdict),
        leg.State.Spread.Probability,
        leg.State.Slope is { } slope ? new(slope.U, slope.V, MarkReport.Matrix(slope.Covariance)) : null,
        leg.State.Aim is { } aim ? new(aim.Point.U, aim.Point.V, MarkReport.Matrix(aim.Covariance)) : null,
        [.. leg.Responses.Select(r => new VisitResponseReport(r.Screw, r.U, r.V, Math.Sqrt((r.Covariance.Uu + r.Covariance.Vv) / 2), r.SenseProbability))]);
}

public sealed record VisitAimReport(double U, double V, double[][] Covariance);

/// <summary>mrad per turn, in the likelier sense.</summary>
/// <param name="Uncertainty">Standard uncertainty of each component, that sense taken as right.</param>
public sealed record VisitResponseReport(string Screw, double U, double V, double Uncertainty, double SenseProbability);

/// <summary>The corner survey.</summary>
/// <param name="Spread">The greatest distance of two fitted marks, mm; null while the places are not enough.</param>
/// <param name="ShimResponse">mm of mark for one mm of shim, as learned.</param>
public sealed record VisitSurveyReport(
    string Verdict, double Probability, int Marks, double? Spread, string Diagnosis, IReadOnlyList<SurveyFindingReport> Findings, double ShimResponse, double ShimResponseUncertainty)
{
    internal static VisitSurveyReport From(SurveyState survey) => new(
        SurveyReport.Name(survey.Spread.Verdict),
        survey.Spread.Probability,
        survey.Marks,
        survey.Greatest?.Millimetres,
        survey.Diagnosis is { } diagnosis ? SurveyWords.Diagnosis(diagnosis) : Get("diagnosis.noMark"),
        [.. (survey.Diagnosis?.Findings ?? []).Select(SurveyFindingReport.From)],
        survey.Response.Mean,
        survey.Response.StandardDeviation);
}

/// <summary>The steady mark from the aperture's centre, mm; null until it is measured.</summary>
public sealed record VisitCentringReport(string Verdict, double Probability, VisitAimReport? Offset)
{
    internal static VisitCentringReport From(CentringState centring) => new(
        SurveyReport.Name(centring.Verdict.Verdict),
        centring.Verdict.Probability,
        centring.Offset is { } o ? new(o.Vector.U, o.Vector.V, MarkReport.Matrix(o.Covariance)) : null);
}
