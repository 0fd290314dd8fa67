using System.Text.Json;
using MarkReader.Application.Cameras;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>One mark of a photo that is kept.</summary>
internal static class PhotoMarks
{
    /// <summary>The mark with this number among those that were last measured in the photo, from 0.</summary>
    public static Outcome<MarkReport> Numbered(PhotoStore photos, string photo, double number)
    {
        if (!photos.FindMeasurement(photo).TryGet(out KeptMeasurement? measurement, out Failure? failure))
            return failure;
        if (measurement.Answer is KeptAnswer.Refusal refusal)
            return refusal.Failure;
        IReadOnlyList<MarkReport> marks = JsonSerializer.Deserialize<MeasureReport>(((KeptAnswer.Report)measurement.Answer).Json, ReportJson.Options)!.Marks;
        for (int i = 0; i < marks.Count; i++)
        {
            if (i == number)
                return marks[i];
        }

        return new Failure(VisitLogFailures.PhotoMarkUnknown, VisitLogTexts.Word("photoMarks.photoHasMarksAndNone", marks.Count), VisitLogTexts.Get("photoMarks.countThemFromAsMeasure"));
    }

    /// <summary>The mark at a place in the photo that the user shows; the photo is measured for it.</summary>
    public static Outcome<MarkReport> At(PhotoStore photos, CameraStore cameras, string photo, PixelPoint tap) =>
        ShownMark.Of(photos, cameras, photo, tap).TryGet(out ShownMark? shown, out Failure? failure) ? shown.Mark : failure;
}
