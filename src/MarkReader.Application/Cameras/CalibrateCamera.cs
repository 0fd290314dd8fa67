using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>From photos of the calibration board to a camera profile.</summary>
public static class CalibrateCamera
{
    /// <summary>Photos that one calibration may have.</summary>
    public const int MostPhotos = 60;

    /// <summary>Measures the photos one after the other; those that show no usable board, that come twice, or that are of another size or lens than most are told and left out.</summary>
    /// <param name="count">How many photos there are.</param>
    /// <param name="photos">Read when they are needed, so that one is in memory at a time.</param>
    /// <param name="progress">Told after each photo how many are done.</param>
    public static Outcome<CameraFinding> Run(string name, DateTimeOffset made, int count, IEnumerable<BoardPhotoFile> photos, Action<int>? progress = null)
    {
        if (CheckName(name) is { } unnamed)
            return unnamed;
        if (count > MostPhotos)
            return new Failure(CameraFailures.TooManyPhotos, CameraTexts.Word("calibrateCamera.therePhotosLimit", count, MostPhotos), CameraTexts.Get("calibrateCamera.chooseThoseThatShowBoard"));
        List<BoardPhoto> used = [];
        List<RefusedPhoto> refused = [];
        SeenFiles seen = new();
        int done = 0;
        foreach (BoardPhotoFile file in photos)
        {
            Failure? failure = seen.Repeated(file);
            if (failure is null && BoardMeasurer.Measure(file.Bytes, file.Name).TryGet(out BoardPhoto? photo, out failure))
                used.Add(photo);
            else
                refused.Add(new(file.Name, failure));
            progress?.Invoke(++done);
        }

        // Only where most agree: else it is for the user to say which are meant.
        if (AlikePhotos.Usual(used) is { } usual && 2 * AlikePhotos.CountLike(usual, used) > used.Count)
        {
            BoardPhoto[] all = [.. used];
            foreach (BoardPhoto photo in all)
            {
                if (AlikePhotos.Unlike(photo, usual, all) is not { } unlike)
                    continue;
                used.Remove(photo);
                refused.Add(new(photo.View.Name, unlike));
            }
        }

        return Of(name, made, used, refused);
    }

    /// <summary>The same from photos that are measured already.</summary>
    public static Outcome<CameraFinding> Of(string name, DateTimeOffset made, IReadOnlyList<BoardPhoto> photos, IReadOnlyList<RefusedPhoto> refused)
    {
        if (CheckName(name) is { } unnamed)
            return unnamed;
        BoardPhoto? usual = AlikePhotos.Usual(photos);
        if (photos.FirstOrDefault(p => !p.Traits.SameLens(usual!.Traits)) is { } other)
        {
            return new Failure(
                CameraFailures.LensesDiffer,
                CameraTexts.Word("calibrateCamera.andDifferentCamerasLensesOr", other.View.Name, usual!.View.Name),
                CameraTexts.Get("calibrateCamera.takeAllPhotosWithOne"));
        }

        if (!CameraCalibration.Calibrate([.. photos.Select(p => p.View)]).TryGet(out CalibratedCamera? found, out Failure? failure))
            return refused.Count == 0 ? failure : failure with { Message = CameraTexts.Say("calibrateCamera.moreCouldNotBeUsed", failure.Message, refused.Count, refused[0].Name, refused[0].Failure.Message) };
        HashSet<string> dropped = [.. found.Dropped.Select(d => d.Name)];
        BoardCoverage coverage = BoardCoverage.Of([.. photos.Select(p => p.View).Where(v => !dropped.Contains(v.Name))])!;
        return new CameraFinding(CameraProfile.Of(name, made, usual!.Traits, found), found, coverage, refused);
    }

    /// <summary>Why a text cannot be a camera's name; null when it can.</summary>
    public static Failure? CheckName(string name) => CameraProfileFile.IsName(name)
        ? null
        : new(CameraFailures.NameInvalid, CameraTexts.Word("calibrateCamera.cameraNameEmptyLongerThan", CameraProfileFile.LongestName), CameraTexts.Get("calibrateCamera.giveShortNameSuchAs"));
}
