using MarkReader.Alignment.Verdicts;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Verdicts;

public sealed class ScalarConformityTests
{
    /// <summary>JCGM 106:2012, table 1: conformance probability against z = (TU − y)/u for one limit.</summary>
    [Theory]
    [InlineData(0.84, 0.80)]
    [InlineData(1.28, 0.90)]
    [InlineData(1.64, 0.95)]
    [InlineData(2.33, 0.99)]
    [InlineData(3.09, 0.999)]
    public void Conformance_probability_under_one_limit(double z, double probability)
    {
        Assert.Equal(probability, ScalarConformity.AtMost(10 - (0.5 * z), 0.5, 10).Probability, 0.0008);
        Assert.Equal(probability, ScalarConformity.AtLeast(-10 + (0.5 * z), 0.5, -10).Probability, 0.0008);
    }

    /// <summary>In the middle of a tolerance of ±1.96·u the probability is 95 %; two limits add their tails.</summary>
    [Fact]
    public void Conformance_probability_between_two_limits()
    {
        Assert.Equal(0.95, ScalarConformity.Of(3, 1, 3 - 1.959964, 3 + 1.959964).Probability, 1e-6);
        Assert.Equal(0.8185946, ScalarConformity.Of(0, 1, -1, 2).Probability, 1e-6);
    }

    [Theory]
    [InlineData(8.03, "Within")]
    [InlineData(8.05, "Undecided")]
    [InlineData(10, "Undecided")]
    [InlineData(11.95, "Undecided")]
    [InlineData(11.97, "Outside")]
    public void The_guard_band_is_1_96_u_on_either_side_of_a_limit(double value, string verdict)
    {
        Assert.Equal(verdict, ScalarConformity.AtMost(value, 1, 10).Verdict.ToString());
        Assert.Equal(8.040036, DecisionRule.AcceptanceLimit(10, 1), 1e-6);
    }

    [Theory]
    [InlineData(10, "Within", 1)]
    [InlineData(10.001, "Outside", 0)]
    public void Without_uncertainty_the_value_decides(double value, string verdict, double probability)
    {
        Conformity conformity = ScalarConformity.Of(value, 0, 0, 10);
        Assert.Equal((verdict, probability), (conformity.Verdict.ToString(), conformity.Probability));
    }

    /// <summary>Truths on the limit, the worst case both ways, with wide and narrow tolerances.</summary>
    [Theory]
    [InlineData(double.NegativeInfinity, 1, 1)]
    [InlineData(-1, 1, 1)]
    [InlineData(-1, 1, 0)]
    [InlineData(-0.05, 0.05, 0.05)]
    [InlineData(-0.05, 0.05, 0)]
    [InlineData(0, 0.3, 0.3)]
    public void At_the_limit_at_most_2_5_percent_are_called_within_and_at_most_2_5_percent_outside(double lower, double upper, double truth)
    {
        MersenneTwister random = new(11, threadSafe: false);
        const double u = 0.2;
        const int trials = 20_000;
        Dictionary<Verdict, int> count = Enum.GetValues<Verdict>().ToDictionary(v => v, _ => 0);
        for (int i = 0; i < trials; i++)
            count[ScalarConformity.Of(Normal.Sample(random, truth, u), u, lower, upper).Verdict]++;
        Assert.InRange(count[Verdict.Outside], 0, Worst(trials));
        if (truth == upper)
            Assert.InRange(count[Verdict.Within], 0, Worst(trials));
    }

    [Theory]
    [InlineData(double.NaN, 1, 0, 1)]
    [InlineData(1, double.NaN, 0, 1)]
    [InlineData(1, -1, 0, 1)]
    [InlineData(1, 1, 1, 0)]
    public void Numbers_that_mean_nothing_are_a_fault(double value, double u, double lower, double upper) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ScalarConformity.Of(value, u, lower, upper));

    // 2.5 % and three standard deviations of the count.
    private static int Worst(int trials) => (int)((0.025 * trials) + (3 * Math.Sqrt(0.025 * 0.975 * trials)));
}
