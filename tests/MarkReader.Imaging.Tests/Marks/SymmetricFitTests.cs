using CsCheck;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class SymmetricFitTests
{
    public static TheoryData<string> Profiles => ["disc", "halo", "ring", "hole"];

    [Theory]
    [MemberData(nameof(Profiles))]
    public void The_centre_of_a_symmetric_mark_is_found_whatever_its_profile(string profile) =>
        Gen.Double[-1, 1].Select(Gen.Double[-1, 1], Gen.Double[0.8, 3]).Sample((u, v, radius) =>
        {
            ZoneMap map = Burns.Map((x, y) => Burns.Darkness(profile, Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v))) / radius));
            SymmetricMark? fit = SymmetricFit.Fit(map, new(u + (0.15 * radius), v - (0.1 * radius)), 2 * radius);
            return fit is not null && fit.Centre.DistanceTo(new(u, v)) < 0.003;
        }, iter: 40);

    [Fact]
    public void A_light_gradient_does_not_pull_the_centre()
    {
        ZoneMap map = Burns.Map((x, y) => Burns.Darkness("disc", Math.Sqrt((x * x) + (y * y)) / 2) + (0.02 * x) - (0.03 * y));
        SymmetricMark fit = SymmetricFit.Fit(map, new(0.2, 0.2), 4)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.004);
    }

    [Fact]
    public void A_stain_on_one_side_does_not_pull_the_centre()
    {
        ZoneMap map = Burns.Map((x, y) => Math.Max(Burns.Darkness("halo", Math.Sqrt((x * x) + (y * y)) / 2), x > 0 && Math.Abs(y) < 0.5 * x && x < 4.5 ? 0.3 : 0));
        SymmetricMark fit = SymmetricFit.Fit(map, new(0.2, 0), 4)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.01);
    }

    [Fact]
    public void An_ellipse_keeps_its_centre_and_its_axes()
    {
        // Semi-axes 3 and 2 along u and v; the circle of equal area has the diameter 2·√6.
        ZoneMap map = Burns.Map((x, y) => Burns.Darkness("disc", Math.Sqrt((x * x / 9) + (y * y / 4))));
        SymmetricMark fit = SymmetricFit.Fit(map, new(0.3, 0.2), 4.9)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.003);
        Assert.Equal(2.0 / 3, fit.Shape.AxisRatio, 0.01);
        Assert.Equal(2 * Math.Sqrt(6), fit.Diameter, 0.03);
    }

    /// <summary>Both ways: neither too small nor too large, over white noise.</summary>
    [Fact]
    public void The_stated_covariance_is_the_scatter_under_noise()
    {
        Random random = new(7);
        const int trials = 150;
        double squares = 0, stated = 0;
        for (int t = 0; t < trials; t++)
        {
            (double u, double v) = (random.NextDouble() - 0.5, random.NextDouble() - 0.5);
            ZoneMap map = Burns.Map((x, y) => Burns.Darkness("disc", Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v))) / 1.5) + (0.08 * Burns.Normal(random)));
            SymmetricMark fit = SymmetricFit.Fit(map, new(u + 0.1, v), 3)!;
            squares += Math.Pow(fit.Centre.DistanceTo(new(u, v)), 2);
            stated += fit.Covariance.Uu + fit.Covariance.Vv;
        }

        Assert.InRange(stated / squares, 0.75, 1.35);
    }
}
