using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>Which camera profile a photo is measured with.</summary>
/// <param name="Lens">Null for none.</param>
/// <param name="Profile">Its name.</param>
/// <param name="Unfit">Why no profile is used although some are kept.</param>
internal sealed record LensChoice(KnownLens? Lens, string? Profile, Warning? Unfit)
{
    /// <summary>Code of the warning that the card shows another lens.</summary>
    public const string Differs = "cameraDiffers";

    private static readonly LensChoice s_none = new(null, null, null);

    /// <summary>The profile that the user named, or else a known one of the photo's camera and lens, or none.</summary>
    public static Outcome<LensChoice> For(PhotoHeader header, MeasureOptions options)
    {
        CameraTraits photo = TraitsOf(header);
        PhotoTurn? turn = PhotoTurn.OfOrientation(header.Exif.Orientation);
        if (options.Camera is { } named)
            return Fit(named, photo, turn);
        CameraProfile[] telling = [.. options.KnownCameras.Where(p => p.Traits.Tell)];
        if (telling.Length == 0)
            return s_none;
        if (!photo.Tell)
            return None(PhotoWarningCodes.CameraUnnamed, ImagingTexts.Get("lensChoice.photoNamesNoCamera"));
        if (telling.LastOrDefault(p => p.Traits.SameLens(photo)) is { } known)
            return Fit(known, photo, turn).TryGet(out LensChoice? choice, out _) ? choice : None("cameraUnfit", ImagingTexts.Say("lensChoice.cameraProfileWasNotUsed", known.Name, Why(known, photo, turn)!));
        if (telling.LastOrDefault(p => p.Traits.SameOptics(photo)) is { } zoomed)
            return None("cameraZoomed", ImagingTexts.Say("lensChoice.photoWasZoomed", zoomed.Name));
        return telling.LastOrDefault(p => p.Traits.ModelDigest == photo.ModelDigest) is { } other ? None("cameraOtherLens", ImagingTexts.Say("lensChoice.otherLensOfCamera", other.Name)) : s_none;
    }

    /// <summary>What the file says of camera and lens.</summary>
    public static CameraTraits TraitsOf(PhotoHeader header) => new(
        new(header.StoredWidth, header.StoredHeight), header.Exif.FocalLength, header.Exif.FocalLength35, header.Exif.Zoom, header.Exif.ModelDigest);

    /// <param name="differs">Whether the card shows another lens, so that the profile says nothing of the photo.</param>
    public IEnumerable<Warning> Warnings(bool differs)
    {
        if (Unfit is not null)
            yield return Unfit;
        if (Profile is not null && differs)
            yield return new(Differs, ImagingTexts.Say("lensChoice.cardShowsAnotherLensThan", Profile));
    }

    private static LensChoice None(string code, string why) => new(null, null, new(code, why));

    private static string? Why(CameraProfile profile, CameraTraits photo, PhotoTurn? turn) => turn is null ? ImagingTexts.Get("lensChoice.photoMirrored") : profile.Misfit(photo);

    private static Outcome<LensChoice> Fit(CameraProfile profile, CameraTraits photo, PhotoTurn? turn)
    {
        if (turn is null)
            return new Failure(ProfileFailures.Misfit, ImagingTexts.Word("lensChoice.cameraProfileDoesNotFit", profile.Name), ImagingTexts.Get("common.turnOffMirroringInCamera"));
        return profile.For(photo).TryGet(out CameraModel? camera, out Failure? failure)
            ? new LensChoice(KnownLens.Of(profile, turn.Value.Displayed(camera)), profile.Name, null)
            : failure;
    }
}
