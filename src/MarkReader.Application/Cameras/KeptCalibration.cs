using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>A calibration that is kept, without its photos.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="Version">1 at first; one more with each change.</param>
/// <param name="BegunAt">When it was begun (UTC, to the millisecond).</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Photos">How many photos were sent to it.</param>
/// <param name="CameraId">The camera that it gave, or null.</param>
public sealed record CalibrationEntry(long Id, long Version, DateTimeOffset BegunAt, DateTimeOffset ChangedAt, int Photos, long? CameraId);

/// <summary>A calibration that is kept.</summary>
/// <param name="Photos">In the order in which they came.</param>
public sealed record KeptCalibration(CalibrationEntry Entry, IReadOnlyList<KeptBoardPhoto> Photos);

/// <summary>A photo of the board, measured once when it came in; the photo itself is not kept.</summary>
/// <param name="Number">From 1, in its calibration.</param>
/// <param name="Digest">SHA-256 of its bytes, in hexadecimal digits.</param>
/// <param name="File">Name of the file that was sent.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="Photo">What was measured; null when nothing was.</param>
/// <param name="Refusal">Why nothing was measured; null when something was.</param>
public sealed record KeptBoardPhoto(int Number, string Digest, string File, DateTimeOffset AddedAt, BoardPhoto? Photo, Failure? Refusal)
{
    /// <summary>What messages call it.</summary>
    public string Name => NameOf(Number);

    internal static string NameOf(int number) => KeptCameraTexts.Say("photo.name", number);
}

/// <summary>A photo that was added to a calibration.</summary>
/// <param name="Number">The photo's number.</param>
/// <param name="IsNew">False when the same bytes had come before.</param>
public sealed record BoardPhotoReceipt(KeptCalibration Calibration, int Number, bool IsNew);
