using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>The spread over the bed against its tolerance, and the pulse that would help most to decide it.</summary>
/// <param name="Verdict">Of the greatest distance between marks (<see cref="SurveyFit.Differences"/>).</param>
/// <param name="Next">The corner whose mark to repeat; null when the verdict is decided.</param>
public sealed record SpreadAdvice(Conformity Verdict, BedCorner? Next);

/// <summary>Which corner's mark to repeat when the spread is undecided.</summary>
public static class SurveyPlan
{
    /// <param name="marks">The survey; its places must determine the four terms.</param>
    /// <param name="pulse">Covariance of the mark of one pulse, mm².</param>
    /// <remarks>
    /// Of the differences that are undecided the longest counts; the pulse goes where it lessens that difference's variance along itself most. The fit's
    /// covariance does not depend on where the mark falls, so that it is known before.
    /// </remarks>
    /// <exception cref="ArgumentException">The places do not determine the four terms.</exception>
    public static SpreadAdvice Spread(Bed bed, IReadOnlyList<SurveyMark> marks, Length tolerance, Covariance2 pulse)
    {
        SurveyFit fit = SurveyFit.Solve(bed, marks) ?? throw new ArgumentException("The survey's places do not determine its terms.", nameof(marks));
        IReadOnlyList<MeasuredVector> differences = fit.Differences();
        Conformity verdict = JobVerdicts.Spread(differences, tolerance);
        if (verdict.Verdict != Verdict.Undecided)
            return new(verdict, null);

        // When each difference is decided and the whole is not, the longest of all counts.
        int[] open = [.. Enumerable.Range(0, differences.Count).Where(i => DiscConformity.Of(differences[i].Vector, differences[i].Covariance, tolerance.Millimetres).Verdict == Verdict.Undecided)];
        int worst = (open.Length > 0 ? open : Enumerable.Range(0, differences.Count)).MaxBy(i => differences[i].Vector.Magnitude);
        CardVector along = differences[worst].Vector;
        return new(verdict, BedCorners.All.MinBy(corner =>
        {
            (Length x, Length y) = bed.Place(corner);
            SurveyFit? after = SurveyFit.Solve(bed, [.. marks, new SurveyMark(x, y, new(fit.At(corner).Point, pulse))]);
            // A fifth mark may let a bow be fitted, whose differences are others; places that barely determine the terms may do so no longer.
            return after is not null && after.Terms.Count == fit.Terms.Count ? Along(after.Differences()[worst].Covariance, along) : double.PositiveInfinity;
        }));
    }

    private static double Along(Covariance2 c, CardVector d) =>
        d.Magnitude > 0 ? ((d.U * d.U * c.Uu) + (2 * d.U * d.V * c.Uv) + (d.V * d.V * c.Vv)) / (d.Magnitude * d.Magnitude) : c.Uu + c.Vv;
}
