using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Visits;

/// <summary>The reasons that go with a visit's actions.</summary>
internal static class VisitWords
{
    public static string FreshMark => Get("centring.freshMark");

    public static string Corner((Length X, Length Y) place, int marks) => marks == 0
        ? Say("survey.begins", place.X.Millimetres, place.Y.Millimetres)
        : Say("survey.goesOn", place.X.Millimetres, place.Y.Millimetres);

    public static string Torn((Length X, Length Y) place) =>
        Say("survey.torn", place.X.Millimetres, place.Y.Millimetres);

    public static string Unsteady(int marks) =>
        Say("survey.unsteady", marks);

    public static string Within(VisitBed bed, Length greatest) =>
        Say("survey.within", greatest.Millimetres, bed.Tolerance.Millimetres);

    public static string Centred(MeasuredVector offset, VisitAperture aperture) =>
        Say("centring.within", offset.Vector.Magnitude, aperture.Tolerance.Millimetres);

    public static string Sideways(MeasuredVector offset, CardVector by) =>
        Say("centring.sideways", Math.Abs(offset.Vector.U), offset.Vector.U > 0 ? Get("right") : Get("left"), Math.Abs(by.U));

    public static string TooHigh(MeasuredVector offset, CardVector by) =>
        Say("centring.tooHigh", offset.Vector.V, by.V);

    public static string NoStack(Length height) =>
        Say("centring.tooHighNoStack", height.Millimetres);

    public static string TooLow(MeasuredVector offset) =>
        Say("centring.tooLow", -offset.Vector.V);

    public static string CentringOpen(MeasuredVector offset, VisitAperture aperture, Conformity verdict) =>
        Say("centring.open", offset.Vector.Magnitude, aperture.Tolerance.Millimetres, Percent(verdict));

    public static string NotCentred(int marks, VisitAperture aperture) =>
        Say("centring.notSettling", marks, aperture.Tolerance.Millimetres);

    public static string Done(VisitState state) =>
        (state.Skipped.Count == 0 ? Get("done") : Say("done.skipped", string.Join(Get("done.skippedSeparator"), state.Skipped.OrderBy(s => s.Key).Select(s => Say("done.skippedStep", Name(s.Key), s.Value)))))
        + (state.Survey?.Greatest is { } greatest ? Say("done.spread", greatest.Millimetres) : string.Empty)
        + (state.Centring?.Offset is { } offset ? Say("done.centred", offset.Vector.Magnitude) : string.Empty);

    private static string Name(VisitStep step) => step switch
    {
        VisitStep.Survey => Get("step.survey"),
        VisitStep.Centring => Get("step.centring"),
        _ => Say("step.leg", step.Name()),
    };

    private static string Name(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => Get("corner.nearLeft"),
        BedCorner.NearRight => Get("corner.nearRight"),
        BedCorner.FarLeft => Get("corner.farLeft"),
        _ => Get("corner.farRight"),
    };

    private static string Percent(Conformity verdict) => Say("percent", Math.Clamp(Math.Round(100 * verdict.Probability), 1, 99));

    /// <summary>Those that begin with the spread over the bed.</summary>
    public sealed class SpreadWords(VisitBed bed, Length greatest, Conformity verdict)
    {
        public string Repeat(BedCorner corner) =>
            Say("spread.repeat", Spread, bed.Tolerance.Millimetres, Percent(verdict), Name(corner));

        public string Skewed(BedCorner corner) =>
            Say("spread.skewed", Spread, Name(corner));

        public string NotSettling(int marks) =>
            Say("spread.notSettling", Spread, marks, bed.Tolerance.Millimetres);

        public string Slope(SlopeFinding slope) =>
            Say("spread.slope", Spread, slope.Leg, slope.Leg == 1 ? Get("carriage.gantry") : Get("carriage.head"), slope.Walk.U, slope.Walk.V);

        public string SlopeGone(SlopeFinding slope) =>
            Say("spread.slopeGone", Slope(slope), slope.Leg);

        public string LegMissing(SlopeFinding slope) =>
            Say("spread.slopeLegMissing", Slope(slope));

        public string Realign(TwistFinding twist, GantryEnd end) =>
            Say("spread.twistRealign", Twist(twist), end == GantryEnd.Near ? Get("end.near") : Get("end.far"), Name(twist.Corner.AtOtherEnd()));

        public string Shim(TwistFinding twist, ShimCorner shim, Length height) =>
            Say("spread.twistShim", Twist(twist), height.Millimetres, Name(shim.Corner), shim.Height.Value.Millimetres);

        public string Unshim(TwistFinding twist, Length less) =>
            Say("spread.twistUnshim", Twist(twist), less.Millimetres);

        public string CheckFrame(TwistFinding twist) =>
            Say("spread.twistCheckFrame", Twist(twist));

        public string NoStack(TwistFinding twist, ShimCorner shim) =>
            Say("spread.twistNoStack", Twist(twist), Name(shim.Corner), shim.Height.Value.Millimetres);

        private string Spread => Say("spread", greatest.Millimetres);

        private string Twist(TwistFinding twist) =>
            Say("spread.twist", Spread, Name(twist.Corner), Math.Abs(twist.Height.Value), twist.IsHigh ? Get("high") : Get("low"));
    }
}
