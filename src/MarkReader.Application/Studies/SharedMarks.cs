using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Finds the marks that all photos of one target have in common, by their places.</summary>
/// <param name="All">For each mark, by u, the readings in the order of the photos.</param>
/// <param name="LeftOut">Places of marks that are missing in some photo.</param>
internal sealed record SharedMarks(IReadOnlyList<IReadOnlyList<MeasuredPoint>> All, IReadOnlyList<CardPoint> LeftOut)
{
    /// <summary>Readings of one mark lie closer than this to each other, mm.</summary>
    public const double Gate = 1;

    public static Outcome<SharedMarks> Of(IReadOnlyList<IReadOnlyList<MeasuredPoint>> photos)
    {
        IReadOnlyList<MeasuredPoint> most = photos.MaxBy(p => p.Count)!;
        List<IReadOnlyList<MeasuredPoint>> shared = [];
        List<CardPoint> leftOut = [];
        foreach (MeasuredPoint mark in most)
        {
            // Nearest to each other, and nearer than half the way to the next mark.
            double gate = Math.Min(Gate, most.Where(m => !ReferenceEquals(m, mark)).Select(m => Distance(m, mark) / 2).DefaultIfEmpty(Gate).Min());
            MeasuredPoint?[] row = [.. photos.Select(p => p.MinBy(m => Distance(m, mark)) is { } near && Distance(near, mark) <= gate ? near : null)];
            if (row.All(m => m is not null))
                shared.Add([.. row.Select(m => m!)]);
            else
                leftOut.Add(mark.Point);
        }

        if (shared.Count >= 2)
            return new SharedMarks([.. shared.OrderBy(row => row.Average(m => m.Point.U))], leftOut);
        return new Failure(
            StudyInputFailures.MarksDiffer,
            StudyTexts.Say("sharedMarks.onlyMarksSeenAtSame", shared.Count, most.Count, photos.Count),
            StudyTexts.Get("sharedMarks.photographOneTargetWithAt"));
    }

    private static double Distance(MeasuredPoint a, MeasuredPoint b) => a.Point.DistanceTo(b.Point);
}
