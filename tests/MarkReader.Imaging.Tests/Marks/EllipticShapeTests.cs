using CsCheck;
using MarkReader.Imaging.Marks;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class EllipticShapeTests
{
    private static readonly Gen<EllipticShape> s_shape = Gen.Double[-0.5, 0.5].Select(Gen.Double[-0.5, 0.5], (e1, e2) => new EllipticShape(e1, e2));

    [Fact]
    public void A_point_at_the_outline_has_the_radius_1() => s_shape.Select(Gen.Double[-3.2, 3.2]).Sample((shape, angle) =>
        Math.Abs(shape.Radius(shape.At(angle) * Math.Cos(angle), shape.At(angle) * Math.Sin(angle)) - 1) < 1e-12);

    /// <summary>∫ r²/2 dθ over the whole turn.</summary>
    [Fact]
    public void Its_area_is_that_of_the_unit_circle() => s_shape.Sample(shape =>
        Math.Abs(Enumerable.Range(0, 720).Average(k => Math.Pow(shape.At(2 * Math.PI * k / 720), 2)) - 1) < 1e-9);

    [Fact]
    public void Its_axis_ratio_is_shortest_over_longest() =>
        Assert.Equal(new EllipticShape(0.3, 0).At(0) / new EllipticShape(0.3, 0).At(Math.PI / 2), new EllipticShape(0.3, 0).AxisRatio, 1e-12);
}
