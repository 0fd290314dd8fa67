using MarkReader.Alignment.LineFitting;

namespace MarkReader.Alignment.Tests.LineFitting;

/// <summary>JCGM 100:2008, H.3: calibration of a thermometer, Table H.6 and equations H.12 to H.15. Printed values in half units of their last digit.</summary>
public sealed class GumThermometerTests
{
    private const double Reference = 20;

    private static readonly double[] s_temperature = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
    private static readonly double[] s_correction = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];

    private readonly FittedLine _line = LineFit.Ordinary([.. s_temperature.Select(t => t - Reference)], s_correction);

    [Fact]
    public void Intercept_slope_and_their_correlation_are_those_of_the_guide()
    {
        Assert.Equal(-0.1712, _line.Intercept, 0.00005);
        Assert.Equal(0.0029, _line.InterceptUncertainty, 0.00005);
        Assert.Equal(0.00218, _line.Slope, 0.000005);
        Assert.Equal(0.00067, _line.SlopeUncertainty, 0.000005);
        Assert.Equal(-0.930, _line.InterceptSlopeCovariance / (_line.InterceptUncertainty * _line.SlopeUncertainty), 0.0005);
        Assert.Equal(9, _line.DegreesOfFreedom);
        Assert.Equal(0.0035, Math.Sqrt(_line.ChiSquare / _line.DegreesOfFreedom), 0.00005);
    }

    [Fact]
    public void Value_extrapolated_to_30_degrees_has_the_guide_s_uncertainty_which_needs_the_covariance()
    {
        Prediction at30 = _line.At(30 - Reference);
        Assert.Equal(-0.1494, at30.Value, 0.00005);
        Assert.Equal(0.0041, at30.Uncertainty, 0.00005);
        double withoutCovariance = Math.Sqrt(Math.Pow(_line.InterceptUncertainty, 2) + Math.Pow(10 * _line.SlopeUncertainty, 2));
        Assert.True(withoutCovariance > 1.5 * at30.Uncertainty);
    }
}
