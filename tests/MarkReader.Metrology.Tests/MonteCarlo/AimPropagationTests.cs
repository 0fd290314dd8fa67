using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Tests.MonteCarlo;

/// <summary>The aim's linear propagation against the propagation of distributions through the whole solver (JCGM 101, clause 8).</summary>
public sealed class AimPropagationTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    public void Linear_covariance_of_the_aim_agrees_with_Monte_Carlo(double incidence)
    {
        MeasuredPoint near = new(new(1.2, -0.6), new(0.0009, 0.0003, 0.0016)), far = new(new(7.5, -3.1), new(0.0016, -0.0005, 0.0009));
        (double nearPath, double farPath, double uPath, double k, double uk) = (80, 480, 2, 6, 3);
        AimSolution Solve(CardPoint n, CardPoint f, double[] p) => AimSolver.Solve(
            new(Angle.FromDegrees(incidence), Mm(p[2]), Mm(uk)),
            [new(new(Mm(p[0]), Mm(uPath)), near with { Point = n }), new(new(Mm(p[1]), Mm(uPath)), far with { Point = f })]).ValueOrThrow();

        MeasuredPoint linear = Solve(near.Point, far.Point, [nearPath, farPath, k]).Aim;
        Sample sample = Propagation.Run(
            [Inputs.Point(near), Inputs.Point(far), Inputs.Normal(nearPath, uPath), Inputs.Normal(farPath, uPath), Inputs.Normal(k, uk)],
            x =>
            {
                CardPoint aim = Solve(new(x[0], x[1]), new(x[2], x[3]), x[4..7]).Aim.Point;
                return [aim.U, aim.V];
            },
            new(40_000, 7));

        Assert.Equal(linear.Point.U, sample.Mean[0], 0.003);
        Assert.Equal(linear.Point.V, sample.Mean[1], 0.003);
        Assert.Equal(1, sample.Covariance[0, 0] / linear.Covariance.Uu, 0.04);
        Assert.Equal(1, sample.Covariance[1, 1] / linear.Covariance.Vv, 0.04);
        double scale = Math.Sqrt(linear.Covariance.Uu * linear.Covariance.Vv);
        Assert.Equal(linear.Covariance.Uv / scale, sample.Covariance[0, 1] / scale, 0.03);
        Assert.InRange(
            sample.Fraction(y => linear.Covariance.MahalanobisSquared(new CardPoint(y[0], y[1]) - linear.Point) <= Covariance2.ChiSquare95), 0.945, 0.955);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    public void Errors_that_both_marks_share_agree_with_Monte_Carlo(double incidence)
    {
        // The marks stand on opposite sides of the centre: a shared scale error is not what two independent ones would be.
        CardPoint near = new(-6, 4), far = new(7, -5), foot = new(60, -20);
        (double scale, double tape, double height) = (0.004, 0.4, 150);
        Covariance2 own = Covariance2.Isotropic(0.01);
        MarkErrors Errors(CardPoint p) => new(
            [new(UncertaintySource.Noise, own)],
            [
                new(UncertaintySource.PrintScale, "u", new(scale * p.U, 0)),
                new(UncertaintySource.PrintScale, "v", new(0, scale * p.V)),
                new(UncertaintySource.Parallax, "tape", -tape / height * (p - foot)),
            ]);
        AimSolution linear = AimSolver.Solve(
            new(Angle.FromDegrees(incidence), Mm(0), Mm(0)), [new(new(Mm(80), Mm(1)), near, Errors(near)), new(new(Mm(480), Mm(1)), far, Errors(far))]).ValueOrThrow();
        CardPoint True(double u, double v, double[] x)
        {
            CardPoint flat = new(u * (1 + x[4]), v * (1 + x[5]));
            return foot + ((height - x[6]) / height * (flat - foot));
        }

        Sample sample = Propagation.Run(
            [
                Inputs.Point(new(near, own)), Inputs.Point(new(far, own)), Inputs.Normal(0, scale), Inputs.Normal(0, scale), Inputs.Normal(0, tape),
                Inputs.Normal(80, 1), Inputs.Normal(480, 1),
            ],
            x =>
            {
                CardPoint aim = TwoMarkAim.Of(Angle.FromDegrees(incidence), (True(x[0], x[1], x), x[7]), (True(x[2], x[3], x), x[8]), 0);
                return [aim.U, aim.V];
            },
            new(200_000, 11));

        Assert.Equal(1, sample.Covariance[0, 0] / linear.Aim.Covariance.Uu, 0.03);
        Assert.Equal(1, sample.Covariance[1, 1] / linear.Aim.Covariance.Vv, 0.03);
        double root = Math.Sqrt(linear.Aim.Covariance.Uu * linear.Aim.Covariance.Vv);
        Assert.Equal(linear.Aim.Covariance.Uv / root, sample.Covariance[0, 1] / root, 0.02);
        Assert.InRange(
            sample.Fraction(y => linear.Aim.Covariance.MahalanobisSquared(new CardPoint(y[0], y[1]) - linear.Aim.Point) <= Covariance2.ChiSquare95), 0.945, 0.955);
    }

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
