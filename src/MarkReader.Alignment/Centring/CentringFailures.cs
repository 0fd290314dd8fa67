using MarkReader.Quantities;

namespace MarkReader.Alignment.Centring;

/// <summary>Refusals of centring.</summary>
public static class CentringFailures
{
    public static readonly FailureCode OffsetInvalid = new("CENTRING_OFFSET_INVALID", FailureKind.BadInput);
    public static readonly FailureCode ToleranceInvalid = new("CENTRING_TOLERANCE_INVALID", FailureKind.BadInput);
    public static readonly FailureCode SupportsInvalid = new("TUBE_SUPPORTS_INVALID", FailureKind.BadInput);
}
