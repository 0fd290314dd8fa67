using MarkReader.Quantities;

namespace MarkReader.Alignment.NearFarBelow;

/// <summary>Refusals of leg 3.</summary>
public static class SquarenessFailures
{
    public static readonly FailureCode ToleranceInvalid = new("SQUARENESS_TOLERANCE_INVALID", FailureKind.BadInput);
    public static readonly FailureCode AxisInvalid = new("SQUARENESS_AXIS_INVALID", FailureKind.BadInput);
}
