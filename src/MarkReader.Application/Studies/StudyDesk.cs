using System.Text;
using MarkReader.Application.Cameras;
using MarkReader.Application.Inputs;
using MarkReader.Application.Measuring;
using MarkReader.Application.Storage;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Takes photos and tables of readings in for studies; each photo is measured once.</summary>
/// <param name="cameras">Whose profiles are used with the photos that their files name as theirs.</param>
public sealed class StudyDesk(StudyStore studies, CameraStore cameras)
{
    /// <summary>
    /// Measures a photo and keeps its marks, or why it is not used; the photo itself is not kept. What is no photo is refused and not kept. The same bytes are
    /// measured and kept once.
    /// </summary>
    /// <param name="person">Who took it, or with which phone; empty for pulses.</param>
    /// <param name="file">Name of the file, as it was sent.</param>
    public Outcome<StudyPhotoReceipt> Add(long id, string person, ReadOnlyMemory<byte> bytes, string file)
    {
        if (!studies.Find(id).TryGet(out KeptStudy? study, out Failure? failure) || !PhotoHeaderReader.Read(bytes).TryGet(out _, out failure))
            return failure;
        string digest = PhotoFiles.Digest(bytes.Span);
        if (study.Photos.FirstOrDefault(p => p.Digest == digest) is { } there)
            return there.Person == person ? new StudyPhotoReceipt(study, there.Number, false) : StudyStore.Twice(there);
        if (StudyStore.Full(study, person) is { } full)
            return full;
        if (!cameras.Known().TryGet(out MeasureOptions? known, out failure) || !study.Setup.Card.ApplyTo(known).TryGet(out MeasureOptions? how, out failure))
            return failure;
        KeptAnswer answer = MeasurePhoto.Run(bytes, how).TryGet(out PhotoMeasurement? measurement, out failure) && (failure = Few(study.Setup, measurement)) is null
            ? new KeptAnswer.Report(StudyMarksText.Write([.. measurement.Marks.Select(StudyMark.Of)]))
            : new KeptAnswer.Refusal(failure!);
        cameras.Used(measurement?.CameraProfile);
        return studies.Add(id, person, digest, FileLabel.Shown(file), answer);
    }

    /// <summary>Takes a table of readings in, in place of photos; one that cannot be evaluated is refused and not kept.</summary>
    /// <param name="perPhoto">Whether rows with the same operator and repeat were read in one photo.</param>
    public Outcome<KeptStudy> Put(long id, ReadOnlyMemory<byte> bytes, bool perPhoto, ExpectedVersion expected)
    {
        if (!studies.Find(id).TryGet(out KeptStudy? study, out Failure? failure))
            return failure;
        if (bytes.Length > StudyStore.MostReadings)
            return new Failure(StudyInputFailures.FileUnreadable, KeptStudyTexts.Word("readings.large", StudyStore.MostReadings >> 10), KeptStudyTexts.Get("readings.largeHint"));
        // The byte order mark that spreadsheets write tells the encoding.
        using StreamReader reader = new(new MemoryStream(bytes.ToArray()), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        KeptReadings readings = new(reader.ReadToEnd(), perPhoto);
        return StudyStanding.Of(study with { Photos = [], Readings = readings }).NotYet is { } wrong ? wrong : studies.Put(id, readings, expected);
    }

    private static Failure? Few(StudySetup setup, PhotoMeasurement measurement) => setup.Kind == StudyKind.Marks && measurement.Marks.Count < 2
        ? new(StudyInputFailures.FewMarks, KeptStudyTexts.Get("photo.fewMarks"), KeptStudyTexts.Get("photo.fewMarksHint"))
        : null;
}
