using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Tests.Estimates;

public sealed class RoundedCovarianceTests
{
    [Fact]
    public void Rows_and_columns_are_taken_as_they_are()
    {
        Matrix<double> c = Matrix<double>.Build.DenseOfArray(new[,] { { 9.0, 0, 0 }, { 0, 4, 1 }, { 0, 1, 2 } });
        Assert.Equal(new Covariance2(4, 1, 2), c.Points(1, 2));
        Assert.Equal(new Covariance2(9, 0, 4), c.Points());
    }

    [Fact]
    public void A_correlation_above_one_by_rounding_is_held_at_one()
    {
        Matrix<double> c = Matrix<double>.Build.DenseOfArray(new[,] { { 1.0, 1.1e-9 }, { 1.1e-9, 1e-18 } });
        Assert.Equal(1e-9, c.Points().Uv, 1e-20);
        Assert.Equal(0, Matrix<double>.Build.DenseOfArray(new[,] { { 1.0, 0 }, { 0, -1e-25 } }).Points().Vv);
    }

    /// <summary>Marks that lie nearly on u: what the path lengths do along v is less than the rounding of what they do along u.</summary>
    [Theory]
    [InlineData(-7, -9.261e-6, -10, 9.153846119892265, 385, 141, 32)]
    [InlineData(-1, 4.604e-53, -8.741e-59, 3.633495733636824, 59, 51, 0)]
    [InlineData(-2.0413907269989373, -5.81405335825248, 10.048168846430713, 7.21e-32, 386, 119, 0)]
    public void A_leg_whose_marks_lie_nearly_on_an_axis_has_an_aim_point(double u1, double v1, double u2, double v2, double near, double travel, double incidence)
    {
        Observation[] marks =
        [
            new(Some.Station(near, 1), Some.Point(u1, v1)), new(Some.Station(near + travel, 1), Some.Point(u2, v2)),
        ];
        Assert.True(AimSolver.Solve(Some.Leg(incidence, 5, 2), marks).TryGet(out AimSolution? solution, out _));
        Assert.True(double.IsFinite(solution.Aim.Covariance.Uv));
    }
}
