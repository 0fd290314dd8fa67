using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Apertures;

/// <summary>J. M. Liu, Opt. Lett. 7 (1982) 196: D² = 2w²·ln(E/Eth).</summary>
public sealed class BeamSizeTests
{
    // D/w for F/Fth, from the formula.
    [Theory]
    [InlineData(1.5, 0.900517)]
    [InlineData(2, 1.177410)]
    [InlineData(Math.E, 1.414214)]
    [InlineData(5, 1.794123)]
    [InlineData(10, 2.145966)]
    public void Two_marks_give_back_beam_and_threshold(double ratio, double diameter)
    {
        BeamSize size = Solve([(20 * ratio, 2.5 * diameter), (20 * 30, 2.5 * Math.Sqrt(2 * Math.Log(30)))], 1e-4);
        Assert.Equal(2.5, size.Radius.Value.Millimetres, 1e-5);
        Assert.Equal(20, size.Threshold, 2e-4);
        Assert.Equal((0, null), (size.Fit.DegreesOfFreedom, size.Fit.Probability));
    }

    [Fact]
    public void Stated_uncertainties_hold_the_truth_as_often_as_they_say()
    {
        MersenneTwister random = new(8, threadSafe: false);
        double[] energies = [1.5, 1.5, 3, 3, 6, 12];
        (double w, double threshold, double u) = (2.2, 0.8, 0.06);
        const int trials = 2000;
        int radiusInside = 0, thresholdInside = 0;
        double sum = 0;
        for (int i = 0; i < trials; i++)
        {
            BeamSize size = Solve([.. energies.Select(e => (e, (w * Math.Sqrt(2 * Math.Log(e / threshold))) + Normal.Sample(random, 0, u)))], u);
            sum += size.Radius.Value.Millimetres;
            radiusInside += Math.Abs(size.Radius.Value.Millimetres - w) < 1.96 * size.Radius.Uncertainty.Millimetres ? 1 : 0;
            thresholdInside += Math.Abs(size.Threshold - threshold) < 1.96 * size.ThresholdUncertainty ? 1 : 0;
        }

        Assert.Equal(w, sum / trials, 0.002);
        Assert.InRange(radiusInside, 0.93 * trials, 0.97 * trials);
        Assert.InRange(thresholdInside, 0.925 * trials, 0.975 * trials);
    }

    [Fact]
    public void Diameters_that_do_not_follow_the_law_earn_a_warning()
    {
        BeamSize size = Solve([(1, 1), (2, 3), (4, 3.1), (8, 6)], 0.03);
        Assert.Equal("diametersOffLine", Assert.Single(size.Warnings).Code);
        Assert.Empty(Solve([(1, 1), (2, Math.Sqrt(1 + (2 * Math.Log(2)))), (4, Math.Sqrt(1 + (2 * Math.Log(4))))], 0.03).Warnings);
    }

    [Theory]
    [InlineData("TOO_FEW_ENERGIES", 5, 5, 1, 2, 0.05)]
    [InlineData("DIAMETERS_DO_NOT_GROW", 5, 10, 2, 2.01, 0.05)]
    [InlineData("DIAMETERS_DO_NOT_GROW", 5, 10, 2, 1, 0.05)]
    [InlineData("ENERGY_INVALID", 5, double.NaN, 1, 2, 0.05)]
    [InlineData("ENERGY_INVALID", 0, 5, 1, 2, 0.05)]
    [InlineData("DIAMETER_INVALID", 5, 10, 0, 2, 0.05)]
    [InlineData("DIAMETER_INVALID", 5, 10, 1, 2, 0)]
    public void Marks_that_say_nothing_are_refused(string code, double e1, double e2, double d1, double d2, double u)
    {
        Outcome<BeamSize> outcome = BeamSizeFit.Solve([new(e1, MeasuredLength.FromMillimetres(d1, u)), new(e2, MeasuredLength.FromMillimetres(d2, u))]);
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    private static BeamSize Solve((double Energy, double Diameter)[] marks, double u) =>
        BeamSizeFit.Solve([.. marks.Select(m => new EnergyMark(m.Energy, MeasuredLength.FromMillimetres(m.Diameter, u)))]).ValueOrThrow();
}
