using MarkReader.Cameras.Calibration;
using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>Photos of one camera have one size and one lens, as their files say.</summary>
internal static class AlikePhotos
{
    /// <summary>A photo of those of which there are most; null when there is none.</summary>
    public static BoardPhoto? Usual(IReadOnlyList<BoardPhoto> photos) => photos.MaxBy(p => CountLike(p, photos));

    /// <summary>How many of the photos are like this one, it included.</summary>
    public static int CountLike(BoardPhoto photo, IReadOnlyList<BoardPhoto> photos) => photos.Count(other => Alike(photo, other));

    /// <summary>Why a photo is not used with the usual one; null when it is.</summary>
    public static Failure? Unlike(BoardPhoto photo, BoardPhoto usual, IReadOnlyList<BoardPhoto> all)
    {
        if (Alike(photo, usual))
            return null;
        bool fewer = CountLike(photo, all) < CountLike(usual, all);
        (PhotoSize size, PhotoSize wanted) = (photo.View.Photo, usual.View.Photo);
        return size != wanted
            ? new(CalibrationFailures.Sizes, KeptCameraTexts.Word(fewer ? "photo.size" : "photo.sizeAsMany", size.Width, size.Height, wanted.Width, wanted.Height), KeptCameraTexts.Get("photo.sizeHint"))
            : new(CameraFailures.LensesDiffer, KeptCameraTexts.Get(fewer ? "photo.lens" : "photo.lensAsMany"), KeptCameraTexts.Get("photo.lensHint"));
    }

    private static bool Alike(BoardPhoto one, BoardPhoto other) => one.View.Photo == other.View.Photo && one.Traits.SameLens(other.Traits);
}
