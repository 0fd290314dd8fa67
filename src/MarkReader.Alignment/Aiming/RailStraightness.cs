using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Aiming;

/// <summary>How straight the rail is between the stations of a leg.</summary>
/// <param name="Bow">How far the marks half-way of the travel lie off the straight line between those at its ends, across the beam, mm.</param>
/// <param name="Covariance">Its covariance, mm².</param>
/// <param name="Probability">Of a bow at least as large on a straight rail (χ² with 2 degrees of freedom).</param>
/// <param name="Rest">How well a line with this bow fits the marks.</param>
public sealed record Straightness(CardVector Bow, Covariance2 Covariance, double Probability, FitQuality Rest)
{
    /// <summary>Whether the bow is significant at 1 %.</summary>
    public bool IsBent => Probability < AimSolver.ImprobableBelow;
}

/// <summary>The quadratic term of the marks' walk along the rail.</summary>
/// <remarks>
/// The residuals of the fitted line are fitted again with 1, ζ and ζ(ζ − 1), ζ from 0 at the shortest path to 1 at the longest, weighted by the line's
/// effective covariance (marks, what they share, path lengths). A bent rail moves the target, not the beam; the bow is the marks'.
/// </remarks>
public static class RailStraightness
{
    public static Outcome<Straightness> Of(Leg leg, IReadOnlyList<Observation> observations)
    {
        if (observations.Select(o => o.Station.Path).Distinct().Count() < 3)
            return new Failure(AimingFailures.StraightnessStations, AlignmentTexts.Get("railStraightness.fewerThanThreeStationsSay"), AlignmentTexts.Get("railStraightness.firePulseWithCarriageHalf"));
        if (!AimSolver.Solve(leg, observations).TryGet(out _, out Failure? failure))
            return failure;
        BeamFrame frame = new(leg.Incidence);
        BeamLineConditions conditions = new(frame, observations);
        if (ConditionFit.Solve(conditions) is not { } line)
            return new Failure(LegFailures.NoFit, AlignmentTexts.Get("common.noLineFitsMarksAnd"), AlignmentTexts.Get("common.checkThatEachMarkGiven"));

        (Vector<double> residuals, Matrix<double> byObserved) = conditions.At(line.Line.Parameters);
        double[] z = [.. observations.Select(o => o.Station.Path.Millimetres + (o.Place.U * frame.Sin))];
        double least = z.Min(), range = z.Max() - least;
        Matrix<double> design = Matrix<double>.Build.Dense(2 * z.Length, 6, (i, j) =>
        {
            double part = (z[i / 2] - least) / range;
            return i % 2 != j / 3 ? 0 : (j % 3) switch { 0 => 1, 1 => part, _ => part * (part - 1) };
        });
        LinearFit fit = LeastSquares.Generalised(design, residuals, byObserved * conditions.Covariance.TransposeAndMultiply(byObserved));
        // ζ(ζ − 1) is −1/4 half-way.
        CardVector bow = new(-fit.Parameters[2] / 4, -fit.Parameters[5] / 4);
        Covariance2 covariance = (1.0 / 16) * fit.Covariance.Points(2, 5);
        return new Straightness(bow, covariance, Math.Exp(-covariance.MahalanobisSquared(bow) / 2), AimSolver.Quality(fit));
    }
}
