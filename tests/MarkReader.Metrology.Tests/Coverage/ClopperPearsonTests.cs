using MarkReader.Metrology.Coverage;
using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Tests.Coverage;

public sealed class ClopperPearsonTests
{
    /// <summary>Mendelian inheritance, in the help page of R's binom.test (after W. J. Conover, Practical Nonparametric Statistics, 1971, p. 97).</summary>
    [Fact]
    public void The_interval_of_682_in_925_is_that_of_R()
    {
        Interval interval = ClopperPearson.Interval(682, 925);
        Assert.Equal(0.7076683, interval.Low, 5e-8);
        Assert.Equal(0.7654066, interval.High, 5e-8);
    }

    /// <summary>scipy.stats.binomtest(k, n).proportion_ci(method="exact"), SciPy 1.10.1.</summary>
    [Theory]
    [InlineData(0, 12, 0.000000000000, 0.264648469397)]
    [InlineData(1, 20, 0.001265089498, 0.248732762772)]
    [InlineData(19, 20, 0.751267237228, 0.998734910502)]
    [InlineData(12, 12, 0.735351530603, 1.000000000000)]
    [InlineData(752, 800, 0.921232695960, 0.955433017329)]
    [InlineData(6, 7, 0.421276802957, 0.996389703138)]
    public void Intervals_are_those_of_SciPy(int successes, int trials, double low, double high)
    {
        Interval interval = ClopperPearson.Interval(successes, trials);
        Assert.Equal(low, interval.Low, 1e-9);
        Assert.Equal(high, interval.High, 1e-9);
    }

    [Fact]
    public void Nothing_in_n_gives_one_minus_the_nth_root_of_the_tail()
    {
        Assert.Equal((0, Math.Round(1 - Math.Pow(0.025, 1 / 30.0), 12)), Ends(ClopperPearson.Interval(0, 30)));
        Assert.Equal((Math.Round(Math.Pow(0.025, 1 / 30.0), 12), 1), Ends(ClopperPearson.Interval(30, 30)));
    }

    /// <summary>The exact coverage, summed over all outcomes, never falls below the confidence.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.93)]
    [InlineData(0.99)]
    public void The_interval_holds_the_probability_at_least_as_often_as_it_says(double p)
    {
        const int Trials = 40;
        double covered = 0;
        double weight = Math.Pow(1 - p, Trials);
        for (int k = 0; k <= Trials; k++)
        {
            Interval interval = ClopperPearson.Interval(k, Trials);
            covered += interval.Low <= p && p <= interval.High ? weight : 0;
            weight *= (Trials - k) / (k + 1.0) * p / (1 - p);
        }

        Assert.InRange(covered, 0.95, 0.9999);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-1, 3)]
    [InlineData(4, 3)]
    public void Impossible_counts_are_a_fault(int successes, int trials) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearson.Interval(successes, trials));

    private static (double, double) Ends(Interval interval) => (Math.Round(interval.Low, 12), Math.Round(interval.High, 12));
}
