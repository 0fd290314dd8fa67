using System.Globalization;
using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Texts;
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
        new(ScrewUnknown, PracticeTexts.Word("practiceFailures.frameHasNoScrew", name), PracticeTexts.Word("practiceFailures.nameOne", string.Join(", ", known)));

    internal static Failure AtItsEnd(string name) =>
        new(ScrewAtItsEnd, PracticeTexts.Word("practiceFailures.screwWouldBeTurnedBeyond", name), PracticeTexts.Get("practiceFailures.turnBackAndSetMirror"));

    internal static Failure NoShimsToTakeAway(BedCorner corner, Length there) =>
        new(ShimNotThere, PracticeTexts.Word("practiceFailures.cornerHasShimsOnly", Words(corner), Mm(there.Millimetres)), PracticeTexts.Get("practiceFailures.cornerCannotBeLoweredBelow"));

    internal static Failure TooManyShims(BedCorner corner) =>
        new(ShimTooThick, PracticeTexts.Word("practiceFailures.moreThanShimsUnderCorner", Mm(BedFrame.MostMillimetres), Words(corner)), PracticeTexts.Get("practiceFailures.giveHeightInMm"));

    internal static Failure TubeTooFar(TubeEnd end) =>
        new(TubeAtItsEnd, PracticeTexts.Word("practiceFailures.tubeSupportWouldStandMore", end == TubeEnd.Front ? "front" : "rear", Mm(BedFrame.MostMillimetres)), PracticeTexts.Get("practiceFailures.giveHeightInMm"));

    internal static Failure TargetTooFar() =>
        new(TargetAtItsEnd, PracticeTexts.Word("practiceFailures.targetWouldStandMoreThan", Mm(PracticeMachine.TargetReach)), PracticeTexts.Get("practiceFailures.giveDisplacementInMm"));

    internal static Failure OutsideTravel(string axis, double place, double travel) =>
        new(StationOutsideTravel, PracticeTexts.Word("practiceFailures.outsideTravel", axis, Mm(place), Mm(travel)), PracticeTexts.Word("practiceFailures.givePlaceFrom", Mm(travel)));

    internal static Failure NoDrop(double drop) =>
        new(StationOutsideTravel, PracticeTexts.Word("practiceFailures.tapeBelowNozzleCannotBe", Mm(drop)), PracticeTexts.Get("practiceFailures.giveDistanceMoreThanAnd"));

    internal static Failure TooWeak() =>
        new(PulseTooWeak, PracticeTexts.Get("practiceFailures.pulseLeavesNoMarkOn"), PracticeTexts.Get("practiceFailures.useLongerOrStrongerPulse"));

    internal static Failure Lost(BeamPlace place, double? offset, double radius) => new(
        LostAt(place),
        offset is { } o ? PracticeTexts.Say("practiceFailures.beamPassesFromMiddleAnd", Words(place), Mm(o), Mm(radius)) : PracticeTexts.Say("practiceFailures.beamDoesNotReach", Words(place)),
        PracticeTexts.Get("practiceFailures.turnBackLastScrewOr"));

    /// <summary>The place in the trade's words.</summary>
    public static string Words(BeamPlace place) => place switch
    {
        BeamPlace.MirrorOne => PracticeTexts.Get("practiceFailures.mirrorOne"),
        BeamPlace.MirrorTwo => PracticeTexts.Get("practiceFailures.mirrorTwo"),
        BeamPlace.HeadEntry => PracticeTexts.Get("practiceFailures.headEntryHole"),
        BeamPlace.MirrorThree => PracticeTexts.Get("practiceFailures.mirrorThree"),
        BeamPlace.Lens => PracticeTexts.Get("practiceFailures.lens"),
        BeamPlace.Nozzle => PracticeTexts.Get("practiceFailures.nozzle"),
        BeamPlace.Tape => PracticeTexts.Get("practiceFailures.tape"),
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "No such place."),
    };

    private static string Words(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => PracticeTexts.Get("practiceFailures.nearLeft"),
        BedCorner.NearRight => PracticeTexts.Get("practiceFailures.nearRight"),
        BedCorner.FarLeft => PracticeTexts.Get("practiceFailures.farLeft"),
        _ => PracticeTexts.Get("practiceFailures.farRight"),
    };

    private static string Upper(string name) =>
        string.Concat(name.Select((c, i) => (i > 0 && char.IsUpper(c) ? "_" : "") + char.ToUpperInvariant(c)));

    private static string Mm(double value) => value.ToString("0.###", CultureInfo.InvariantCulture) + " mm";
}
