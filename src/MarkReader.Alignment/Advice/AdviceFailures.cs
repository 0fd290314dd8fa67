using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>Refusals of a leg's description and of its events.</summary>
public static class AdviceFailures
{
    public static readonly FailureCode ToleranceInvalid = Bad("LEG_TOLERANCE_INVALID");
    public static readonly FailureCode TargetRadiusInvalid = Bad("TARGET_RADIUS_INVALID");
    public static readonly FailureCode HabitInvalid = Bad("SCREW_HABIT_INVALID");
    public static readonly FailureCode KnownResponseInvalid = Bad("KNOWN_RESPONSE_INVALID");
    public static readonly FailureCode ScrewUnknown = Bad("SCREW_UNKNOWN");
    public static readonly FailureCode TurnsInvalid = Bad("TURNS_INVALID");
    public static readonly FailureCode MarkInvalid = Bad("MARK_INVALID");
    public static readonly FailureCode MarkUncertaintyInvalid = Bad("MARK_UNCERTAINTY_INVALID");
    public static readonly FailureCode TooManyEvents = Bad("TOO_MANY_EVENTS");
    public static readonly FailureCode TooManyStations = Bad("TOO_MANY_STATIONS");
    public static readonly FailureCode BeamImplausible = new("BEAM_IMPLAUSIBLE", FailureKind.NotMeasurable);

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
