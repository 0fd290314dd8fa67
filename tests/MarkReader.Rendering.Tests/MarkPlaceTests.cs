using MarkReader.Quantities;
using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Tests.Support;

namespace MarkReader.Rendering.Tests;

public class MarkPlaceTests
{
    private const double Tolerance = 0.005;

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1.234, -2.345)]
    [InlineData(-5.017, 4.391)]
    public void The_grey_centroid_of_a_mark_is_its_truth(double u, double v) => AssertCentroid(PlainScene.Straight(new BurnSpec(u, v)));

    [Fact]
    public void A_hard_edged_mark_is_integrated_over_the_pixels_area() =>
        AssertCentroid(PlainScene.Straight(new BurnSpec(2.113, 1.771, 1.3, 0.03, 3, 1.6, 0) { Roughness = 0 }));

    [Fact]
    public void An_elliptic_rough_ring_with_a_hole_is_symmetric_about_its_truth() =>
        AssertCentroid(PlainScene.Straight(new BurnSpec(-3.21, 2.05) { AxisRatio = 0.8, AxisDegrees = 33, Roughness = 0.03, RingDepth = 0.7, Hole = HoleKind.Dark, HoleRadius = 0.4 }));

    [Fact]
    public void Blur_moves_no_mark()
    {
        SceneSpec spec = PlainScene.Straight(new BurnSpec(1.5, 2.25));
        AssertCentroid(spec with { Sensor = spec.Sensor with { LensSigma = 0.8, DefocusRadius = 2.6, MotionLength = 5.3, MotionDegrees = 31, Sharpening = 0.4 } });
    }

    [Fact]
    public void A_stain_lies_on_the_side_to_which_the_smoke_went()
    {
        SceneSpec spec = PlainScene.Straight(new BurnSpec(0, 0) { StainDensity = 0.6, StainDegrees = 0 });
        PixelPoint truth = PlainScene.Place(spec);
        (double x, double y) = PlainScene.DarkCentroid(PlainScene.Grey(spec), truth.X, truth.Y, 90);
        Assert.InRange(x - truth.X, 3, 40);
        Assert.InRange(y - truth.Y, -6, 6);
    }

    [Fact]
    public void A_lifted_tape_shifts_marks_away_from_the_camera_s_side()
    {
        SceneSpec spec = PlainScene.Straight(new BurnSpec(0, 0)) with { Pose = new(15, TiltDegrees: 40, TiltTowardsDegrees: 0) };
        (double truthShift, double seenShift) = (Truth(spec with { TapeHeight = 0.5 }) - Truth(spec), Seen(spec with { TapeHeight = 0.5 }) - Seen(spec));
        Assert.Equal(-0.5 * Math.Sin(40 * Math.PI / 180) * 15, truthShift, 0.1);
        Assert.Equal(truthShift, seenShift, 0.01);

        static double Truth(SceneSpec spec) => PlainScene.Place(spec).X;

        static double Seen(SceneSpec spec) => PlainScene.DarkCentroid(PlainScene.Grey(spec), 447, 449, 70).X;
    }

    private static void AssertCentroid(SceneSpec spec)
    {
        PixelPoint truth = PlainScene.Place(spec);
        (double x, double y) = PlainScene.DarkCentroid(PlainScene.Grey(spec), truth.X, truth.Y, 100);
        Assert.Equal(truth.X, x, Tolerance);
        Assert.Equal(truth.Y, y, Tolerance);
    }
}
