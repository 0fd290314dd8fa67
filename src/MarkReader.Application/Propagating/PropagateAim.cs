using MarkReader.Alignment.Aiming;
using MarkReader.Application.Aiming;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Quantities;

namespace MarkReader.Application.Propagating;

/// <summary>Checks the linear uncertainty of an aim point by propagating the distributions of its inputs (JCGM 101:2008).</summary>
/// <remarks>
/// Inputs, all normal: each mark with its own errors; the scale of the print along u and v and the height of the tape, each drawn once for both
/// marks; both path lengths; the pivot offset. The model is exact: scale and height act on the marks as they do in the measurement, and the aim
/// is the closed form of two marks.
/// </remarks>
public static class PropagateAim
{
    /// <summary>Draws with which the ends of a 95 % interval are known to 0.3 % of the standard uncertainty, a fifth of the tolerance and better (JCGM 101, 7.2.1 and 8.2).</summary>
    public const int UsualTrials = 1_000_000;

    public static Outcome<AimPropagation> Run(AimPhotos photos, LegInput leg, MeasureOptions options, Plan plan)
    {
        if (!FindAim.Run(photos, leg, options).TryGet(out AimFinding? finding, out Failure? failure))
            return failure;
        Sample sample = Propagation.Run(Inputs(finding, options), Model(finding, options), plan);
        MeasuredPoint linear = finding.Solution.Aim;
        return new AimPropagation(
            finding,
            plan,
            new(new(sample.Mean[0], sample.Mean[1]), new(sample.Covariance[0, 0], sample.Covariance[0, 1], sample.Covariance[1, 1])),
            sample.Fraction(y => linear.Covariance.MahalanobisSquared(new CardPoint(y[0], y[1]) - linear.Point) <= Covariance2.ChiSquare95),
            sample.EllipseFactor(),
            IntervalComparison.Of(linear.Point.U, Math.Sqrt(linear.Covariance.Uu), sample.Symmetric(output: 0)),
            IntervalComparison.Of(linear.Point.V, Math.Sqrt(linear.Covariance.Vv), sample.Symmetric(output: 1)));
    }

    private static IInput[] Inputs(AimFinding finding, MeasureOptions options)
    {
        CheckedLeg leg = finding.Leg;
        return
        [
            Own(finding.Near, (finding.NearView ?? finding.FarView).Camera, options.Tape),
            Own(finding.Far, finding.FarView.Camera, options.Tape),
            Metrology.MonteCarlo.Inputs.Normal(0, Relative(options.Rulers?.AlongU, options.Rulers)),
            Metrology.MonteCarlo.Inputs.Normal(0, Relative(options.Rulers?.AlongV, options.Rulers)),
            Normal(options.Tape.Height, options.Tape.StandardUncertainty),
            Normal(leg.Near.Path, leg.Near.PathUncertainty),
            Normal(leg.Far.Path, leg.Far.PathUncertainty),
            Normal(leg.Leg.PivotOffset, leg.Leg.PivotUncertainty),
        ];
    }

    // Drawn: near u, v; far u, v; scale errors along u, v; tape height; near and far path; pivot offset.
    private static Func<double[], double[]> Model(AimFinding finding, MeasureOptions options)
    {
        Length height = options.Tape.Height;
        CameraStand near = (finding.NearView ?? finding.FarView).Camera, far = finding.FarView.Camera;
        Angle incidence = finding.Leg.Leg.Incidence;
        return x =>
        {
            CardPoint aim = TwoMarkAim.Of(
                incidence, (OnTape(new(x[0], x[1]), near, height, x), x[7]), (OnTape(new(x[2], x[3]), far, height, x), x[8]), x[9]);
            return [aim.U, aim.V];
        };
    }

    // Back to where the mark is seen on the card's plane, where the scale acts, and up again to the drawn height.
    private static CardPoint OnTape(CardPoint mark, CameraStand camera, Length height, double[] x)
    {
        CardPoint seen = camera.OnPlane(mark, height);
        return camera.AtHeight(new(seen.U * (1 + x[4]), seen.V * (1 + x[5])), Length.FromMillimetres(x[6]));
    }

    private static IInput Own(Mark mark, CameraStand camera, TapeHeight tape) => Metrology.MonteCarlo.Inputs.Point(new(
        mark.Centre.Point,
        MarkErrorsOf.Errors(mark, camera, tape).Own.Select(c => c.Covariance).Aggregate(Covariance2.Isotropic(0), (a, b) => a + b)));

    private static IInput Normal(Length value, Length uncertainty) => Metrology.MonteCarlo.Inputs.Normal(value.Millimetres, uncertainty.Millimetres);

    private static double Relative(Length? ruler, RulerReadings? readings) =>
        ruler is { } length ? readings!.StandardUncertainty.Millimetres / length.Millimetres : 0;
}
