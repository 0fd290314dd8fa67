using MarkReader.Application.Cameras;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>The mark at a place in a photo that the user shows.</summary>
/// <param name="Photo">The id of the photo.</param>
/// <param name="Place">Where it was shown, px.</param>
/// <param name="Mark">What was measured there.</param>
/// <param name="Measurement">All that was measured for it.</param>
public sealed record ShownMark(string Photo, PixelPoint Place, MarkReport Mark, MeasureReport Measurement)
{
    /// <summary>Measures the photo for it; nothing is kept.</summary>
    public static Outcome<ShownMark> Of(PhotoStore photos, CameraStore cameras, string photo, PixelPoint place)
    {
        if (!photos.Read(photo).TryGet(out Original? original, out Failure? failure)
            || !cameras.Known(new() { Taps = [place] }).TryGet(out MeasureOptions? how, out failure)
            || !MeasurePhoto.Run(original.Bytes, how).TryGet(out PhotoMeasurement? seen, out failure))
            return failure;
        return MeasurePhoto.At(seen, place) is { } mark ? new ShownMark(photo, place, MarkReport.From(mark), MeasureReport.From(seen)) : MeasurePhoto.NothingAt(place);
    }
}
