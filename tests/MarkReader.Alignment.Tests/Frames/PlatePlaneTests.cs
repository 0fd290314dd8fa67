using MarkReader.Alignment.Frames;

namespace MarkReader.Alignment.Tests.Frames;

/// <summary>The plane through three contacts: slopes g = Δh/L worked out by hand for two usual mounts.</summary>
public sealed class PlatePlaneTests
{
    private static readonly FrameContact[] RightAngle = [new(null, 0, 0), new("A", 40, 0), new("B", 0, 40)];

    private static readonly FrameContact[] Equilateral = [.. new[] { 90.0, 210, 330 }.Select((a, i) =>
        new FrameContact($"S{i}", 25 * Math.Cos(a * Math.PI / 180), 25 * Math.Sin(a * Math.PI / 180)))];

    [Fact]
    public void A_quarter_turn_of_one_screw_of_a_right_angle_mount_tilts_about_one_axis_only()
    {
        PlatePlane plane = PlatePlane.Through(RightAngle, [0, 0.175, 0]);
        Assert.Equal(0.004375, plane.GX, 1e-12);
        Assert.Equal(0, plane.GY, 1e-12);
    }

    /// <summary>M4, M3 and #8-32 at 40 mm: 17.498214, 12.499349 and 19.841146 mrad per turn.</summary>
    [Theory]
    [InlineData(0.7, 17.498214)]
    [InlineData(0.5, 12.499349)]
    [InlineData(0.79375, 19.841146)]
    public void A_full_turn_tilts_by_the_arc_tangent_of_pitch_over_arm(double pitch, double milliradians) =>
        Assert.Equal(milliradians, 1000 * Math.Atan(PlatePlane.Through(RightAngle, [0, pitch, 0]).GX), 1e-6);

    [Theory]
    [InlineData(0, 0, 0.004666667)]
    [InlineData(1, -0.004041452, -0.002333333)]
    [InlineData(2, 0.004041452, -0.002333333)]
    public void A_quarter_turn_of_a_screw_of_an_equilateral_mount(int screw, double gx, double gy)
    {
        double[] heights = new double[3];
        heights[screw] = 0.175;
        PlatePlane plane = PlatePlane.Through(Equilateral, heights);
        Assert.Equal(gx, plane.GX, 1e-9);
        Assert.Equal(gy, plane.GY, 1e-9);
    }

    [Theory]
    [InlineData(0, -0.0216506, 0.0216506, 0.001, 0)]
    [InlineData(0.025, -0.0125, -0.0125, 0, 0.001)]
    public void Turns_that_add_up_to_nothing_keep_the_middle_where_it_is(double a, double b, double c, double gx, double gy)
    {
        PlatePlane plane = PlatePlane.Through(Equilateral, [a, b, c]);
        Assert.Equal(gx, plane.GX, 1e-8);
        Assert.Equal(gy, plane.GY, 1e-8);
        Assert.Equal(0, plane.At(0, 0), 1e-8);
    }
}
