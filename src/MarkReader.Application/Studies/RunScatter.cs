using MarkReader.Application.Inputs;
using MarkReader.Imaging.Pipeline;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Works out how far repeated pulses scatter.</summary>
public static class RunScatter
{
    /// <summary>A standard deviation known to about ±25 %.</summary>
    public const double UsualWidth = 0.25;

    /// <summary>Longest path, mm.</summary>
    public const double MostPath = 100_000;

    private const int MostPairsNamed = 3;

    /// <param name="width">Wanted half-width of the interval, for the plan.</param>
    public static Outcome<ScatterAnswer> Run(PulseMarks marks, Length? path, double width)
    {
        if (path is { } p && !(p.Millimetres is > 0 and <= MostPath))
            return PathWrong();
        if (!PulsePlan.For(width).TryGet(out PulsePlan? plan, out Failure? failure))
            return failure;
        return PulseScatter.Of([.. marks.All.Select(m => m.At)]).TryGet(out PulseScatter? scatter, out failure) ? new ScatterAnswer(marks, scatter, path, plan) : failure;
    }

    /// <summary>The marks of photos of one station; photos may show one mark or several.</summary>
    /// <param name="progress">Told after each photo how many are done and how many there are.</param>
    public static Outcome<PulseMarks> FromPhotos(IReadOnlyList<string> paths, MeasureOptions? options = null, Action<int, int>? progress = null)
    {
        if (paths.Count > PhotoSeries.Most)
            return new Failure(StudyInputFailures.PhotoUnreadable, StudyTexts.Word("runScatter.thereMoreThanPhotos", PhotoSeries.Most), StudyTexts.Get("runScatter.giveFewer"));
        if (!PhotoSeries.Measure(paths, paths, options, progress).TryGet(out IReadOnlyList<PhotoMeasurement>? measured, out Failure? failure))
            return failure;
        return FromMarks([.. measured.Select((m, i) => new StudyPhoto("", Path.GetFileName(paths[i]), $"'{FileLabel.Shown(paths[i])}'", [.. m.Marks.Select(StudyMark.Of)]))]);
    }

    /// <summary>The marks of photos that are measured already.</summary>
    public static PulseMarks FromMarks(IReadOnlyList<StudyPhoto> photos)
    {
        // What all marks share moves them alike and must not be taken off; the view only where every mark has its own photo.
        bool apart = photos.All(p => p.Marks.Count == 1);
        PulseMark[] marks =
        [
            .. photos.SelectMany(photo => photo.Marks.Select((mark, k) => new PulseMark(
                photo.Marks.Count == 1 ? photo.Name : StudyTexts.Say("runScatter.mark", photo.Name, k + 1), new(mark.At.Point, apart ? mark.Own + mark.View : mark.Own)))),
        ];
        string[] notes = photos.Count > 1 && !apart ? [.. Same(photos), StudyTexts.Get("runScatter.photosWithSeveralMarksEvery")] : [];
        return new PulseMarks(marks, IsStated: true, notes);
    }

    private static IEnumerable<string> Same(IReadOnlyList<StudyPhoto> photos)
    {
        IReadOnlyList<SamePulses> same = SamePulses.Of([.. photos.Select(p => p.Marks.Select(m => m.At).ToArray())]);
        foreach (SamePulses pair in same.Take(MostPairsNamed))
            yield return StudyTexts.Say("runScatter.samePulses", photos[pair.First].Called, photos[pair.Second].Called, pair.Marks);
        if (same.Count > MostPairsNamed)
            yield return StudyTexts.Say("runScatter.samePulsesMore", same.Count - MostPairsNamed);
        if (same.Count > 0)
            yield return StudyTexts.Get("runScatter.samePulsesHint");
    }

    internal static Failure PathWrong() =>
        new(StudyInputFailures.LengthInvalid, StudyTexts.Word("runScatter.pathNotAboveAndAt", new SaidLength(MostPath)), StudyTexts.Word("runScatter.giveLengthBeamPathFrom", Wording.Unit));
}
