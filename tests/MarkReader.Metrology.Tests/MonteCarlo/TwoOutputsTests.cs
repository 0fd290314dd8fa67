using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Tests.MonteCarlo;

/// <summary>
/// JCGM 102:2011, 9.2: Y1 = X1 + X3, Y2 = X2 + X3. The factors for normal inputs are kp = √χ² = 2.4477 and, for the
/// rectangle, 2.2121; those for a rectangular X3 were found by numerical integration.
/// </summary>
public sealed class TwoOutputsTests
{
    [Fact]
    public void Normal_inputs_give_the_factors_of_the_supplement() => Check(Inputs.Normal(0, 1), 1, 0.5, 2.4477, 2.2121);

    [Theory]
    [InlineData(1, 1.414214, 0.5, 2.381275, 2.152008)]
    [InlineData(3, 3.162278, 0.9, 2.282982, 1.869564)]
    [InlineData(10, 10.049876, 0.990099, 2.264316, 1.700256)]
    public void A_rectangular_shared_input_gives_smaller_factors(double s, double u, double correlation, double ellipse, double rectangle)
    {
        Sample sample = Check(Inputs.Rectangular(0, s * Math.Sqrt(3)), s, correlation, ellipse, rectangle);
        Assert.Equal(u, sample.StandardUncertainty(1), 0.005 * u);
    }

    private static Sample Check(IInput shared, double s, double correlation, double ellipse, double rectangle)
    {
        Sample sample = Propagation.Run([Inputs.Normal(0, 1), Inputs.Normal(0, 1), shared], x => [x[0] + x[2], x[1] + x[2]], new(400_000, 102));
        double u = Math.Sqrt(1 + (s * s));
        Assert.Equal(u, sample.StandardUncertainty(), 0.005 * u);
        Assert.Equal(correlation, sample.Covariance[0, 1] / (sample.StandardUncertainty(0) * sample.StandardUncertainty(1)), 0.005);
        Assert.Equal(ellipse, sample.EllipseFactor(), 0.01);
        Assert.Equal(rectangle, sample.RectangleFactor(), 0.01);
        return sample;
    }
}
