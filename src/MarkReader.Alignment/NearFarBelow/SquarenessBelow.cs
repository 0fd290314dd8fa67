using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Texts;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.NearFarBelow;

/// <summary>How square the beam goes down to the bed.</summary>
/// <param name="Slope">The beam against the square, mrad: positive where the mark walks towards +u or +v as the tape goes farther from the head.</param>
/// <param name="Verdict">Of its size against the tolerance.</param>
/// <param name="Line">The fitted line; its aim point is where the marks fall once the beam is square.</param>
public sealed record BeamSquareness(Slope Slope, Conformity Verdict, AimSolution Line);

/// <summary>Leg 3: marks near and far below the head, on tape on the bed at two heights of the lift, or at the ends of tubes of two lengths held at the head.</summary>
public static class SquarenessBelow
{
    /// <param name="observations">Marks with their distances below mirror three's reflecting point. Only the differences of the distances count for the slope.</param>
    /// <param name="axisUncertainty">
    /// Standard uncertainty, each component, of the squareness to the bed of what carries the tape: the lift's travel, or the tube's axis. It is common to all marks.
    /// </param>
    /// <param name="tolerance">Largest angle between the beam and the square.</param>
    public static Outcome<BeamSquareness> Of(IReadOnlyList<Observation> observations, Angle axisUncertainty, Angle tolerance)
    {
        if ((InputChecks.Between(tolerance.Milliradians, (0.01, 1000), SquarenessFailures.ToleranceInvalid, AlignmentTexts.Get("squarenessBelow.toleranceSquarenessInMrad"), AlignmentTexts.Get("squarenessBelow.giveLargestAngleBetweenBeam"))
            ?? InputChecks.Between(axisUncertainty.Milliradians, (0, 1000), SquarenessFailures.AxisInvalid, AlignmentTexts.Get("squarenessBelow.uncertaintyLiftOrTubeSquareness"), AlignmentTexts.Get("squarenessBelow.giveStandardUncertaintyInMrad"))) is { } wrong)
            return wrong;
        if (!AimSolver.Solve(Leg.Square, observations).TryGet(out AimSolution? line, out Failure? failure))
            return failure;
        Slope slope = line.Slope with { Covariance = line.Slope.Covariance + Covariance2.Isotropic(axisUncertainty.Milliradians) };
        return new BeamSquareness(slope, JobVerdicts.Slope(slope, tolerance), line);
    }
}
