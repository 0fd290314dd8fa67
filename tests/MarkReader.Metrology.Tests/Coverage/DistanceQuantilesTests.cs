using MarkReader.Metrology.Coverage;

namespace MarkReader.Metrology.Tests.Coverage;

public sealed class DistanceQuantilesTests
{
    /// <summary>Table of χ² with 2 degrees of freedom (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4).</summary>
    [Theory]
    [InlineData(0.90, 4.605)]
    [InlineData(0.95, 5.991)]
    [InlineData(0.99, 9.210)]
    [InlineData(0.999, 13.816)]
    public void Quantiles_are_those_of_chi_square_with_two_degrees_of_freedom(double p, double expected) =>
        Assert.Equal(expected, DistanceQuantiles.Of(p), 0.0005);

    /// <summary>−2·ln(1 − q) with q the quantile of scipy.stats.beta(k, n + 1 − k), SciPy 1.10.1.</summary>
    [Theory]
    [InlineData(1, 10, 0.13862944, 0.00506356, 0.73777589)]
    [InlineData(5, 10, 1.20184408, 0.41425998, 2.67593755)]
    [InlineData(10, 10, 5.40711038, 2.35208562, 11.96019595)]
    [InlineData(760, 800, 5.95921593, 5.39225212, 6.59229978)]
    [InlineData(800, 800, 14.10311567, 10.76318730, 20.72174962)]
    public void Ranges_of_sorted_distances_are_those_of_the_beta_distribution(int k, int n, double median, double low, double high)
    {
        Assert.Equal(median, DistanceQuantiles.Median(k, n), 1e-6);
        Assert.Equal(low, DistanceQuantiles.Range(k, n).Low, 1e-6);
        Assert.Equal(high, DistanceQuantiles.Range(k, n).High, 1e-6);
    }

    [Fact]
    public void There_is_no_rank_beyond_the_last() => Assert.Throws<ArgumentOutOfRangeException>(() => DistanceQuantiles.Range(11, 10));
}
