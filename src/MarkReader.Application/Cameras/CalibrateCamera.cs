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

    /// <summary>Measures the photos one after the other; those that show no usable board are told and left out.</summary>
    /// <param name="count">How many photos there are.</param>
    /// <param name="photos">Read when they are needed, so that one is in memory at a time.</param>
    /// <param name="progress">Told after each photo how many are done.</param>
    public static Outcome<CameraFinding> Run(string name, DateTimeOffset made, int count, IEnumerable<BoardPhotoFile> photos, Action<int>? progress = null)
    {
        if (Name(name) is { } unnamed)
            return unnamed;
        if (count > MostPhotos)
            return new Failure(CameraFailures.TooManyPhotos, $"there are {count} photos, the limit is {MostPhotos}", "choose those that show the board from many sides; 15 are plenty");
        List<BoardPhoto> used = [];
        List<RefusedPhoto> refused = [];
        int done = 0;
        foreach (BoardPhotoFile file in photos)
        {
            if (BoardMeasurer.Measure(file.Bytes, file.Name).TryGet(out BoardPhoto? photo, out Failure? failure))
                used.Add(photo);
            else
                refused.Add(new(file.Name, failure));
            progress?.Invoke(++done);
        }

        return Of(name, made, used, refused);
    }

    /// <summary>The same from photos that are measured already.</summary>
    public static Outcome<CameraFinding> Of(string name, DateTimeOffset made, IReadOnlyList<BoardPhoto> photos, IReadOnlyList<RefusedPhoto> refused)
    {
        if (Name(name) is { } unnamed)
            return unnamed;
        if (photos.FirstOrDefault(p => !p.Traits.SameLens(photos[0].Traits)) is { } other)
        {
            return new Failure(
                CameraFailures.LensesDiffer,
                $"{other.View.Name} and {photos[0].View.Name} are of different cameras, lenses or zooms, as their files say",
                "take all photos with one lens of one camera, without zoom");
        }

        if (!CameraCalibration.Calibrate([.. photos.Select(p => p.View)]).TryGet(out CalibratedCamera? found, out Failure? failure))
            return refused.Count == 0 ? failure : failure with { Message = $"{failure.Message} ({refused.Count} more could not be used, the first, {refused[0].Name}: {refused[0].Failure.Message})" };
        HashSet<string> dropped = [.. found.Dropped.Select(d => d.Name)];
        BoardCoverage coverage = BoardCoverage.Of([.. photos.Select(p => p.View).Where(v => !dropped.Contains(v.Name))])!;
        return new CameraFinding(CameraProfile.Of(name, made, photos[0].Traits, found), found, coverage, refused);
    }

    private static Failure? Name(string name) => CameraProfileFile.IsName(name)
        ? null
        : new(CameraFailures.NameInvalid, $"the camera's name is empty, longer than {CameraProfileFile.LongestName} signs, or has signs that cannot be shown", "give a short name, such as 'phone, main lens'");
}
