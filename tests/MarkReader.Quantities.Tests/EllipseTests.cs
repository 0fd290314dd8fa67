namespace MarkReader.Quantities.Tests;

public sealed class EllipseTests
{
    [Fact]
    public void Axes_and_direction_are_those_of_the_covariance()
    {
        // Standard deviations 3 along 30 degrees, 1 across.
        (double sin, double cos) = Math.SinCos(Math.PI / 6);
        Ellipse ellipse = new Covariance2(9, 0, 1).Transform(cos, -sin, sin, cos).Ellipse(2);
        Assert.Equal(6, ellipse.SemiMajor, 1e-12);
        Assert.Equal(2, ellipse.SemiMinor, 1e-12);
        Assert.Equal(30, ellipse.Direction.Degrees, 1e-9);
    }

    [Fact]
    public void Outline_starts_on_the_major_axis_and_goes_towards_v()
    {
        CardPoint[] outline = [.. new Ellipse(2, 1, Angle.Zero).Outline(new(10, 20), 4)];
        Assert.Equal(4, outline.Length);
        CardPoint[] expected = [new(12, 20), new(10, 21), new(8, 20), new(10, 19)];
        Assert.All(outline.Zip(expected), pair => Assert.True(pair.First.DistanceTo(pair.Second) < 1e-12));
    }
}
