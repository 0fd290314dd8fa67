using MarkReader.Quantities;

namespace MarkReader.Application.Screws;

/// <summary>Refusals of a slope and of a frame as people give them.</summary>
public static class ScrewInputFailures
{
    public static readonly FailureCode SlopeInvalid = Bad("SLOPE_INVALID");
    public static readonly FailureCode SlopeUncertaintyInvalid = Bad("SLOPE_UNCERTAINTY_INVALID");
    public static readonly FailureCode MarkInvalid = Bad("SCREW_MARK_INVALID");
    public static readonly FailureCode MarkUncertaintyInvalid = Bad("SCREW_MARK_UNCERTAINTY_INVALID");
    public static readonly FailureCode PathsMissing = Bad("SCREW_PATHS_MISSING");
    public static readonly FailureCode ToleranceInvalid = Bad("SCREW_TOLERANCE_INVALID");
    public static readonly FailureCode ComponentsUnreadable = Bad("COMPONENTS_UNREADABLE");
    public static readonly FailureCode CornerUnknown = Bad("FRAME_CORNER_UNKNOWN");
    public static readonly FailureCode ScrewUnreadable = Bad("FRAME_SCREW_UNREADABLE");
    public static readonly FailureCode ResponseUnreadable = Bad("KNOWN_RESPONSE_UNREADABLE");

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
