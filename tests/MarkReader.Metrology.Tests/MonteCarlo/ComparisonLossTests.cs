using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Tests.MonteCarlo;

/// <summary>JCGM 101:2008, 9.4: comparison loss, δY = X1² + X2² with u = 0.005 each, in units of 10⁻⁶: the form of any squared distance from a centre.</summary>
public sealed class ComparisonLossTests
{
    [Theory]
    [InlineData(0.000, 50, 50, 0, 150, 1)]
    [InlineData(0.010, 150, 112, 0, 367, 2)]
    public void Shortest_interval_is_that_of_the_supplement(double x1, double y, double u, double low, double high, double tolerance)
    {
        Sample sample = Run(x1);
        Assert.Equal(y, sample.Mean[0], 0.5);
        Assert.Equal(u, sample.StandardUncertainty(), 0.5);
        Assert.Equal(low, sample.Shortest().Low, 0.5);
        Assert.Equal(high, sample.Shortest().High, tolerance);
    }

    /// <summary>At x1 = 0.050 the place of the shortest interval is ill-determined (printed 1590 to 3543; exactly 1593.6 to 3548.6): its width is compared.</summary>
    [Fact]
    public void Far_from_zero_the_width_is_that_of_the_supplement()
    {
        Sample sample = Run(0.050);
        Assert.Equal(2551, sample.Mean[0], 3.0);
        Assert.Equal(502, sample.StandardUncertainty(), 2.0);
        Assert.Equal(1953, sample.Shortest().Width, 10.0);
    }

    /// <summary>
    /// 9.4.3: the inputs lean on each other, r = 0.9. Exactly y = 50 + x1² and u² = 4·25²·(1 + r²) + 100·x1². At x1 = 0.050 the width is compared (printed
    /// 1628 to 3555, from 4·10⁶ other draws 1629 to 3559).
    /// </summary>
    [Theory]
    [InlineData(0.000, 50, 67, 185, 2)]
    [InlineData(0.010, 150, 121, 385, 4)]
    [InlineData(0.050, 2551, 505, 1927, 10)]
    public void Inputs_that_lean_on_each_other_widen_the_loss_as_in_the_supplement(double x1, double y, double u, double width, double tolerance)
    {
        const double square = 0.005 * 0.005;
        Sample sample = Propagation.Run([Inputs.Point(new(new(x1, 0), new(square, 0.9 * square, square)))], Loss, new(400_000, 95));

        Assert.Equal(y, sample.Mean[0], Math.Max(0.5, 0.006 * u));
        Assert.Equal(u, sample.StandardUncertainty(), Math.Max(0.6, 0.004 * u));
        Assert.Equal(width, sample.Shortest().Width, tolerance);
    }

    private static double[] Loss(double[] x) => [1e6 * ((x[0] * x[0]) + (x[1] * x[1]))];

    private static Sample Run(double x1) => Propagation.Run(
        [Inputs.Normal(x1, 0.005), Inputs.Normal(0, 0.005)], Loss, new(400_000, 94));
}
