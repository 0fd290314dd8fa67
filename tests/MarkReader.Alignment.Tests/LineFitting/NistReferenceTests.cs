using MarkReader.Alignment.LineFitting;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Tests.LineFitting;

/// <summary>NIST Statistical Reference Datasets, linear regression, doi:10.18434/T43G6C: Norris, Pontius, NoInt1 and NoInt2 with their certified values.</summary>
public sealed class NistReferenceTests
{
    private static readonly (double X, double Y)[] s_norris =
    [
        (0.2, 0.1), (337.4, 338.8), (118.2, 118.1), (884.6, 888.0), (10.1, 9.2), (226.5, 228.1), (666.3, 668.5), (996.3, 998.5), (448.6, 449.1),
        (777.0, 778.9), (558.2, 559.2), (0.4, 0.3), (0.6, 0.1), (775.5, 778.1), (666.9, 668.8), (338.0, 339.3), (447.5, 448.9), (11.6, 10.8),
        (556.0, 557.7), (228.1, 228.3), (995.8, 998.0), (887.6, 888.8), (120.2, 119.6), (0.3, 0.3), (0.3, 0.6), (556.8, 557.6), (339.1, 339.3),
        (887.2, 888.0), (999.0, 998.5), (779.0, 778.9), (11.1, 10.2), (118.3, 117.6), (229.2, 228.9), (669.1, 668.4), (448.9, 449.2), (0.5, 0.2),
    ];

    [Fact]
    public void Norris_line_has_the_certified_values()
    {
        Assert.Equal(36, s_norris.Length);
        FittedLine line = LineFit.Ordinary([.. s_norris.Select(p => p.X)], [.. s_norris.Select(p => p.Y)]);
        Close(-0.262323073774029, line.Intercept);
        Close(0.232818234301152, line.InterceptUncertainty);
        Close(1.00211681802045, line.Slope);
        Close(0.429796848199937E-03, line.SlopeUncertainty);
        Close(26.6173985294224, line.ChiSquare);
        Close(0.884796396144373, Math.Sqrt(line.ChiSquare / line.DegreesOfFreedom));
        Assert.Equal(34, line.DegreesOfFreedom);
    }

    private static readonly double[] s_pontius =
    [
        .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001, 1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844,
        .11052, .22018, .32939, .43886, .54798, .65739, .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829,
    ];

    /// <summary>The quadratic through the loads 150 000·k, k from 1 to 20, twice; raw columns, as a caller would give them.</summary>
    [Fact]
    public void Pontius_parabola_has_the_certified_values()
    {
        Assert.Equal(40, s_pontius.Length);
        double[] x = [.. s_pontius.Select((_, i) => 150_000.0 * ((i % 20) + 1))];
        LinearFit fit = LeastSquares.Ordinary(
            Matrix<double>.Build.Dense(40, 3, (i, j) => Math.Pow(x[i], j)), Vector<double>.Build.Dense(s_pontius));
        Assert.Equal(37, fit.DegreesOfFreedom);
        Assert.Equal(0.673565789473684E-03, fit.Parameters[0], 1e-14);
        Assert.Equal(0.732059160401003E-06, fit.Parameters[1], 1e-19);
        Assert.Equal(-0.316081871345029E-14, fit.Parameters[2], 1e-26);
        Assert.Equal(0.107938612033077E-03, Math.Sqrt(fit.Covariance[0, 0]), 1e-13);
        Assert.Equal(0.157817399981659E-09, Math.Sqrt(fit.Covariance[1, 1]), 1e-19);
        Assert.Equal(0.486652849992036E-16, Math.Sqrt(fit.Covariance[2, 2]), 1e-25);
        Assert.Equal(0.205177424076185E-03, Math.Sqrt(fit.ChiSquare / fit.DegreesOfFreedom), 1e-13);
    }

    [Fact]
    public void NoInt1_line_through_zero_has_the_certified_values()
    {
        LinearFit fit = ThroughZero([60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70], [130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140]);
        Close(2.07438016528926, fit.Parameters[0]);
        Close(0.165289256198347E-01, Math.Sqrt(fit.Covariance[0, 0]));
        Close(3.56753034006338, Math.Sqrt(fit.ChiSquare / fit.DegreesOfFreedom));
        Assert.Equal(10, fit.DegreesOfFreedom);
    }

    [Fact]
    public void NoInt2_line_through_zero_has_the_certified_values()
    {
        LinearFit fit = ThroughZero([4, 5, 6], [3, 4, 4]);
        Close(0.727272727272727, fit.Parameters[0]);
        Close(0.420827318078432E-01, Math.Sqrt(fit.Covariance[0, 0]));
        Close(0.369274472937998, Math.Sqrt(fit.ChiSquare / fit.DegreesOfFreedom));
    }

    private static LinearFit ThroughZero(double[] x, double[] y) =>
        LeastSquares.Ordinary(Matrix<double>.Build.DenseOfColumnArrays(x), Vector<double>.Build.Dense(y));

    private static void Close(double certified, double computed) => Assert.Equal(certified, computed, 1e-11 * Math.Abs(certified));
}
