using MarkReader.Alignment.Aiming;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Verdicts;

/// <summary>A vector in the card frame (mm) with its covariance (mm²).</summary>
public sealed record MeasuredVector(CardVector Vector, Covariance2 Covariance);

/// <summary>The verdicts of the job.</summary>
public static class JobVerdicts
{
    /// <summary>The walk of the mark over the travel, |θ|·(Lfar − Lnear), against the leg's tolerance.</summary>
    public static Conformity Leg(Slope slope, Length travel, Length tolerance)
    {
        double metres = travel.Millimetres / 1000;
        return DiscConformity.Of(new(metres * slope.U, metres * slope.V), (metres * metres) * slope.Covariance, tolerance.Millimetres);
    }

    /// <summary>A slope against a tolerance in mrad.</summary>
    public static Conformity Slope(Slope slope, Angle tolerance) => DiscConformity.Of(new(slope.U, slope.V), slope.Covariance, tolerance.Milliradians);

    /// <summary>A mark, or the aim point, against the aperture's centre, both measured on one card.</summary>
    /// <param name="mark">The steady mark.</param>
    /// <param name="centre">The aperture's centre; its errors are taken as independent of the mark's.</param>
    public static Conformity Centring(MeasuredPoint mark, MeasuredPoint centre, Length tolerance) =>
        DiscConformity.Of(mark.Point - centre.Point, mark.Covariance + centre.Covariance, tolerance.Millimetres);

    /// <summary>
    /// Vectors none of which may be longer than the tolerance: the marks' distances over the bed. Within only when each is (an intersection-union test:
    /// R. L. Berger, Technometrics 24 (1982) 295, so that no correction is needed); outside when one is, at the level divided by their number.
    /// </summary>
    public static Conformity Spread(IReadOnlyCollection<MeasuredVector> differences, Length tolerance) =>
        Whole([.. differences.Select(d => DiscConformity.Of(d.Vector, d.Covariance, tolerance.Millimetres))]);

    /// <summary>
    /// The machine as a whole: within only when every part is; outside when a part's level, times the number of parts, is at most 2.5 %; else undecided,
    /// also when one part alone is barely outside.
    /// </summary>
    public static Conformity Whole(IReadOnlyCollection<Conformity> parts)
    {
        if (parts.Count == 0)
            throw new ArgumentException("A verdict needs at least one part.", nameof(parts));
        double level = Math.Min(1, parts.Count * parts.Min(p => p.OutsideLevel));
        Verdict verdict = parts.All(p => p.Verdict == Verdict.Within) ? Verdict.Within
            : level <= DecisionRule.LargestError ? Verdict.Outside
            : Verdict.Undecided;
        return new(verdict, Math.Max(0, 1 - parts.Sum(p => 1 - p.Probability)), level);
    }
}
