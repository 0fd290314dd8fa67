using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Survey;
using static MarkReader.Quantities.Texts<MarkReader.Application.Texts.AdviceTexts>;

namespace MarkReader.Application.Survey;

/// <summary>A survey's diagnosis and cure in sentences.</summary>
public static class SurveyWords
{
    public static string Corner(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => Get("corner.nearLeft"),
        BedCorner.NearRight => Get("corner.nearRight"),
        BedCorner.FarLeft => Get("corner.farLeft"),
        _ => Get("corner.farRight"),
    };

    public static string End(GantryEnd end) => end == GantryEnd.Near ? Get("end.near") : Get("end.far");

    public static string Diagnosis(SurveyDiagnosis diagnosis) => diagnosis switch
    {
        { HasEnoughData: false } => Get("diagnosis.notEnough"),
        { Findings.Count: 0 } => Get("diagnosis.nothing"),
        _ => string.Join(" ", diagnosis.Findings.Select((f, i) => (i == 0 ? "" : Get("diagnosis.besides")) + Finding(f))),
    };

    /// <summary>What to do; empty when there is nothing to do.</summary>
    public static string Cure(SurveyDiagnosis diagnosis) => diagnosis.Cure switch
    {
        ShimCorner shim => Say("cure.shim", shim.Height.Value.Millimetres, Corner(shim.Corner), shim.Height.Uncertainty.Millimetres),
        RealignLeg realign when diagnosis.First is TwistFinding twist =>
            Say("cure.realignTwist", End(realign.Gantry), Corner(twist.Corner.AtOtherEnd())),
        RealignLeg { Leg: 1 } => Get("cure.realignOne"),
        RealignLeg realign => Say("cure.realignTwo", End(realign.Gantry)),
        CheckFrame => Get("cure.checkFrame"),
        _ => "",
    };

    private static string Finding(SurveyFinding finding) => finding switch
    {
        SlopeFinding slope => Say("finding.slope", slope.Leg, slope.Leg == 1 ? Get("carriage.gantry") : Get("carriage.head"), slope.Walk.U, slope.Walk.V, slope.Slope.U, slope.Slope.V),
        TwistFinding twist => Twist(twist, twist.Height),
        _ => throw new ArgumentException("Unknown finding.", nameof(finding)),
    };

    private static string Twist(TwistFinding twist, Prediction height)
    {
        double weight = twist.CornerWeights[twist.Corner];
        BedCorner next = twist.CornerWeights.Where(c => c.Key != twist.Corner).MaxBy(c => c.Value).Key;
        string which = weight > 0.995 ? Get("finding.surely") : Say("finding.maybe", 100 * weight, Corner(next), 100 * twist.CornerWeights[next]);
        return Say("finding.twist", Corner(twist.Corner), Math.Abs(height.Value), twist.IsHigh ? Get("high") : Get("low"), height.Uncertainty, which);
    }
}
