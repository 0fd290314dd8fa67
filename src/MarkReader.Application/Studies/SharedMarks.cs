using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Finds the marks that all photos of one target have in common, by their places.</summary>
/// <param name="All">For each mark, by u, the readings in the order of the photos.</param>
/// <param name="LeftOut">Marks that are missing in some photo.</param>
internal sealed record SharedMarks(IReadOnlyList<IReadOnlyList<MeasuredPoint>> All, IReadOnlyList<LeftOutMark> LeftOut)
{
    /// <summary>Readings of one mark lie closer than this to each other, mm.</summary>
    public const double Gate = 1;

    private const int LeastMarks = 2, MostNamed = 3;

    public static Outcome<SharedMarks> Of(IReadOnlyList<StudyPhoto> photos)
    {
        if (Odd(photos) is { Count: > 0 } odd)
            return OtherTarget(odd, photos.Count - odd.Count);
        List<IReadOnlyList<MeasuredPoint>> shared = [];
        List<LeftOutMark> leftOut = [];
        foreach ((MeasuredPoint mark, double gate) in Marks(photos))
        {
            MeasuredPoint?[] row = [.. photos.Select(p => p.Marks.Select(m => m.At).MinBy(m => Distance(m, mark)) is { } near && Distance(near, mark) <= gate ? near : null)];
            if (row.All(m => m is not null))
                shared.Add([.. row.Select(m => m!)]);
            else
                leftOut.Add(new(mark.Point, [.. photos.Where((_, i) => row[i] is null)], [.. photos.Where((_, i) => row[i] is not null)]));
        }

        if (shared.Count >= LeastMarks)
            return new SharedMarks([.. shared.OrderBy(row => row.Average(m => m.Point.U))], leftOut);
        StudyPhoto worst = photos.MaxBy(p => leftOut.Count(l => l.Missing.Contains(p)))!;
        return new Failure(
            StudyInputFailures.MarksDiffer,
            StudyTexts.Say("sharedMarks.onlyMarksSeenAtSame", shared.Count, shared.Count + leftOut.Count, photos.Count, worst.Called, leftOut.Count(l => l.Missing.Contains(worst))),
            StudyTexts.Get("sharedMarks.photographOneTargetWithAt"));
    }

    /// <summary>The photos with other marks than most; empty when most do not agree.</summary>
    public static IReadOnlyList<StudyPhoto> Odd(IReadOnlyList<StudyPhoto> photos)
    {
        StudyPhoto[][] alike = [.. photos.Select(a => photos.Where(b => ReferenceEquals(a, b) || InCommon(a, b) >= Math.Min(LeastMarks, Math.Min(a.Marks.Count, b.Marks.Count))).ToArray())];
        StudyPhoto[] most = alike.MaxBy(a => a.Length) ?? [];
        StudyPhoto[] odd = [.. photos.Where(p => !most.Contains(p))];
        return odd.Length < most.Length ? odd : [];
    }

    /// <summary>The refusal that names photos with other marks than the <paramref name="most"/> others.</summary>
    public static Failure OtherTarget(IReadOnlyList<StudyPhoto> odd, int most) => new(
        StudyInputFailures.MarksDiffer,
        odd.Count == 1 ? StudyTexts.Say("sharedMarks.otherTarget", odd[0].Called, most) : StudyTexts.Say("sharedMarks.otherTargets", Named(odd), most),
        StudyTexts.Get(odd.Count == 1 ? "sharedMarks.otherTargetHint" : "sharedMarks.otherTargetsHint"));

    /// <summary>The first photos by what they are called, and how many more there are.</summary>
    internal static string Named(IReadOnlyList<StudyPhoto> photos) =>
        string.Join(", ", photos.Take(MostNamed).Select(p => p.Called)) + (photos.Count > MostNamed ? StudyTexts.Say("sharedMarks.more", photos.Count - MostNamed) : "");

    // Every mark that any photo shows, those of the photo with most marks first, each with how far its readings may lie.
    private static List<(MeasuredPoint Mark, double Gate)> Marks(IReadOnlyList<StudyPhoto> photos)
    {
        List<(MeasuredPoint Mark, double Gate)> marks = [];
        foreach (StudyPhoto photo in photos.OrderByDescending(p => p.Marks.Count))
            marks.AddRange(photo.Marks.Where(m => marks.TrueForAll(known => Distance(known.Mark, m.At) > known.Gate)).Select(m => (m.At, GateOf(m, photo))).ToArray());
        return marks;
    }

    // Nearer than half the way to the photo's next mark.
    private static double GateOf(StudyMark mark, StudyPhoto photo) =>
        Math.Min(Gate, photo.Marks.Where(m => !ReferenceEquals(m, mark)).Select(m => Distance(m.At, mark.At) / 2).DefaultIfEmpty(Gate).Min());

    private static int InCommon(StudyPhoto a, StudyPhoto b) => a.Marks.Count(m => b.Marks.Any(o => Distance(o.At, m.At) <= GateOf(m, a)));

    private static double Distance(MeasuredPoint a, MeasuredPoint b) => a.Point.DistanceTo(b.Point);
}

/// <summary>A mark that not every photo shows.</summary>
internal sealed record LeftOutMark(CardPoint At, IReadOnlyList<StudyPhoto> Missing, IReadOnlyList<StudyPhoto> Seen);
