using CsCheck;

namespace MarkReader.Quantities.Tests;

public sealed class Covariance2Tests
{
    private static readonly Gen<Covariance2> s_any = Gen.Select(Gen.Double[0.01, 2], Gen.Double[0.01, 2], Gen.Double[-0.95, 0.95])
        .Select((su, sv, r) => new Covariance2(su * su, r * su * sv, sv * sv));

    [Theory]
    [InlineData(-1, 0, 1)]
    [InlineData(1, 0, -1)]
    [InlineData(1, 1.1, 1)]
    [InlineData(double.NaN, 0, 1)]
    [InlineData(1, double.PositiveInfinity, 1)]
    public void A_matrix_that_is_no_covariance_is_refused(double uu, double uv, double vv) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Covariance2(uu, uv, vv));

    [Fact]
    public void Turning_there_and_back_leaves_it_as_it_was() => Gen.Select(s_any, Gen.Double[-3, 3]).Sample((c, angle) =>
    {
        (double sin, double cos) = Math.SinCos(angle);
        Covariance2 back = c.Transform(cos, -sin, sin, cos).Transform(cos, sin, -sin, cos);
        return Math.Abs(back.Uu - c.Uu) < 1e-12 && Math.Abs(back.Uv - c.Uv) < 1e-12 && Math.Abs(back.Vv - c.Vv) < 1e-12;
    });

    [Fact]
    public void Determinant_scales_with_the_square_of_the_jacobian_s() => Gen.Select(s_any, Gen.Double[-2, 2].Array[4]).Sample((c, j) =>
    {
        double jacobian = (j[0] * j[3]) - (j[1] * j[2]);
        return Math.Abs(c.Transform(j[0], j[1], j[2], j[3]).Determinant - (jacobian * jacobian * c.Determinant)) < 1e-9;
    });

    [Fact]
    public void Every_point_of_the_95_percent_ellipse_has_the_same_squared_distance() => s_any.Sample(c =>
        c.Ellipse95().Outline(new(3, -2), 24).All(p => Math.Abs(c.MahalanobisSquared(p - new CardPoint(3, -2)) - Covariance2.ChiSquare95) < 1e-6));

    [Fact]
    public void Distance_is_infinite_off_a_singular_covariance_and_zero_at_its_centre()
    {
        Covariance2 line = new(1, 0, 0);
        Assert.Equal(double.PositiveInfinity, line.MahalanobisSquared(new(0, 1)));
        Assert.Equal(0, line.MahalanobisSquared(new(0, 0)));
    }

    /// <summary>JCGM 102:2011, 6.5.2, Table 1: kp = 2.45 for two outputs at 95 %.</summary>
    [Fact]
    public void Coverage_factor_in_two_dimensions_is_2_4477() =>
        Assert.Equal(2.4477, Covariance2.Isotropic(1).Ellipse95().SemiMajor, 0.00005);

    [Fact]
    public void Sums_and_scaling_act_on_every_element()
    {
        Covariance2 sum = new Covariance2(1, 0.5, 2) + (2 * new Covariance2(3, -1, 4));
        Assert.Equal(new Covariance2(7, -1.5, 10), sum);
    }

    [Fact]
    public void An_error_along_a_vector_has_its_square_along_it_and_nothing_across() => Gen.Double[-2, 2].Select(Gen.Double[-2, 2]).Sample((u, v) =>
    {
        Covariance2 c = Covariance2.Along(new(u, v));
        Ellipse e = c.Ellipse(1);
        return Math.Abs(e.SemiMajor - Math.Sqrt((u * u) + (v * v))) < 1e-9 && e.SemiMinor < 1e-6;
    });
}
