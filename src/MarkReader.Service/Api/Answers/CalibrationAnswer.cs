using System.Globalization;
using MarkReader.Application.Cameras;
using MarkReader.Cameras.Boards;

namespace MarkReader.Service.Api.Answers;

/// <summary>A calibration that is kept.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Version">Counts changes; the ETag.</param>
/// <param name="BegunAt">When it was begun.</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Photos">In the order in which they came.</param>
/// <param name="Used">How many of them are used.</param>
/// <param name="Missing">Kinds of photo that are still missing, in the order in which they should be taken.</param>
/// <param name="Next">The first of them in words; null when none is missing.</param>
/// <param name="CanFinish">Whether there are enough photos for a profile to be made.</param>
/// <param name="Camera">Address of the camera that it gave, or null.</param>
internal sealed record CalibrationAnswer(
    long Id,
    long Version,
    DateTimeOffset BegunAt,
    DateTimeOffset ChangedAt,
    IReadOnlyList<BoardPhotoAnswer> Photos,
    int Used,
    IReadOnlyList<ViewNeed> Missing,
    string? Next,
    bool CanFinish,
    string? Camera)
{
    public static CalibrationAnswer From(KeptCalibration kept)
    {
        CalibrationStanding standing = CalibrationStanding.Of(kept);
        CalibrationEntry entry = kept.Entry;
        return new(
            entry.Id,
            entry.Version,
            entry.BegunAt,
            entry.ChangedAt,
            [.. standing.Photos.Select(BoardPhotoAnswer.From)],
            standing.Used,
            standing.Missing,
            standing.Missing.Count == 0 ? null : CameraWords.Need(standing.Missing[0]),
            standing.CanFinish,
            entry.CameraId is { } camera ? CameraAnswer.Address(camera) : null);
    }

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/calibrations/{id}");
}

/// <summary>A photo of the board.</summary>
/// <param name="Number">From 1, in its calibration.</param>
/// <param name="File">Name of the file that was sent.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="Width">Width of the sensor's picture, px; null when nothing was measured.</param>
/// <param name="Height">Its height.</param>
/// <param name="MarkersSeen">Markers of the board that were recognised.</param>
/// <param name="TiltDegrees">Angle between the board's normal and the line of sight, roughly; null when it is not used.</param>
/// <param name="Refusal">Why it is not used; null when it is.</param>
internal sealed record BoardPhotoAnswer(int Number, string File, DateTimeOffset AddedAt, int? Width, int? Height, int? MarkersSeen, double? TiltDegrees, RefusalAnswer? Refusal)
{
    public static BoardPhotoAnswer From(BoardPhotoStanding standing) => new(
        standing.Kept.Number,
        standing.Kept.File,
        standing.Kept.AddedAt,
        standing.Kept.Photo?.View.Photo.Width,
        standing.Kept.Photo?.View.Photo.Height,
        standing.Kept.Photo?.MarkersSeen,
        standing.Place?.Tilt.Degrees,
        standing.NotUsed is { } failure ? new(failure.Code.Name, failure.Message, failure.Hint) : null);
}

/// <summary>A page of calibrations, newest first.</summary>
/// <param name="Calibrations">The calibrations, without their photos.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record CalibrationList(IReadOnlyList<CalibrationEntry> Calibrations, string? Next);
