using CsCheck;
using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;

namespace MarkReader.Practice.Tests.Geometry;

/// <summary>
/// r = k − 2(k·n)n at a 45° mirror (k = +x, r = +y) turned about five axes. The figures were worked out by vector reflection with exact
/// rotations in another program; the rules (2α, 2·asin(sin α/√2), 1:1) are those of textbooks of geometrical optics.
/// </summary>
public sealed class ReflectionTests
{
    private static readonly Vector3 s_normal = new(Math.Sqrt(0.5), -Math.Sqrt(0.5), 0);

    public static TheoryData<double, double, double, double> Turns => new()
    {
        // axis x, y, z; factor of the beam's turn for 10 mrad, mrad
        { 0, 0, 1, 20.000000000 },
        { Math.Sqrt(0.5), Math.Sqrt(0.5), 0, 14.142017771 },
        { 1, 0, 0, 10.000000000 },
        { 0, 1, 0, 10.000000000 },
        { Math.Sqrt(0.5), -Math.Sqrt(0.5), 0, 0 },
    };

    [Theory]
    [MemberData(nameof(Turns))]
    public void A_mirror_turned_by_10_mrad_turns_the_beam_as_published(double x, double y, double z, double beam) =>
        Assert.Equal(beam, 1000 * Between(Vector3.AlongY, Reflected(new(x, y, z), 0.010)), 1e-9);

    [Theory]
    [InlineData(0, 0, 1, 2.000000000)]
    [InlineData(0.7071067811865476, 0.7071067811865476, 0, 1.414213445)]
    [InlineData(1, 0, 0, 1.000000000)]
    public void A_mirror_turned_by_1_mrad_turns_the_beam_as_published(double x, double y, double z, double beam) =>
        Assert.Equal(beam, 1000 * Between(Vector3.AlongY, Reflected(new(x, y, z), 0.001)), 1e-9);

    [Theory]
    [InlineData(0, 0, 1, -0.019998666693, 0.999800006667, 0)]
    [InlineData(0.7071067811865476, 0.7071067811865476, 0, 9.999666671e-5, 0.999900003333, 0.014141192834)]
    [InlineData(1, 0, 0, 0, 0.999950000417, 0.009999833334)]
    public void The_reflected_vectors_at_10_mrad_are_the_published_ones(double x, double y, double z, double rx, double ry, double rz)
    {
        Vector3 r = Reflected(new(x, y, z), 0.010);
        Assert.Equal(rx, r.X, 1e-12);
        Assert.Equal(ry, r.Y, 1e-12);
        Assert.Equal(rz, r.Z, 1e-12);
    }

    [Theory]
    [InlineData(30, 1.732051)]
    [InlineData(45, 1.414214)]
    [InlineData(60, 1.000000)]
    public void At_any_incidence_a_turn_about_the_axis_in_the_face_counts_2_cos_theta(double degrees, double factor)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        Vector3 k = new(sin, 0, -cos), face = Vector3.AlongX, normal = Vector3.AlongZ;
        Vector3 r = Ray.Reflected(k, normal), turned = Ray.Reflected(k, normal.Turned(face, 1e-5));
        Assert.Equal(factor, Between(r, turned) / 1e-5, 1e-6);
    }

    [Fact]
    public void Reflection_keeps_the_length_and_the_angle_and_undoes_itself() =>
        Gen.Select(UnitVectors, UnitVectors).Sample((k, n) =>
        {
            Vector3 r = Ray.Reflected(k, n);
            return Math.Abs(r.Magnitude - 1) < 1e-12 && Math.Abs(r.Dot(n) + k.Dot(n)) < 1e-12 && (Ray.Reflected(r, n) - k).Magnitude < 1e-12;
        });

    [Fact]
    public void A_seat_reflects_any_beam_near_the_fold_exactly_into_the_wanted_one() =>
        Gen.Select(Gen.Double[-0.05, 0.05], Gen.Double[-0.05, 0.05], Gen.Double[-0.05, 0.05], Gen.Double[-0.05, 0.05], Gen.Double[-0.2, 0.2]).Sample((a, b, c, d, roll) =>
        {
            Vector3 k = new Vector3(-1, a, b).Normalised(), r = new Vector3(c, 1, d).Normalised();
            Axes seat = FrameSeat.Reflecting(k, r, Folds.One, Quantities.Angle.FromRadians(roll)).Turn(Folds.One);
            return (Ray.Reflected(k, seat.Z) - r).Magnitude < 1e-12
                && Math.Abs(seat.X.Dot(seat.Y)) < 1e-12 && (seat.Z.Cross(seat.Y) - seat.X).Magnitude < 1e-12;
        });

    private static Gen<Vector3> UnitVectors =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1]).Where(v => (v.Item1 * v.Item1) + (v.Item2 * v.Item2) + (v.Item3 * v.Item3) > 0.01)
            .Select(v => new Vector3(v.Item1, v.Item2, v.Item3).Normalised());

    private static Vector3 Reflected(Vector3 axis, double turn) => Ray.Reflected(Vector3.AlongX, s_normal.Turned(axis, turn));

    private static double Between(Vector3 a, Vector3 b) => Math.Atan2(a.Cross(b).Magnitude, a.Dot(b));
}
