using MarkReader.Quantities;

namespace MarkReader.Imaging.Photos;

/// <summary>Why a file was not taken as a photo.</summary>
public static class PhotoFailures
{
    public static readonly FailureCode Empty = new("PHOTO_EMPTY", FailureKind.BadInput);
    public static readonly FailureCode Format = new("PHOTO_FORMAT", FailureKind.BadInput);
    public static readonly FailureCode TooLarge = new("PHOTO_TOO_LARGE", FailureKind.BadInput);
    public static readonly FailureCode TooSmall = new("PHOTO_TOO_SMALL", FailureKind.BadInput);
    public static readonly FailureCode Truncated = new("PHOTO_TRUNCATED", FailureKind.BadInput);
    public static readonly FailureCode Damaged = new("PHOTO_DAMAGED", FailureKind.BadInput);
}
