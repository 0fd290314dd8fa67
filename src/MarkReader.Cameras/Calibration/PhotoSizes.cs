using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Texts;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Calibration;

/// <summary>Photos of one camera and setting are of one size.</summary>
internal static class PhotoSizes
{
    private const int MostNamed = 3;

    /// <summary>The refusal of photos of several sizes, which names those that are not of the size of most, or both sizes where as many are of each; null when all are of one.</summary>
    public static Failure? Differ(IReadOnlyList<BoardView> views)
    {
        (PhotoSize Size, BoardView[] Views)[] sizes = [.. views.GroupBy(v => v.Photo).Select(g => (g.Key, g.ToArray())).OrderByDescending(s => s.Item2.Length)];
        if (sizes.Length < 2)
            return null;
        ((PhotoSize most, BoardView[] usual), (PhotoSize next, BoardView[] others)) = (sizes[0], sizes[1]);
        BoardView[] odd = [.. views.Where(v => v.Photo != most)];
        Wording what = usual.Length == others.Length
            ? CalibrationTexts.Word("photoSizes.asMany", Named(usual), most.Width, most.Height, Named(others), next.Width, next.Height)
            : odd.Length == 1
                ? CalibrationTexts.Word("photoSizes.one", odd[0].Name, next.Width, next.Height, usual.Length, most.Width, most.Height)
                : CalibrationTexts.Word("photoSizes.several", Named(odd), usual.Length, most.Width, most.Height);
        return new(CalibrationFailures.Sizes, what, CalibrationTexts.Get("cameraCalibration.takeAllPhotosWithSame"));
    }

    private static string Named(BoardView[] views) =>
        string.Join(", ", views.Take(MostNamed).Select(v => v.Name)) + (views.Length > MostNamed ? CalibrationTexts.Say("photoSizes.more", views.Length - MostNamed) : "");
}
