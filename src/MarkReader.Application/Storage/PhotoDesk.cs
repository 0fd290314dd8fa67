using MarkReader.Application.Cameras;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>Takes photos in: keeps each, measures it, and keeps what was measured or why it could not be.</summary>
/// <param name="cameras">Whose profiles are used with the photos that their files name as theirs.</param>
public sealed class PhotoDesk(PhotoStore photos, CameraStore cameras)
{
    /// <summary>Keeps a photo whose header can be read; anything else is refused and not kept.</summary>
    public Outcome<PhotoReceipt> Keep(ReadOnlyMemory<byte> bytes) =>
        PhotoHeaderReader.Read(bytes).TryGet(out _, out Failure? failure) ? photos.Keep(bytes) : failure;

    /// <summary>Measures a photo that is kept.</summary>
    public Outcome<KeptMeasurement> Measure(string id)
    {
        if (!photos.Read(id).TryGet(out Original? original, out Failure? failure) || !cameras.Known().TryGet(out MeasureOptions? how, out failure))
            return failure;
        KeptAnswer answer = MeasurePhoto.Run(original.Bytes, how).TryGet(out PhotoMeasurement? measurement, out failure)
            ? new KeptAnswer.Report(ReportJson.Write(MeasureReport.From(measurement)))
            : new KeptAnswer.Refusal(failure);
        cameras.Used(measurement?.CameraProfile);
        return photos.KeepMeasurement(id, ProgramVersion.Current, answer);
    }

    /// <summary>Looks in a photo that is kept for marks and for spots that may be marks, so that the user can say which is which. Nothing is kept.</summary>
    public Outcome<SpotsReport> Spots(string id)
    {
        if (!photos.Read(id).TryGet(out Original? original, out Failure? failure) || !cameras.Known().TryGet(out MeasureOptions? how, out failure))
            return failure;
        return PhotoMeasurer.Measure(original.Bytes, how).TryGet(out PhotoMeasurement? measurement, out failure) ? SpotsReport.From(measurement) : failure;
    }
}
