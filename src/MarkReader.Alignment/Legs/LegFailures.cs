using MarkReader.Quantities;

namespace MarkReader.Alignment.Legs;

/// <summary>Refusals of a leg's inputs and of its fit.</summary>
public static class LegFailures
{
    public static readonly FailureCode PathNotANumber = Bad("PATH_NOT_A_NUMBER");
    public static readonly FailureCode PathNegative = Bad("PATH_NEGATIVE");
    public static readonly FailureCode PathZero = Bad("PATH_ZERO");
    public static readonly FailureCode PathTooLong = Bad("PATH_TOO_LONG");
    public static readonly FailureCode PathTooShort = Bad("PATH_TOO_SHORT");
    public static readonly FailureCode PathsEqual = Bad("PATHS_EQUAL");
    public static readonly FailureCode PathsSwapped = Bad("PATHS_SWAPPED");
    public static readonly FailureCode TravelTooShort = Bad("TRAVEL_TOO_SHORT");
    public static readonly FailureCode TravelUncertain = Bad("TRAVEL_UNCERTAIN");
    public static readonly FailureCode PathUncertaintyInvalid = Bad("PATH_UNCERTAINTY_INVALID");
    public static readonly FailureCode IncidenceInvalid = Bad("INCIDENCE_INVALID");
    public static readonly FailureCode PivotOffsetInvalid = Bad("PIVOT_OFFSET_INVALID");
    public static readonly FailureCode PivotUncertaintyInvalid = Bad("PIVOT_UNCERTAINTY_INVALID");
    public static readonly FailureCode TooFewStations = Bad("TOO_FEW_STATIONS");
    public static readonly FailureCode MarkUncertaintyZero = Bad("MARK_UNCERTAINTY_ZERO");
    public static readonly FailureCode NoFit = new("AIM_NO_FIT", FailureKind.NotMeasurable);

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
