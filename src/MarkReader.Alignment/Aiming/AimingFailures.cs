using MarkReader.Quantities;

namespace MarkReader.Alignment.Aiming;

/// <summary>Refusals of the tests of a leg's marks.</summary>
public static class AimingFailures
{
    public static readonly FailureCode OutlierMarkCount = new("OUTLIER_MARK_COUNT", FailureKind.BadInput);
    public static readonly FailureCode StraightnessStations = new("STRAIGHTNESS_STATIONS", FailureKind.BadInput);
    public static readonly FailureCode PivotRounds = new("PIVOT_ROUNDS", FailureKind.BadInput);
    public static readonly FailureCode PivotRoundsAlike = new("PIVOT_ROUNDS_ALIKE", FailureKind.NotMeasurable);
}
