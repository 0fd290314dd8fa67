using System.Globalization;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The reasons that go with a visit's actions.</summary>
internal static class VisitWords
{
    public const string FreshMark = "The target was moved. A fresh mark on clean tape shows where the beam enters now.";

    public static string Corner((Length X, Length Y) place, int marks) => marks == 0
        ? Say($"The legs are aligned. The corner survey begins at x {place.X.Millimetres:0.#}, y {place.Y.Millimetres:0.#} mm: a mark at each corner of the bed, on clean tape.")
        : Say($"The corner survey goes on at x {place.X.Millimetres:0.#}, y {place.Y.Millimetres:0.#} mm.");

    public static string Torn((Length X, Length Y) place) =>
        Say($"The two marks at x {place.X.Millimetres:0.#}, y {place.Y.Millimetres:0.#} mm lie farther apart than their uncertainties allow. A third one tells which of them is wrong; check that head and tape are firm.");

    public static string Unsteady(int marks) =>
        Say($"After {marks} marks of one survey they still contradict each other. Check that head, mirrors and tape are firm and that the marks' uncertainties are stated as they are, then give a disturbed event for leg 2 and go on.");

    public static string Within(VisitBed bed, Length greatest) =>
        Say($"The marks over the bed lie at most {greatest.Millimetres:0.00} mm apart, within {bed.Tolerance.Millimetres:0.##} mm.");

    public static string Centred(MeasuredVector offset, VisitAperture aperture) =>
        Say($"The steady mark lies {offset.Vector.Magnitude:0.00} mm from the aperture's centre, within {aperture.Tolerance.Millimetres:0.##} mm.");

    public static string Sideways(MeasuredVector offset, CardVector by) =>
        Say($"The steady mark lies {Math.Abs(offset.Vector.U):0.00} mm to the {(offset.Vector.U > 0 ? "right" : "left")} of the aperture's centre. Move the target's plate by {Math.Abs(by.U):0.00} mm that way; do not move the beam.");

    public static string TooHigh(MeasuredVector offset, CardVector by) =>
        Say($"The steady mark lies {offset.Vector.V:0.00} mm too high in the aperture. Put {by.V:0.00} mm of washers under the head's mount.");

    public static string NoStack(Length height) =>
        Say($"The steady mark lies {height.Millimetres:0.00} mm too high in the aperture, for which the stock has no washer or sheet thin enough. Add one to the stock, or allow a larger tolerance.");

    public static string TooLow(MeasuredVector offset) =>
        Say($"The steady mark lies {-offset.Vector.V:0.00} mm too low in the aperture. Raise the tube by that much at both ends, then align the legs again. Switch off, unplug and wait as the maker says before you touch the tube's mounts or wiring.");

    public static string CentringOpen(MeasuredVector offset, VisitAperture aperture, Conformity verdict) =>
        Say($"The steady mark lies {offset.Vector.Magnitude:0.00} mm from the aperture's centre; the chance that it is within {aperture.Tolerance.Millimetres:0.##} mm is {Percent(verdict)}. One more mark tells.");

    public static string NotCentred(int marks, VisitAperture aperture) =>
        Say($"After {marks} marks it is still open whether the beam is within {aperture.Tolerance.Millimetres:0.##} mm of the aperture's centre. Allow a larger tolerance, or measure the marks with less uncertainty.");

    public static string Done(VisitState state) =>
        (state.Skipped.Count == 0 ? "Everything that was asked for is within its tolerance." : $"Everything but what was skipped is within its tolerance. Skipped: {string.Join("; ", state.Skipped.OrderBy(s => s.Key).Select(s => $"{Name(s.Key)} ({s.Value})"))}.") + (state.Survey?.Greatest is { } greatest ? Say($" The marks over the bed lie at most {greatest.Millimetres:0.00} mm apart.") : string.Empty)
        + (state.Centring?.Offset is { } offset ? Say($" The steady mark is {offset.Vector.Magnitude:0.00} mm from the aperture's centre.") : string.Empty);

    private static string Name(VisitStep step) => step switch
    {
        VisitStep.Survey => "the corner survey",
        VisitStep.Centring => "centring",
        _ => $"leg {step.Name()}",
    };

    private static string Name(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => "near left",
        BedCorner.NearRight => "near right",
        BedCorner.FarLeft => "far left",
        _ => "far right",
    };

    private static string Percent(Conformity verdict) => Say($"{Math.Clamp(Math.Round(100 * verdict.Probability), 1, 99):0} %");

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>Those that begin with the spread over the bed.</summary>
    public sealed class SpreadWords(VisitBed bed, Length greatest, Conformity verdict)
    {
        public string Repeat(BedCorner corner) =>
            Say($"{Spread} The chance that it is within {bed.Tolerance.Millimetres:0.##} mm is {Percent(verdict)}; another mark at the {Name(corner)} corner tells most.");

        public string Skewed(BedCorner corner) =>
            Say($"{Spread} The sideways walk differs between the ends of the gantry's travel, which no twist of the frame explains: one mark may be wrong. Before anything is changed the mark at the {Name(corner)} corner is made once more.");

        public string NotSettling(int marks) =>
            Say($"{Spread} After {marks} marks it is still not decided against {bed.Tolerance.Millimetres:0.##} mm and no cause is found. Check that head, mirrors and tape are firm, or allow a larger tolerance.");

        public string Slope(SlopeFinding slope) =>
            Say($"{Spread} A slope is left in leg {slope.Leg}: over the {(slope.Leg == 1 ? "gantry" : "head")}'s travel the mark walks by u {slope.Walk.U:+0.00;-0.00} and v {slope.Walk.V:+0.00;-0.00} mm.");

        public string SlopeGone(SlopeFinding slope) =>
            Say($"{Slope(slope)} The marks of leg {slope.Leg} itself do not show it. Check its path lengths and the bed's travels, and that no tape moved; then survey again.");

        public string LegMissing(SlopeFinding slope) =>
            Say($"{Slope(slope)} The machine was given without that leg: align it, then survey again.");

        public string Realign(TwistFinding twist, GantryEnd end) =>
            Say($"{Twist(twist)} A corner cannot be lowered: align leg 2 again with the gantry at the {(end == GantryEnd.Near ? "near" : "far")} end of its travel. The {Name(twist.Corner.AtOtherEnd())} corner's mark then stands too high, and that corner can be shimmed.");

        public string Shim(TwistFinding twist, ShimCorner shim, Length height) =>
            Say($"{Twist(twist)} Put {height.Millimetres:0.00} mm of shims under the {Name(shim.Corner)} corner of the gantry's frame ({shim.Height.Value.Millimetres:0.00} mm wanted); the marks after it show how the machine answers. Switch off and unplug before you work on the frame.");

        public string Unshim(TwistFinding twist, Length less) =>
            Say($"{Twist(twist)} This visit has put shims there: take {less.Millimetres:0.00} mm of them out, or the nearest that they allow, and say what was taken. Switch off and unplug before you work on the frame.");

        public string CheckFrame(TwistFinding twist) =>
            Say($"{Twist(twist)} Shims have not cured it, or would have to be too high: see how the gantry lies on its rails and whether mirror two rolls with it.");

        public string NoStack(TwistFinding twist, ShimCorner shim) =>
            Say($"{Twist(twist)} The {Name(shim.Corner)} corner needs a shim of {shim.Height.Value.Millimetres:0.00} mm, for which the stock has no washer or sheet thin enough. Add one to the stock, or allow a larger tolerance.");

        private string Spread => Say($"The marks over the bed lie up to {greatest.Millimetres:0.00} mm apart.");

        private string Twist(TwistFinding twist) =>
            Say($"{Spread} The frame is twisted: at the {Name(twist.Corner)} corner the mark stands {Math.Abs(twist.Height.Value):0.00} mm too {(twist.IsHigh ? "high" : "low")} against the other three.");
    }
}
