using MarkReader.Quantities;

namespace MarkReader.Cameras.Calibration;

/// <summary>What a calibration refuses.</summary>
public static class CalibrationFailures
{
    public static readonly FailureCode TooFewViews = new("CAMERA_FEW_VIEWS", FailureKind.NotMeasurable);

    public static readonly FailureCode Sizes = new("CAMERA_SIZES_DIFFER", FailureKind.BadInput);

    public static readonly FailureCode Undetermined = new("CAMERA_UNDETERMINED", FailureKind.NotMeasurable);
}
