using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>Refusals of a visit's machine and of its events.</summary>
public static class VisitFailures
{
    public static readonly FailureCode LegsInvalid = Bad("VISIT_LEGS_INVALID");
    public static readonly FailureCode LegUnknown = Bad("LEG_UNKNOWN");
    public static readonly FailureCode BedInvalid = Bad("VISIT_BED_INVALID");
    public static readonly FailureCode ApertureInvalid = Bad("VISIT_APERTURE_INVALID");
    public static readonly FailureCode EventInvalid = Bad("EVENT_INVALID");
    public static readonly FailureCode TooManyEvents = Bad("TOO_MANY_EVENTS");

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
