using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>Refusals about camera profiles and photos of the calibration board.</summary>
public static class CameraFailures
{
    public static readonly FailureCode Unreadable = new("CAMERA_UNREADABLE", FailureKind.BadInput);
    public static readonly FailureCode TooManyPhotos = new("CAMERA_MANY_PHOTOS", FailureKind.BadInput);
    public static readonly FailureCode LensesDiffer = new("CAMERA_LENSES_DIFFER", FailureKind.BadInput);

    /// <summary>Two photos are the same file.</summary>
    public static readonly FailureCode PhotoTwice = new("PHOTO_TWICE", FailureKind.BadInput);

    public static readonly FailureCode NameInvalid = new("CAMERA_NAME_INVALID", FailureKind.BadInput);

    /// <summary>A camera of this name is kept already.</summary>
    public static readonly FailureCode NameTaken = new("CAMERA_NAME_TAKEN", FailureKind.BadInput);

    /// <summary>As many cameras are kept as there may be.</summary>
    public static readonly FailureCode TooMany = new("TOO_MANY_CAMERAS", FailureKind.BadInput);

    /// <summary>As many calibrations are kept as there may be.</summary>
    public static readonly FailureCode TooManyCalibrations = new("TOO_MANY_CALIBRATIONS", FailureKind.BadInput);

    internal static Failure NotKept(long id) => new(StorageFailures.NotKept, KeptCameraTexts.Word("camera.notKept", id), KeptCameraTexts.Get("camera.notKeptHint"));

    internal static Failure NoCalibration(long id) => new(StorageFailures.NotKept, KeptCameraTexts.Word("calibration.notKept", id), KeptCameraTexts.Get("calibration.notKeptHint"));
}
