using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;
using MarkReader.Quantities;
using Plane = MarkReader.Practice.Geometry.Plane;

namespace MarkReader.Practice.Tests.Frames;

/// <summary>Slopes of the plane through three contact points, by elementary geometry: Δh/L for a right-angled mount, and the table of an equilateral one.</summary>
public sealed class ThreeContactFrameTests
{
    private static readonly Pose s_seat = new(Vector3.Zero, Axes.Machine);

    /// <summary>Arms of 40 mm, M4 (0.7 mm): ¼ turn is a slope of 0.004375; a full turn atan(0.7/40) = 17.498214 mrad. M3 12.499349, #8-32 19.841146.</summary>
    [Theory]
    [InlineData(0.7, 0.25, 0.004375)]
    [InlineData(0.7, 1, 0.0175)]
    [InlineData(0.5, 1, 0.0125)]
    [InlineData(0.79375, 1, 0.01984375)]
    public void A_screw_of_a_right_angled_mount_slopes_the_face_about_one_axis(double pitch, double turns, double slope)
    {
        ThreeContactFrame frame = Some.CentreFrame(pitch: pitch);
        AssertSlope(slope, 0, frame.Turn("A", turns).ValueOrThrow());
        AssertSlope(0, slope, frame.Turn("B", turns).ValueOrThrow());
    }

    [Theory]
    [InlineData(0.7, 17.498214)]
    [InlineData(0.5, 12.499349)]
    [InlineData(0.79375, 19.841146)]
    public void A_full_turn_tilts_by_the_arc_tangent(double pitch, double milliradians)
    {
        Plane face = Some.CentreFrame(pitch: pitch).Turn("A", 1).ValueOrThrow().Face(s_seat);
        Assert.Equal(milliradians, 1000 * Math.Acos(face.Normal.Z), 1e-6);
    }

    [Fact]
    public void An_equilateral_mount_slopes_as_its_table_says()
    {
        ThreeContactFrame frame = Equilateral();
        AssertSlope(0, 0.004666667, frame.Turn("top", 0.25).ValueOrThrow(), 1e-9);
        AssertSlope(-0.004041452, -0.002333333, frame.Turn("left", 0.25).ValueOrThrow(), 1e-9);
    }

    /// <summary>(1 mrad, 0): turns (0, −0.0309295, +0.0309295); (0, 1 mrad): (+0.0357143, −0.0178571, −0.0178571).</summary>
    [Theory]
    [InlineData(0.001, 0, 0, -0.0309295, 0.0309295)]
    [InlineData(0, 0.001, 0.0357143, -0.0178571, -0.0178571)]
    public void The_turns_of_an_equilateral_mount_give_the_wanted_slope_and_keep_the_middle(double right, double up, double top, double left, double rightTurns)
    {
        ThreeContactFrame frame = Equilateral().Turn("top", top).ValueOrThrow().Turn("left", left).ValueOrThrow().Turn("right", rightTurns).ValueOrThrow();
        AssertSlope(right, up, frame, 2e-9);
        Assert.Equal(0, frame.Face(s_seat).Point.Z, 1e-7);
    }

    [Fact]
    public void The_face_keeps_its_distance_from_the_plane_of_the_contacts()
    {
        ThreeContactFrame frame = new(
            Some.Contact(-15, -15), Some.Contact(15, -15, Some.Screw("A")), Some.Contact(-15, 15, Some.Screw("B")), Some.Mm(8));
        Assert.Equal(0, frame.Face(s_seat).Point.Z, 1e-12);
        Plane face = frame.Turn("A", 1).ValueOrThrow().Face(s_seat);
        Vector3 pivot = new(-15, -15, -8);
        Assert.Equal(8, (face.Point - pivot).Dot(face.Normal), 1e-12);
    }

    [Fact]
    public void An_unknown_screw_and_a_turn_beyond_the_thread_are_refused()
    {
        ThreeContactFrame frame = Some.CentreFrame();
        Assert.False(frame.Turn("C", 1).TryGet(out _, out Failure? unknown));
        Assert.Equal(PracticeFailures.ScrewUnknown, unknown.Code);
        foreach (double turns in new[] { 10.1, double.NaN, double.NegativeInfinity })
        {
            Assert.False(frame.Turn("A", turns).TryGet(out _, out Failure? end));
            Assert.Equal(PracticeFailures.ScrewAtItsEnd, end.Code);
        }
    }

    [Fact]
    public void A_frame_has_three_contacts_off_one_line_and_screws_with_different_names()
    {
        Assert.Throws<ArgumentException>(() => new ThreeContactFrame(Some.Contact(0, 0), Some.Contact(1, 1, Some.Screw("A")), Some.Contact(2, 2, Some.Screw("B")), Length.Zero));
        Assert.Throws<ArgumentException>(() => new ThreeContactFrame(Some.Contact(0, 0), Some.Contact(30, 0, Some.Screw("A")), Some.Contact(0, 30, Some.Screw("A")), Length.Zero));
        Assert.Throws<ArgumentException>(() => new ThreeContactFrame(Some.Contact(0, 0), Some.Contact(30, 0, Some.Screw("A")), Some.Contact(0, 30), Length.Zero));
    }

    private static ThreeContactFrame Equilateral()
    {
        FrameContact At(string name, double degrees) => Some.Contact(25 * Math.Cos(degrees * Math.PI / 180), 25 * Math.Sin(degrees * Math.PI / 180), Some.Screw(name));
        return new(At("top", 90), At("left", 210), At("right", 330), Length.Zero);
    }

    private static void AssertSlope(double right, double up, ThreeContactFrame frame, double tolerance = 1e-12)
    {
        Plane face = frame.Face(s_seat);
        Assert.Equal(right, -face.Normal.X / face.Normal.Z, tolerance);
        Assert.Equal(up, -face.Normal.Y / face.Normal.Z, tolerance);
    }
}
