using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Models;
using MarkReader.Cameras.Texts;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Profiles;

/// <summary>What is known of one lens of one camera: its model, how sure it is, and by what its photos are told.</summary>
/// <param name="Name">The user's name for it.</param>
/// <param name="Made">When the board was photographed or the profile was worked out.</param>
/// <param name="Traits">What the calibration's photos said of camera and lens.</param>
/// <param name="Camera">In the sensor's frame.</param>
/// <param name="StandardUncertainties">Of fx, fy, cx, cy (px), k1, k2, k3, p1, p2.</param>
/// <param name="LensDoubtPx">Largest standard uncertainty of a place in the photo that no homography takes up, px.</param>
/// <param name="ResidualPx">Root mean square residual of the calibration, px.</param>
/// <param name="Views">Photos used.</param>
public sealed record CameraProfile(
    string Name,
    DateTimeOffset Made,
    CameraTraits Traits,
    CameraModel Camera,
    IReadOnlyList<double> StandardUncertainties,
    double LensDoubtPx,
    double ResidualPx,
    int Views)
{
    /// <summary>Intrinsic parameters.</summary>
    public const int Parameters = 9;

    /// <summary>Relative difference of two aspect ratios that rounding to whole pixels explains.</summary>
    private const double SameAspect = 0.004;

    public static CameraProfile Of(string name, DateTimeOffset made, CameraTraits traits, CalibratedCamera found)
    {
        Matrix<double> covariance = found.Covariance.SubMatrix(0, Parameters, 0, Parameters);
        return new(name, made, traits, found.Camera, [.. found.StandardUncertainties.Take(Parameters)], LensDoubt.Largest(found.Camera, covariance), found.ResidualPx, found.Views.Count);
    }

    /// <summary>The camera for a photo in the sensor's frame, rescaled when the photo is a smaller or larger picture of the same field; refused when it shows another field or is of another lens.</summary>
    public Outcome<CameraModel> For(CameraTraits photo)
    {
        if (Misfit(photo) is { } why)
            return new Failure(ProfileFailures.Misfit, CalibrationTexts.Word("cameraProfile.cameraProfileDoesNotFit", Name, why), CalibrationTexts.Get("cameraProfile.sendPhotoAsCameraStored"));
        return Camera.Photo == photo.Sensor ? Camera : Camera.Resized(photo.Sensor);
    }

    /// <summary>Why the profile does not fit a photo, as a clause; null when it fits.</summary>
    public string? Misfit(CameraTraits photo)
    {
        if (photo.Zoom != Traits.Zoom)
            return CalibrationTexts.Get("cameraProfile.photoWasZoomed");
        if (Traits.Tell && photo.Tell && !Traits.SameLens(photo))
            return CalibrationTexts.Get("cameraProfile.photoAnotherCameraOrLens");
        (int width, int height) = (photo.Sensor.Width, photo.Sensor.Height);
        return Math.Abs(((double)width * Camera.Photo.Height / ((double)height * Camera.Photo.Width)) - 1) > SameAspect
            ? CalibrationTexts.Say("cameraProfile.photoXPxProfileX", width, height, Camera.Photo.Width, Camera.Photo.Height)
            : null;
    }
}
