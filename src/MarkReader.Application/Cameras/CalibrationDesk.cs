using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Inputs;
using MarkReader.Application.Storage;
using MarkReader.Imaging.Boards;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>Takes photos of the board in, each measured once, and makes cameras of them.</summary>
public sealed class CalibrationDesk(CalibrationStore calibrations, TimeProvider clock)
{
    /// <summary>Largest text that names a camera, bytes.</summary>
    public const int MostNameBytes = 1 << 10;

    /// <summary>
    /// Measures a photo and keeps what was found, or why nothing was; the photo itself is not kept. What is no photo is refused and not kept. The same bytes are
    /// measured and kept once.
    /// </summary>
    /// <param name="file">Name of the file, as it was sent.</param>
    public Outcome<BoardPhotoReceipt> Add(long id, ReadOnlyMemory<byte> bytes, string file)
    {
        if (!calibrations.Find(id).TryGet(out KeptCalibration? calibration, out Failure? failure) || !PhotoHeaderReader.Read(bytes).TryGet(out _, out failure))
            return failure;
        string digest = PhotoFiles.Digest(bytes.Span);
        if (calibration.Photos.FirstOrDefault(p => p.Digest == digest) is { } there)
            return new BoardPhotoReceipt(calibration, there.Number, false);
        if (CalibrationStore.Full(calibration) is { } full)
            return full;
        KeptAnswer answer = BoardMeasurer.Measure(bytes, file).TryGet(out BoardPhoto? photo, out failure)
            ? new KeptAnswer.Report(BoardPhotoText.Write(photo))
            : new KeptAnswer.Refusal(failure);
        return calibrations.Add(id, digest, FileLabel.Shown(file), answer);
    }

    /// <summary>Makes the camera of a calibration, in place of one that it gave before.</summary>
    public Outcome<KeptCamera> Finish(long id, string name, ExpectedVersion expected)
    {
        if (!calibrations.Find(id).TryGet(out KeptCalibration? calibration, out Failure? failure))
            return failure;
        if (!expected.Admits(calibration.Entry.Version))
            return StorageFailures.ChangedMeanwhile(KeptCameraTexts.Say("calibration.changed", id), calibration.Entry.Version);
        // Before the work, which takes a few seconds.
        if (calibrations.Check(calibration.Entry, name) is { } taken)
            return taken;
        return CalibrationStanding.Of(calibration).Calibrate(name, clock.GetUtcNow()).TryGet(out CameraFinding? finding, out failure)
            ? calibrations.Finish(calibration, finding)
            : failure;
    }

    /// <summary>The name in {"name": "phone, main lens"}.</summary>
    public static Outcome<string> ReadName(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return new Failure(CameraFailures.NameInvalid, KeptCameraTexts.Word("name.json", unreadable), KeptCameraTexts.Get("name.jsonHint"));
        JsonFields fields = new(CameraFailures.NameInvalid);
        string name = fields.Object(document.RootElement, KeptCameraTexts.Get("name.of"), "name").Text("name");
        return fields.Wrong is { } wrong ? wrong : name;
    }
}
