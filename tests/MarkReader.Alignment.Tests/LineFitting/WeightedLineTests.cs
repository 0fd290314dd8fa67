using MarkReader.Alignment.LineFitting;

namespace MarkReader.Alignment.Tests.LineFitting;

/// <summary>ISO/TS 28037:2010, straight-line calibration functions: the examples of pages 13 and 14.</summary>
public sealed class WeightedLineTests
{
    private static readonly double[] s_x = [1, 2, 3, 4, 5, 6];

    [Fact]
    public void Equal_weights_give_the_example_of_page_13()
    {
        FittedLine line = LineFit.Weighted(s_x, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], [0.5, 0.5, 0.5, 0.5, 0.5, 0.5]);
        Assert.Equal(1.867, line.Intercept, 0.0005);
        Assert.Equal(0.465, line.InterceptUncertainty, 0.0005);
        Assert.Equal(1.757, line.Slope, 0.0005);
        Assert.Equal(0.120, line.SlopeUncertainty, 0.0005);
        Assert.Equal(-0.050, line.InterceptSlopeCovariance, 0.0005);
        Assert.Equal(1.665, line.ChiSquare, 0.0005);
        Assert.Equal(4, line.DegreesOfFreedom);
    }

    [Fact]
    public void Unequal_weights_give_the_example_of_page_14()
    {
        FittedLine line = LineFit.Weighted(s_x, [3.2, 4.3, 7.6, 8.6, 11.7, 12.8], [0.5, 0.5, 0.5, 1.0, 1.0, 1.0]);
        Assert.Equal(0.885, line.Intercept, 0.0005);
        Assert.Equal(0.530, line.InterceptUncertainty, 0.0005);
        Assert.Equal(2.057, line.Slope, 0.0005);
        Assert.Equal(0.178, line.SlopeUncertainty, 0.0005);
        Assert.Equal(-0.082, line.InterceptSlopeCovariance, 0.0005);
        Assert.Equal(4.131, line.ChiSquare, 0.0005);
    }

    [Fact]
    public void A_line_without_different_x_or_with_missing_values_is_a_fault_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => LineFit.Ordinary([2, 2, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LineFit.Ordinary([1, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => LineFit.Weighted([1, 2], [1, 2, 3], [1, 1]));
        Assert.Throws<ArgumentException>(() => LineFit.Weighted([1, 2], [1, 2], [1, 0]));
    }
}
