using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Survey;

namespace MarkReader.Application.Survey;

/// <summary>A survey's diagnosis and cure in sentences.</summary>
public static class SurveyWords
{
    public static string Corner(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => "near left",
        BedCorner.NearRight => "near right",
        BedCorner.FarLeft => "far left",
        _ => "far right",
    };

    public static string End(GantryEnd end) => end == GantryEnd.Near ? "near" : "far";

    public static string Diagnosis(SurveyDiagnosis diagnosis) => diagnosis switch
    {
        { HasEnoughData: false } => "There are not enough data: the places of the marks do not determine slopes and twist.",
        { Findings.Count: 0 } => "Nothing is significant: slopes and twist are no larger than the marks' uncertainties explain.",
        _ => string.Join(" ", diagnosis.Findings.Select((f, i) => (i == 0 ? "" : "Besides: ") + Finding(f))),
    };

    /// <summary>What to do; empty when there is nothing to do.</summary>
    public static string Cure(SurveyDiagnosis diagnosis) => diagnosis.Cure switch
    {
        ShimCorner shim => FormattableString.Invariant(
            $"Put shims of {shim.Height.Value.Millimetres:0.00} mm under the {Corner(shim.Corner)} corner of the gantry's frame and survey again on clean tape. How the mark answers a shim differs between machines (standard uncertainty of the height {shim.Height.Uncertainty.Millimetres:0.00} mm); the second survey shows it."),
        RealignLeg realign when diagnosis.First is TwistFinding twist =>
            $"Shims cannot raise a mark that is too low: align leg 2 again with the gantry at the {End(realign.Gantry)} end of its travel, and survey again on clean tape. The mark at the {Corner(twist.Corner.AtOtherEnd())} corner then stands too high, and that corner can be shimmed.",
        RealignLeg { Leg: 1 } => "Align leg 1 again, then leg 2, and survey again on clean tape: a change to leg 1 makes both stale.",
        RealignLeg realign => $"Align leg 2 again with the gantry at the {End(realign.Gantry)} end of its travel, and survey again on clean tape.",
        CheckFrame => "Shims are no cure here: see how the gantry lies on its rails and whether mirror two rolls with it.",
        _ => "",
    };

    private static string Finding(SurveyFinding finding) => finding switch
    {
        SlopeFinding slope => FormattableString.Invariant(
            $"A slope is left in leg {slope.Leg}: over the {(slope.Leg == 1 ? "gantry" : "head")}'s travel the mark walks by u {slope.Walk.U:+0.00;-0.00;0.00} mm and v {slope.Walk.V:+0.00;-0.00;0.00} mm (slope u {slope.Slope.U:+0.00;-0.00;0.00} mrad, v {slope.Slope.V:+0.00;-0.00;0.00} mrad)."),
        TwistFinding twist => Twist(twist, twist.Height),
        _ => throw new ArgumentException("Unknown finding.", nameof(finding)),
    };

    private static string Twist(TwistFinding twist, Prediction height)
    {
        double weight = twist.CornerWeights[twist.Corner];
        BedCorner next = twist.CornerWeights.Where(c => c.Key != twist.Corner).MaxBy(c => c.Value).Key;
        string which = weight > 0.995 ? "more than 99 %" : FormattableString.Invariant($"{100 * weight:0} %; next the {Corner(next)} one with {100 * twist.CornerWeights[next]:0} %");
        return FormattableString.Invariant(
            $"The frame is twisted: at the {Corner(twist.Corner)} corner the mark stands {Math.Abs(height.Value):0.00} mm too {(twist.IsHigh ? "high" : "low")} against the other three (standard uncertainty {height.Uncertainty:0.00} mm; probability that it is this corner {which}).");
    }
}
