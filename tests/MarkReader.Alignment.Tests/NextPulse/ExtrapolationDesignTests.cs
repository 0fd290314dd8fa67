using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.NextPulse;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.NextPulse;

/// <summary>P. G. Hoel and A. Levine, Ann. Math. Stat. 35 (1964) 1553.</summary>
public sealed class ExtrapolationDesignTests
{
    [Fact]
    public void Pulses_are_shared_as_far_to_near() => Assert.Equal(480.0 / 560, ExtrapolationDesign.NearShare(Some.Mm(80), Some.Mm(480), Length.Zero), 1e-12);

    /// <summary>80 and 480 mm: three near and one far have about a third of the variance of one and one, 83 200/236 800.</summary>
    [Fact]
    public void Three_near_and_one_far_have_a_third_of_the_variance_of_one_and_one()
    {
        double Variance(int near, int far) => ExtrapolationDesign.Variance((Some.Mm(80), near), (Some.Mm(480), far), Length.Zero);
        Assert.Equal(83_200.0 / 236_800, Variance(3, 1) / Variance(1, 1), 1e-12);
        Assert.Equal((3, 1), ExtrapolationDesign.Pulses(4, Some.Mm(80), Some.Mm(480), Length.Zero));
        Assert.Equal((6, 1), ExtrapolationDesign.Pulses(7, Some.Mm(80), Some.Mm(480), Length.Zero));
    }

    [Fact]
    public void Variance_is_that_of_the_aim_solver() =>
        Gen.Select(Gen.Double[20, 200], Gen.Double[50, 800], Gen.Int[1, 5], Gen.Int[1, 5], Gen.Double[-15, 15]).Sample((near, travel, nNear, nFar, k) =>
        {
            Observation[] marks =
            [
                .. Enumerable.Repeat(Some.Mark(near, 0.1, 0.2, 0.05), nNear), .. Enumerable.Repeat(Some.Mark(near + travel, 0.1, 0.2, 0.05), nFar),
            ];
            double variance = ExtrapolationDesign.Variance((Some.Mm(near), nNear), (Some.Mm(near + travel), nFar), Some.Mm(k));
            return Math.Abs((AimSolver.Solve(Some.Leg(pivot: k), marks).ValueOrThrow().Aim.Covariance.Uu / (0.0025 * variance)) - 1) < 1e-6;
        });
}
