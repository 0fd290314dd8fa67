using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Aiming;

/// <summary>The pivot offset learned from rounds of marks.</summary>
/// <param name="Offset">k with its standard uncertainty.</param>
/// <param name="IsSignificant">Whether it differs from the offset stated for the leg by more than 1.96 standard uncertainties, and the rounds' lines do cross.</param>
/// <param name="Fit">How well all lines cross in one place.</param>
/// <param name="Leg">The leg to go on with: with the learned offset when that is significant, else as stated.</param>
public sealed record PivotEstimate(MeasuredLength Offset, bool IsSignificant, FitQuality Fit, Leg Leg);

/// <summary>Where the beam swings, from rounds of marks with different screw settings: their lines cross at z = −k.</summary>
/// <remarks>All rounds are fitted together (<see cref="PivotConditions"/>), so that an error of a path length is the same in each.</remarks>
public static class PivotLearning
{
    /// <summary>Most rounds taken together.</summary>
    public const int MostRounds = 30;

    private const double Significant = Normal95.Factor;

    // The slopes must differ by this many of their standard uncertainties, else nothing crosses.
    private const double LeastDifference = 5;

    /// <param name="leg">The leg, with its offset as stated (zero when not known).</param>
    /// <param name="rounds">Two or more rounds, each with marks at two or more stations; between rounds a screw was turned.</param>
    public static Outcome<PivotEstimate> Learn(Leg leg, IReadOnlyList<IReadOnlyList<Observation>> rounds)
    {
        if (rounds.Count is < 2 or > MostRounds)
            return new Failure(AimingFailures.PivotRounds, AlignmentTexts.Word("pivotLearning.roundsMarksDoNotGive", rounds.Count), AlignmentTexts.Get("pivotLearning.giveRoundsEachNearAnd"));
        AimSolution[] lines = new AimSolution[rounds.Count];
        for (int i = 0; i < lines.Length; i++)
        {
            if (!AimSolver.Solve(leg, rounds[i]).TryGet(out AimSolution? line, out Failure? failure))
                return failure;
            lines[i] = line;
        }

        if (!lines.Any(a => lines.Any(b => Differ(a.Slope, b.Slope))))
            return new Failure(AimingFailures.PivotRoundsAlike, AlignmentTexts.Get("pivotLearning.roundsSlopesNearlyAlikeSo"), AlignmentTexts.Get("pivotLearning.turnScrewSoThatFar"));
        BeamFrame frame = new(leg.Incidence);
        if (ConditionFit.Solve(new PivotConditions(frame, rounds, Start(frame, leg, lines))) is not { } solution)
            return new Failure(LegFailures.NoFit, AlignmentTexts.Get("pivotLearning.noPlaceFoundWhereRounds"), AlignmentTexts.Get("common.checkThatEachMarkGiven"));

        double k = solution.Line.Parameters[0], u = Math.Sqrt(solution.Line.Covariance[0, 0]);
        FitQuality fit = AimSolver.Quality(solution.Line);
        bool significant = Math.Abs(k - leg.PivotOffset.Millimetres) > Significant * u
            && !(fit.Probability < AimSolver.ImprobableBelow)
            && Math.Abs(k) <= LegChecks.LargestPivotOffset;
        MeasuredLength offset = MeasuredLength.FromMillimetres(k, u);
        return new PivotEstimate(offset, significant, fit, significant ? leg with { PivotOffset = offset.Value, PivotUncertainty = offset.Uncertainty } : leg);
    }

    private static bool Differ(Slope a, Slope b) =>
        (a.Covariance + b.Covariance).MahalanobisSquared(new(a.U - b.U, a.V - b.V)) > LeastDifference * LeastDifference;

    // x at the reflecting point is X + k·sx for every round: k is the slope of that line.
    private static Vector<double> Start(BeamFrame frame, Leg leg, AimSolution[] lines)
    {
        double stated = leg.PivotOffset.Millimetres;
        (double S, double At)[] x = [.. lines.Select(l => (l.Slope.U / 1000, (l.Aim.Point.U * frame.Cos) + (l.Slope.U / 1000 * stated)))];
        (double S, double At)[] y = [.. lines.Select(l => (l.Slope.V / 1000, l.Aim.Point.V + (l.Slope.V / 1000 * stated)))];
        double Cross((double S, double At)[] line, Func<(double S, double At), double> other) =>
            line.Sum(p => (p.S - line.Average(q => q.S)) * other(p));
        double k = (Cross(x, p => p.At) + Cross(y, p => p.At)) / (Cross(x, p => p.S) + Cross(y, p => p.S));
        return Vector<double>.Build.DenseOfEnumerable(
            [k, x.Average(p => p.At - (k * p.S)), y.Average(p => p.At - (k * p.S)), .. x.Zip(y).SelectMany(p => new[] { p.First.S, p.Second.S })]);
    }
}
