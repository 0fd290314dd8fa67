using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Application.Auditing;

/// <summary>A measured mark and the true place it belongs to.</summary>
public sealed record MatchedMark(CardPoint Truth, Mark Mark)
{
    /// <summary>Measured minus true, mm.</summary>
    public CardVector Error => Mark.Centre.Point - Truth;

    /// <summary>The squared distance from the truth in units of the stated covariance, dᵀC⁻¹d; +∞ when the covariance is singular.</summary>
    public double MahalanobisSquared => Mark.Centre.Covariance.MahalanobisSquared(Error);

    /// <summary>The root of <see cref="MahalanobisSquared"/>: 2.4477 on the border of the 95 % region.</summary>
    public double Mahalanobis => Math.Sqrt(MahalanobisSquared);

    /// <summary>Whether the truth lies in the mark's 95 % region.</summary>
    public bool Covered => MahalanobisSquared <= Covariance2.ChiSquare95;

    /// <summary>Whether the truth lies beyond three times the mark's 95 % region.</summary>
    public bool IsFar => Mahalanobis > AuditSummary.FarFactor * Math.Sqrt(Covariance2.ChiSquare95);
}

/// <summary>Pairs measured marks with true ones, the closest pairs first.</summary>
public static class MarkMatching
{
    /// <summary>A mark farther than this from every truth belongs to none, mm.</summary>
    public const double Gate = 1;

    public static IReadOnlyList<MatchedMark> Match(IReadOnlyList<CardPoint> truths, IReadOnlyList<Mark> marks)
    {
        List<MatchedMark> matched = [];
        HashSet<int> usedTruths = [], usedMarks = [];
        var pairs =
            from t in Enumerable.Range(0, truths.Count)
            from m in Enumerable.Range(0, marks.Count)
            let distance = truths[t].DistanceTo(marks[m].Centre.Point)
            where distance <= Gate
            orderby distance
            select (t, m);
        foreach ((int t, int m) in pairs)
        {
            if (usedTruths.Contains(t) || usedMarks.Contains(m))
                continue;
            usedTruths.Add(t);
            usedMarks.Add(m);
            matched.Add(new(truths[t], marks[m]));
        }

        return [.. matched.OrderBy(p => p.Truth.U)];
    }
}
