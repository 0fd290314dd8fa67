using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>Refusals about camera profiles and photos of the calibration board.</summary>
public static class CameraFailures
{
    public static readonly FailureCode Unreadable = new("CAMERA_UNREADABLE", FailureKind.BadInput);
    public static readonly FailureCode TooManyPhotos = new("CAMERA_MANY_PHOTOS", FailureKind.BadInput);
    public static readonly FailureCode LensesDiffer = new("CAMERA_LENSES_DIFFER", FailureKind.BadInput);
    public static readonly FailureCode NameInvalid = new("CAMERA_NAME_INVALID", FailureKind.BadInput);
}
