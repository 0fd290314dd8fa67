using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>Marks of a survey that were made at one place of the head: they should agree.</summary>
internal static class SurveyRepeats
{
    // χ² with 2 degrees of freedom: two good marks lie farther apart in one of a thousand, one good mark farther from the others' middle in one of ten thousand.
    private const double Apart = 13.8, Stray = 18.4;

    /// <summary>The marks without those that two or more others at their place contradict.</summary>
    public static IReadOnlyList<SurveyMark> Kept(IReadOnlyList<SurveyMark> marks) => [.. marks.Where(mark =>
    {
        SurveyMark[] others = [.. marks.Where(m => m != mark && m.X == mark.X && m.Y == mark.Y)];
        return others.Length < 2 || Distance(mark, others) <= Stray;
    })];

    /// <summary>A place whose only two marks contradict each other; null when there is none.</summary>
    public static (Length X, Length Y)? Torn(IReadOnlyList<SurveyMark> marks) => marks.GroupBy(m => (m.X, m.Y))
        .Where(at => at.Count() == 2 && (at.First().Mark.Covariance + at.Last().Mark.Covariance).MahalanobisSquared(at.First().Mark.Point - at.Last().Mark.Point) > Apart)
        .Select(at => ((Length, Length)?)at.Key)
        .FirstOrDefault();

    /// <summary>A corner with a single mark, one at the end of the gantry's travel at which leg 2 is not aligned first; null when there is none.</summary>
    public static BedCorner? Single(Bed bed, IReadOnlyList<SurveyMark> marks, GantryEnd aligned) => BedCorners.All
        .Where(c => marks.Count(m => (m.X, m.Y) == bed.Place(c)) == 1)
        .OrderBy(c => c.End() == aligned ? 1 : 0)
        .Select(c => (BedCorner?)c)
        .FirstOrDefault();

    // From the others' median, whose own error is about that of one mark.
    private static double Distance(SurveyMark mark, SurveyMark[] others)
    {
        double Median(Func<CardPoint, double> of)
        {
            double[] sorted = [.. others.Select(o => of(o.Mark.Point)).Order()];
            return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
        }

        Covariance2 error = mark.Mark.Covariance + SurveyStage.Usual(others);
        return error.MahalanobisSquared(mark.Mark.Point - new CardPoint(Median(p => p.U), Median(p => p.V)));
    }
}
