using CsCheck;
using MarkReader.Cameras.Models;

namespace MarkReader.Cameras.Tests.Models;

public sealed class LensDistortionTests
{
    private static readonly Gen<LensDistortion> s_lenses = Gen.Select(
        Gen.Double[-0.15, 0.15], Gen.Double[-0.04, 0.04], Gen.Double[-0.01, 0.01], Gen.Double[-0.002, 0.002], Gen.Double[-0.002, 0.002],
        (k1, k2, k3, p1, p2) => new LensDistortion(k1, k2, k3, p1, p2));

    [Fact]
    public void What_is_distorted_is_found_again() => Gen.Select(s_lenses, Gen.Double[-0.8, 0.8], Gen.Double[-0.6, 0.6]).Sample((lens, x, y) =>
    {
        (double u, double v) = lens.Distort(x, y);
        (double bx, double by) = lens.Undistort(u, v);
        return Math.Abs(bx - x) < 1e-9 && Math.Abs(by - y) < 1e-9;
    });

    [Fact]
    public void The_slope_is_that_of_the_distortion() => Gen.Select(s_lenses, Gen.Double[-0.8, 0.8], Gen.Double[-0.6, 0.6]).Sample((lens, x, y) =>
    {
        const double h = 1e-6;
        (double xx, double xy, double yx, double yy) = lens.Slope(x, y);
        (double X, double Y) right = lens.Distort(x + h, y), left = lens.Distort(x - h, y), down = lens.Distort(x, y + h), up = lens.Distort(x, y - h);
        return Near(xx, right.X - left.X) && Near(yx, right.Y - left.Y) && Near(xy, down.X - up.X) && Near(yy, down.Y - up.Y);

        static bool Near(double slope, double difference) => Math.Abs(slope - (difference / (2 * h))) < 1e-8;
    });

    [Fact]
    public void Where_the_lens_shows_nothing_no_direction_is_invented()
    {
        // r·(1 − 0.5·r²) rises to 0.544 only.
        LensDistortion lens = new(-0.5, 0, 0, 0, 0);

        Assert.True(double.IsNaN(lens.Undistort(0.6, 0).X));
        Assert.Equal(0.4, lens.Undistort(lens.Distort(0.4, 0.3).X, lens.Distort(0.4, 0.3).Y).X, 1e-9);
    }
}
