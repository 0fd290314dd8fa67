using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;
using MathNet.Numerics;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Aiming;

/// <summary>The aim point of a leg from marks at two or more stations.</summary>
/// <remarks>
/// The beam runs on a straight line p(z) = p0 + s·z. Turning the source mirror swings it about z = −k, so p(−k) is the
/// one place that no turn moves. Both components are fitted together by weighted least squares with the full covariance
/// of every mark, what marks share, and an uncertain path length at every station (<see cref="ConditionFit"/>); k enters the aim's
/// covariance as s·sᵀ·u(k)². The covariance is the sum of the budget (<see cref="AimBudget"/>).
/// For two marks on a target square to the beam: aim = near − (far − near)·(Lnear + k)/(Lfar − Lnear).
/// </remarks>
public static class AimSolver
{
    /// <summary>A χ² less probable than this earns a warning.</summary>
    public const double ImprobableBelow = 0.01;

    /// <summary>A slope above this, mrad, earns a warning: a beam so far off does not reach its next mirror.</summary>
    public const double LargeSlope = 100;

    public static Outcome<AimSolution> Solve(Leg leg, IReadOnlyList<Observation> observations)
    {
        if (LegChecks.All(leg, [.. observations.Select(o => o.Station)]) is { } wrong)
            return wrong;
        if (observations.Any(o => o.Mark.Covariance.Determinant <= 0))
            return new Failure(LegFailures.MarkUncertaintyZero, AlignmentTexts.Get("aimSolver.markHasNoUncertaintyIn"), AlignmentTexts.Get("aimSolver.giveEveryMarkStandardUncertainty"));
        BeamFrame frame = new(leg.Incidence);
        BeamLineConditions conditions = new(frame, observations);
        if (ConditionFit.Solve(conditions) is not { } solution)
            return new Failure(LegFailures.NoFit, AlignmentTexts.Get("common.noLineFitsMarksAnd"), AlignmentTexts.Get("common.checkThatEachMarkGiven"));

        LinearFit fit = solution.Line;
        BeamLine line = BeamLineConditions.Line(fit.Parameters);
        FitQuality quality = Quality(fit);
        Slope slope = new(1000 * line.Sx, 1000 * line.Sy, 1e6 * fit.Covariance.Points(1, 3));
        double k = leg.PivotOffset.Millimetres;
        IReadOnlyList<UncertaintyComponent> budget = AimBudget.Of(leg, frame, conditions, solution);
        MeasuredPoint aim = new(frame.OnTapeStraight(line.X0 - (line.Sx * k), line.Y0 - (line.Sy * k)), budget.Select(c => c.Covariance).Aggregate((a, b) => a + b));
        double[] paths = [.. observations.Select(o => o.Station.Path.Millimetres)];
        return new AimSolution(
            aim,
            budget,
            slope,
            Ratio(leg, aim.Point, (frame.OnTape(line, paths.Min()), paths.Min()), (frame.OnTape(line, paths.Max()), paths.Max())),
            quality,
            [.. observations.Select(o => new AimResidual(o, o.Place - frame.OnTape(line, o.Station.Path.Millimetres)))],
            [.. Warnings(quality, slope)]);
    }

    // Marks that coincide leave 0/0; the path lengths give its limit.
    private static double Ratio(Leg leg, CardPoint aim, (CardPoint Point, double Path) near, (CardPoint Point, double Path) far)
    {
        double separation = near.Point.DistanceTo(far.Point);
        return separation > 1e-9
            ? aim.DistanceTo(near.Point) / separation
            : (near.Path + leg.PivotOffset.Millimetres) / (far.Path - near.Path);
    }

    internal static FitQuality Quality(LinearFit fit) => fit.DegreesOfFreedom == 0
        ? new(0, 0, null)
        : new(fit.ChiSquare, fit.DegreesOfFreedom, SpecialFunctions.GammaUpperRegularized(fit.DegreesOfFreedom / 2.0, fit.ChiSquare / 2));

    private static IEnumerable<Warning> Warnings(FitQuality quality, Slope slope)
    {
        if (quality.Probability < ImprobableBelow)
            yield return new("marksOffLine", Say("warning.marksOffLine", quality.ChiSquare, quality.DegreesOfFreedom));
        if (slope.Magnitude > LargeSlope)
            yield return new("largeSlope", Say("warning.largeSlope", slope.Magnitude));
    }
}
