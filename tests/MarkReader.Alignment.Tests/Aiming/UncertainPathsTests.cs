using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>
/// Published lines with errors in both coordinates, run through the aim solver: x stands for the path length (stretched
/// and moved so that it passes for one), y for u; v is zero. The line at x = 0 is the intercept.
/// </summary>
public sealed class UncertainPathsTests
{
    private const double MmPerUnit = 100;

    /// <summary>ISO/TS 28037:2010, the example of page 21.</summary>
    [Fact]
    public void Line_of_ISO_28037_with_both_coordinates_uncertain_is_reproduced()
    {
        AimSolution solution = Solve(
            [1.2, 1.9, 2.9, 4.0, 4.7, 5.9], [0.2, 0.2, 0.2, 0.2, 0.2, 0.2], [3.4, 4.4, 7.2, 8.5, 10.8, 13.5], [0.2, 0.2, 0.2, 0.4, 0.4, 0.4], shift: 0);
        Assert.Equal(0.5788, solution.Aim.Point.U, 0.00005);
        Assert.Equal(0.4764, Math.Sqrt(solution.Aim.Covariance.Uu), 0.00005);
        Assert.Equal(2.1597, PerUnit(solution.Slope.U), 0.00005);
        Assert.Equal(0.1355, PerUnit(Math.Sqrt(solution.Slope.Covariance.Uu)), 0.00005);
        Assert.Equal(2.743, solution.Fit.ChiSquare, 0.0005);
    }

    /// <summary>
    /// K. Pearson's data (Phil. Mag. 2, 1901) with D. York's weights (Can. J. Phys. 44, 1966); the line of F. Neri,
    /// G. Saitta and S. Chiofalo, J. Phys. E 22 (1989) 215.
    /// </summary>
    [Fact]
    public void Pearson_s_data_with_York_s_weights_give_the_published_line()
    {
        double[] wx = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
        double[] wy = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
        AimSolution solution = Solve(
            [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4], [.. wx.Select(w => 1 / Math.Sqrt(w))],
            [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5], [.. wy.Select(w => 1 / Math.Sqrt(w))], shift: 0.5);
        Assert.Equal(5.47991022, solution.Aim.Point.U + (0.5 * PerUnit(solution.Slope.U)), 2e-8);
        Assert.Equal(-0.480533407, PerUnit(solution.Slope.U), 2e-9);
        Assert.Equal(1.4833, solution.Fit.ChiSquare / 8, 0.00005);
    }

    private static AimSolution Solve(double[] x, double[] ux, double[] y, double[] uy, double shift)
    {
        Observation[] marks =
        [
            .. x.Select((value, i) => new Observation(
                Some.Station((value + shift) * MmPerUnit, ux[i] * MmPerUnit), new(new(y[i], 0), new(uy[i] * uy[i], 0, 1)))),
        ];
        return AimSolver.Solve(Leg.Square, marks).ValueOrThrow();
    }

    private static double PerUnit(double milliradians) => milliradians / 1000 * MmPerUnit;
}
