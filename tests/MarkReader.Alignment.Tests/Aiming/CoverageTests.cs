using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>The stated 95 % region, tested both ways: simulated legs with known truth, errors of marks, paths and pivot drawn from what is stated.</summary>
public sealed class CoverageTests
{
    private const int Trials = 2000;

    // Of 2000 trials at 95 %: standard deviation 0.5 %.
    private const double Least = 0.93, Most = 0.97;

    public static TheoryData<string, double, double, double[]> Cases => new()
    {
        { "marks only", 0, 0, [80, 480] },
        { "path errors as large as the marks'", 0, 2, [80, 480] },
        { "repeats at both stations", 0, 2, [80, 80, 80, 480, 480] },
        { "four stations", 0, 1.5, [60, 200, 400, 560] },
        { "tape on a 45 degree mirror", 45, 2, [80, 80, 480] },
        { "tape turned the other way", -30, 2, [100, 300, 700] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Region_of_95_percent_holds_about_95_percent_of_the_truths(string what, double incidence, double pathUncertainty, double[] paths)
    {
        MersenneTwister random = new(20250, threadSafe: false);
        Covariance2 each = new(0.0016, 0.0006, 0.0009);
        Leg leg = Some.Leg(incidence, pivot: 5, pivotUncertainty: 3);
        BeamFrame frame = new(leg.Incidence);
        BeamLine beam = new(1.3, 0.012, -0.8, -0.007);
        int inside = 0;
        for (int trial = 0; trial < Trials; trial++)
        {
            double k = Normal.Sample(random, 5, 3);
            CardPoint truth = frame.OnTapeStraight(beam.X0 - (beam.Sx * k), beam.Y0 - (beam.Sy * k));
            Dictionary<double, double> truePath = paths.Distinct().ToDictionary(p => p, p => Normal.Sample(random, p, pathUncertainty));
            Observation[] marks =
            [
                .. paths.Select(p => new Observation(Some.Station(p, pathUncertainty), new(frame.OnTape(beam, truePath[p]) + Draw(random, each), each))),
            ];
            MeasuredPoint aim = AimSolver.Solve(leg, marks).ValueOrThrow().Aim;
            if (aim.Covariance.MahalanobisSquared(truth - aim.Point) <= Covariance2.ChiSquare95)
                inside++;
        }

        Assert.True(inside is >= (int)(Least * Trials) and <= (int)(Most * Trials), $"{what}: {inside} of {Trials} inside");
    }

    private static CardVector Draw(MersenneTwister random, Covariance2 c)
    {
        double first = Normal.Sample(random, 0, 1);
        double root = Math.Sqrt(c.Uu);
        return new(root * first, (c.Uv / root * first) + (Math.Sqrt(c.Vv - (c.Uv * c.Uv / c.Uu)) * Normal.Sample(random, 0, 1)));
    }
}
