using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Centring;

/// <summary>What to do about the steady mark's place in the aperture.</summary>
/// <param name="Verdict">Of the mark against the aperture's centre.</param>
/// <param name="Offset">The mark from the centre, with the errors of both.</param>
/// <param name="Steps">What to do: sideways first; the step that makes the legs stale last. Empty when within, and when no offset is significant: then another pulse decides.</param>
/// <param name="Expected">The mark from the centre after all steps; its covariance is that of the measurement.</param>
public sealed record CentringAdvice(Conformity Verdict, MeasuredVector Offset, IReadOnlyList<CentringStep> Steps, MeasuredVector Expected);

/// <summary>Centring after the marks have been made to coincide: the target is brought to the beam where that is possible, else the tube is raised.</summary>
public static class ApertureCentring
{
    // A component is worth a step when it is significant and more than this part of the tolerance.
    private const double LeastPart = 0.1;

    private const double FarthestOffset = 100;

    /// <param name="mark">The steady mark on the target's card.</param>
    /// <param name="centre">The aperture's centre on the same card; its errors are independent of the mark's.</param>
    /// <param name="tolerance">Largest distance of the beam from the centre.</param>
    /// <param name="supports">The tube's supports; null when not measured.</param>
    public static Outcome<CentringAdvice> Advise(MeasuredPoint mark, MeasuredPoint centre, Length tolerance, TubeSupports? supports = null)
    {
        MeasuredVector offset = new(mark.Point - centre.Point, mark.Covariance + centre.Covariance);
        if ((InputChecks.Lengths(offset.Vector.Magnitude, (0, FarthestOffset), CentringFailures.OffsetInvalid, AlignmentTexts.Get("apertureCentring.markDistanceFromApertureCentre"), AlignmentTexts.Get("apertureCentring.giveMarkAndCentreOn"))
            ?? InputChecks.Lengths(tolerance.Millimetres, (0.001, FarthestOffset), CentringFailures.ToleranceInvalid, AlignmentTexts.Get("apertureCentring.toleranceCentring"), AlignmentTexts.Word("apertureCentring.sayHowFarFromAperture", InputChecks.Mm(0.5)))
            ?? supports?.Check()) is { } wrong)
            return wrong;

        Conformity verdict = DiscConformity.Of(offset.Vector, offset.Covariance, tolerance.Millimetres);
        if (verdict.Verdict == Verdict.Within)
            return new CentringAdvice(verdict, offset, [], offset);
        List<CentringStep> steps = [];
        (double u, double v) = (0, 0);
        if (Matters(offset.Vector.U, offset.Covariance.Uu, tolerance))
        {
            steps.Add(new MovePlate(MeasuredLength.FromMillimetres(offset.Vector.U, Math.Sqrt(offset.Covariance.Uu))));
            u = offset.Vector.U;
        }

        if (Matters(offset.Vector.V, offset.Covariance.Vv, tolerance))
        {
            MeasuredLength height = MeasuredLength.FromMillimetres(Math.Abs(offset.Vector.V), Math.Sqrt(offset.Covariance.Vv));
            steps.Add(offset.Vector.V > 0
                ? new ShimTarget(height)
                : new RaiseTube(height, supports?.FrontRise(height), supports?.Tilt(height.Value) ?? Angle.Zero));
            v = offset.Vector.V;
        }

        return new CentringAdvice(verdict, offset, steps, offset with { Vector = offset.Vector - new CardVector(u, v) });
    }

    private static bool Matters(double component, double variance, Length tolerance) =>
        Math.Abs(component) > Math.Max(DecisionRule.GuardFactor * Math.Sqrt(variance), LeastPart * tolerance.Millimetres);
}
