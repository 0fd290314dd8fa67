using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Aiming;

public sealed class PivotLearningTests
{
    [Theory]
    [InlineData(12, 0)]
    [InlineData(-9, 0)]
    [InlineData(12, 45)]
    public void Lines_of_exact_rounds_cross_at_minus_k(double k, double incidence)
    {
        SimulatedLeg leg = new(new MersenneTwister(1, threadSafe: false), 1e-6, 0, incidence);
        PivotEstimate pivot = Learn(leg, k, [(0.008, -0.004), (-0.002, 0.001), (0.001, 0.006)], 80, 480);
        Assert.Equal(k, pivot.Offset.Value.Millimetres, 0.01);
        Assert.True(pivot.IsSignificant);
        Assert.Equal(pivot.Offset.Value, pivot.Leg.PivotOffset);
        Assert.Equal(pivot.Offset.Uncertainty, pivot.Leg.PivotUncertainty);
        Assert.Equal(3, pivot.Fit.DegreesOfFreedom);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 0)]
    [InlineData(2, 45)]
    public void Stated_uncertainty_holds_the_truth_in_95_percent_and_no_offset_is_significant_in_5(double pathUncertainty, double incidence)
    {
        SimulatedLeg leg = new(new MersenneTwister(34, threadSafe: false), 0.05, pathUncertainty, incidence);
        const int trials = 600;
        int inside = 0, significant = 0;
        for (int i = 0; i < trials; i++)
        {
            PivotEstimate with = Learn(leg, 10, [(0.008, -0.004), (-0.003, 0.002)], 80, 80, 480);
            inside += Math.Abs(with.Offset.Value.Millimetres - 10) < 1.96 * with.Offset.Uncertainty.Millimetres ? 1 : 0;
            significant += Learn(leg, 0, [(0.008, -0.004), (-0.003, 0.002)], 80, 80, 480).IsSignificant ? 1 : 0;
        }

        Assert.InRange(inside, 0.92 * trials, 0.98 * trials);
        Assert.InRange(significant, 0.02 * trials, 0.08 * trials);
    }

    [Fact]
    public void An_offset_that_is_not_significant_leaves_the_leg_as_stated()
    {
        SimulatedLeg leg = new(new MersenneTwister(3, threadSafe: false), 0.5);
        PivotEstimate pivot = Learn(leg, 3, [(0.03, 0), (-0.03, 0)], 80, 480);
        Assert.False(pivot.IsSignificant);
        Assert.Equal(leg.Leg, pivot.Leg);
    }

    [Fact]
    public void Rounds_with_like_slopes_are_refused()
    {
        SimulatedLeg leg = new(new MersenneTwister(2, threadSafe: false), 0.05);
        Assert.False(PivotLearning.Learn(leg.Leg, Rounds(leg, 10, [(0.003, 0), (0.00301, 0)], 80, 480)).TryGet(out _, out Failure? failure));
        Assert.Equal("PIVOT_ROUNDS_ALIKE", failure.Code.Name);
        Assert.False(PivotLearning.Learn(leg.Leg, Rounds(leg, 10, [(0.003, 0)], 80, 480)).TryGet(out _, out failure));
        Assert.Equal("PIVOT_ROUNDS", failure.Code.Name);
    }

    private static PivotEstimate Learn(SimulatedLeg leg, double k, (double Sx, double Sy)[] slopes, params double[] paths) =>
        PivotLearning.Learn(leg.Leg, Rounds(leg, k, slopes, paths)).ValueOrThrow();

    // All lines pass (1.5, −0.5) at z = −k.
    private static Observation[][] Rounds(SimulatedLeg leg, double k, (double Sx, double Sy)[] slopes, params double[] paths)
    {
        Dictionary<double, double> truePaths = leg.Paths(paths);
        return [.. slopes.Select(s => leg.Marks(new(1.5 + (s.Sx * k), s.Sx, -0.5 + (s.Sy * k), s.Sy), truePaths, paths))];
    }
}
