using MarkReader.Quantities;

namespace MarkReader.Alignment.NextPulse;

/// <summary>Refusals of the plan of the next pulse.</summary>
public static class NextPulseFailures
{
    public static readonly FailureCode StationCount = new("NEXT_PULSE_STATION_COUNT", FailureKind.BadInput);
    public static readonly FailureCode PulseUncertainty = new("NEXT_PULSE_UNCERTAINTY", FailureKind.BadInput);
}
