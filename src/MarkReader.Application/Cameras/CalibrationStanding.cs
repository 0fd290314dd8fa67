using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>How far a calibration is: which photos it uses, and which views are still missing.</summary>
/// <param name="Photos">In the order in which they came.</param>
/// <param name="Missing">In the order in which they should be taken.</param>
public sealed record CalibrationStanding(IReadOnlyList<BoardPhotoStanding> Photos, IReadOnlyList<ViewNeed> Missing)
{
    public int Used => Photos.Count(p => p.NotUsed is null);

    /// <summary>Whether there are enough photos for a profile to be made.</summary>
    public bool CanFinish => Used >= CameraCalibration.LeastViews;

    /// <summary>Whether the files of the photos name their camera and lens; null while none is used.</summary>
    public bool? Tell => Photos.FirstOrDefault(p => p.NotUsed is null)?.Kept.Photo!.Traits.Tell;

    /// <summary>The photos of most are used: those of another size or another lens are not, whichever came first.</summary>
    public static CalibrationStanding Of(KeptCalibration calibration)
    {
        BoardPhoto[] measured = [.. calibration.Photos.Select(p => p.Photo).OfType<BoardPhoto>()];
        BoardPhoto? usual = AlikePhotos.Usual(measured);
        BoardPhotoStanding[] photos = [.. calibration.Photos.Select(p => new BoardPhotoStanding(p, p.Refusal ?? AlikePhotos.Unlike(p.Photo!, usual!, measured), null))];
        BoardPhotoStanding[] used = [.. photos.Where(p => p.NotUsed is null)];
        if (BoardCoverage.Of([.. used.Select(p => p.Kept.Photo!.View)]) is not { } coverage)
            return new(photos, Enum.GetValues<ViewNeed>());
        Dictionary<int, ViewPlace> places = used.Zip(coverage.Places).ToDictionary(p => p.First.Kept.Number, p => p.Second);
        return new([.. photos.Select(p => p with { Place = places.GetValueOrDefault(p.Kept.Number) })], coverage.Missing);
    }

    /// <summary>The profile of the photos that are used.</summary>
    /// <param name="name">What it is to be called.</param>
    internal Outcome<CameraFinding> Calibrate(string name, DateTimeOffset made) => CalibrateCamera.Of(
        name,
        made,
        [.. Photos.Where(p => p.NotUsed is null).Select(p => p.Kept.Photo!)],
        [.. Photos.Where(p => p.NotUsed is not null).Select(p => new RefusedPhoto(p.Kept.Name, p.NotUsed!))]);
}

/// <summary>A photo of a calibration and how it stands.</summary>
/// <param name="NotUsed">Why it is not used; null when it is.</param>
/// <param name="Place">From where it was taken, roughly; null when it is not used.</param>
public sealed record BoardPhotoStanding(KeptBoardPhoto Kept, Failure? NotUsed, ViewPlace? Place);
