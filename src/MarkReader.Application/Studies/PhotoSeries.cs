using MarkReader.Application.Measuring;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Measures many photo files, as many at a time as there are processor cores.</summary>
internal static class PhotoSeries
{
    /// <summary>Most photos of a study.</summary>
    public const int Most = 1000;

    /// <summary>The measurements in the order of the paths, or the first refusal with the name of its photo.</summary>
    /// <param name="names">What messages call the photos.</param>
    /// <param name="progress">Told after each photo how many are done and how many there are; calls come one at a time.</param>
    public static Outcome<IReadOnlyList<PhotoMeasurement>> Measure(IReadOnlyList<string> paths, IReadOnlyList<string> names, MeasureOptions? options, Action<int, int>? progress)
    {
        // Before the long work of measuring.
        if (SameFiles.First(paths) is { } same)
            return new Failure(StudyInputFailures.PhotoTwice, StudyTexts.Word("photoSeries.sameFile", names[same.First], names[same.Second]), StudyTexts.Get("photoSeries.sameFileHint"));
        Outcome<PhotoMeasurement>[] outcomes = PhotoRun.Each(paths.Count, i => Measure(paths[i], options), progress);
        List<PhotoMeasurement> measured = [];
        int refused = outcomes.Count(o => !o.TryGet(out _, out _));
        for (int i = 0; i < outcomes.Length; i++)
        {
            if (!outcomes[i].TryGet(out PhotoMeasurement? measurement, out Failure? failure))
                return failure with { Message = $"'{names[i]}'{(refused > 1 ? StudyTexts.Say("photoSeries.andMorePhotos", refused - 1, paths.Count) : "")}: {failure.Message}" };
            measured.Add(measurement);
        }

        return measured;
    }

    private static Outcome<PhotoMeasurement> Measure(string path, MeasureOptions? options)
    {
        try
        {
            using FileStream stream = File.OpenRead(path);
            if (stream.Length > PhotoLimits.MaxBytes)
                return new Failure(StudyInputFailures.PhotoUnreadable, StudyTexts.Get("photoSeries.fileLargerThanPhotoMay"), StudyTexts.Get("photoSeries.makePhotoSmaller"));
            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return MeasurePhoto.Run(bytes, options);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return new Failure(StudyInputFailures.PhotoUnreadable, StudyTexts.Get("photoSeries.fileNotThereOrCannot"), StudyTexts.Get("photoSeries.checkPathAndPermissions"));
        }
    }
}
