using System.Globalization;
using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Quantities;

namespace MarkReader.Practice;

/// <summary>What the practice machine refuses, and the pulses that leave no mark.</summary>
public static class PracticeFailures
{
    public static readonly FailureCode ScrewUnknown = new("SCREW_UNKNOWN", FailureKind.BadInput);
    public static readonly FailureCode ScrewAtItsEnd = new("SCREW_AT_ITS_END", FailureKind.BadInput);
    public static readonly FailureCode ShimNotThere = new("SHIM_NOT_THERE", FailureKind.BadInput);
    public static readonly FailureCode ShimTooThick = new("SHIM_TOO_THICK", FailureKind.BadInput);
    public static readonly FailureCode TubeAtItsEnd = new("TUBE_AT_ITS_END", FailureKind.BadInput);
    public static readonly FailureCode TargetAtItsEnd = new("TARGET_AT_ITS_END", FailureKind.BadInput);
    public static readonly FailureCode StationOutsideTravel = new("STATION_OUTSIDE_TRAVEL", FailureKind.BadInput);
    public static readonly FailureCode PulseTooWeak = new("PULSE_TOO_WEAK", FailureKind.NotMeasurable);

    private static readonly FailureCode[] s_lost =
        [.. Enum.GetValues<BeamPlace>().Select(p => new FailureCode("BEAM_LOST_AT_" + Upper(p.ToString()), FailureKind.NotMeasurable))];

    /// <summary>The code of a pulse that was lost at this place: BEAM_LOST_AT_MIRROR_ONE and so on.</summary>
    public static FailureCode LostAt(BeamPlace place) => s_lost[(int)place];

    internal static Failure NoSuchScrew(string name, IReadOnlyList<string> known) =>
        new(ScrewUnknown, $"the frame has no screw \"{name}\"", $"name one of {string.Join(", ", known)}");

    internal static Failure AtItsEnd(string name) =>
        new(ScrewAtItsEnd, $"screw {name} would be turned beyond the end of its thread", "turn it back and set the mirror with the other screws, or seat the frame anew");

    internal static Failure NoShimsToTakeAway(BedCorner corner, Length there) =>
        new(ShimNotThere, $"the {Words(corner)} corner has shims of {Mm(there.Millimetres)} only", "a corner cannot be lowered below its own height; raise the others or align leg 2 at the other end");

    internal static Failure TooManyShims(BedCorner corner) =>
        new(ShimTooThick, $"more than {Mm(BedFrame.MostMillimetres)} of shims under the {Words(corner)} corner", "give a height in mm");

    internal static Failure TubeTooFar(TubeEnd end) =>
        new(TubeAtItsEnd, $"the tube's {(end == TubeEnd.Front ? "front" : "rear")} support would stand more than {Mm(BedFrame.MostMillimetres)} away from mirror one's height", "give a height in mm");

    internal static Failure TargetTooFar() =>
        new(TargetAtItsEnd, $"the target would stand more than {Mm(PracticeMachine.TargetReach)} from its first place", "give the displacement in mm");

    internal static Failure OutsideTravel(string axis, double place, double travel) =>
        new(StationOutsideTravel, $"{axis} = {Mm(place)} is outside the travel of {Mm(travel)}", $"give a place from 0 to {Mm(travel)}");

    internal static Failure NoDrop(double drop) =>
        new(StationOutsideTravel, $"a tape {Mm(drop)} below the nozzle cannot be reached", "give a distance of more than 0 and at most 2000 mm");

    internal static Failure TooWeak() =>
        new(PulseTooWeak, "the pulse leaves no mark on the tape", "use a longer or stronger pulse");

    internal static Failure Lost(BeamPlace place, double? offset, double radius) => new(
        LostAt(place),
        offset is { } o ? $"the beam passes {Words(place)} {Mm(o)} from its middle and is lost (radius {Mm(radius)})" : $"the beam does not reach {Words(place)}",
        "turn back the last screw, or fire at a nearer station");

    /// <summary>The place in the trade's words.</summary>
    public static string Words(BeamPlace place) => place switch
    {
        BeamPlace.MirrorOne => "mirror one",
        BeamPlace.MirrorTwo => "mirror two",
        BeamPlace.HeadEntry => "the head's entry hole",
        BeamPlace.MirrorThree => "mirror three",
        BeamPlace.Lens => "the lens",
        BeamPlace.Nozzle => "the nozzle",
        BeamPlace.Tape => "the tape",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "No such place."),
    };

    private static string Words(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => "near left",
        BedCorner.NearRight => "near right",
        BedCorner.FarLeft => "far left",
        _ => "far right",
    };

    private static string Upper(string name) =>
        string.Concat(name.Select((c, i) => (i > 0 && char.IsUpper(c) ? "_" : "") + char.ToUpperInvariant(c)));

    private static string Mm(double value) => value.ToString("0.###", CultureInfo.InvariantCulture) + " mm";
}
