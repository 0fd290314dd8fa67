using CsCheck;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class SymmetricFitTests
{
    private static readonly ZoneGrid s_grid = new(10, 320);

    public static TheoryData<string> Profiles => ["disc", "halo", "ring", "hole"];

    [Theory]
    [MemberData(nameof(Profiles))]
    public void The_centre_of_a_symmetric_mark_is_found_whatever_its_profile(string profile) =>
        Gen.Double[-1, 1].Select(Gen.Double[-1, 1], Gen.Double[0.8, 3]).Sample((u, v, radius) =>
        {
            ZoneMap map = Map((x, y) => Darkness(profile, Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v))) / radius));
            FittedMark? fit = SymmetricFit.Fit(map, new(u + (0.15 * radius), v - (0.1 * radius)), 2 * radius);
            return fit is not null && fit.Centre.DistanceTo(new(u, v)) < 0.003;
        }, iter: 40);

    [Fact]
    public void A_light_gradient_does_not_pull_the_centre()
    {
        ZoneMap map = Map((x, y) => Darkness("disc", Math.Sqrt((x * x) + (y * y)) / 2) + (0.02 * x) - (0.03 * y));
        FittedMark fit = SymmetricFit.Fit(map, new(0.2, 0.2), 4)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.004);
    }

    [Fact]
    public void A_stain_on_one_side_does_not_pull_the_centre()
    {
        ZoneMap map = Map((x, y) => Math.Max(Darkness("halo", Math.Sqrt((x * x) + (y * y)) / 2), x > 0 && Math.Abs(y) < 0.5 * x && x < 4.5 ? 0.3 : 0));
        FittedMark fit = SymmetricFit.Fit(map, new(0.2, 0), 4)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.01);
    }

    [Fact]
    public void An_ellipse_keeps_its_centre_and_its_axes()
    {
        // Semi-axes 3 and 2 along u and v; the circle of equal area has the diameter 2·√6.
        ZoneMap map = Map((x, y) => Darkness("disc", Math.Sqrt((x * x / 9) + (y * y / 4))));
        FittedMark fit = SymmetricFit.Fit(map, new(0.3, 0.2), 4.9)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.003);
        Assert.Equal(2.0 / 3, fit.AxisRatio, 0.01);
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
            ZoneMap map = Map((x, y) => Darkness("disc", Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v))) / 1.5) + (0.08 * Normal(random)));
            FittedMark fit = SymmetricFit.Fit(map, new(u + 0.1, v), 3)!;
            squares += Math.Pow(fit.Centre.DistanceTo(new(u, v)), 2);
            stated += fit.Noise.Uu + fit.Noise.Vv + fit.ShapeDoubt.Uu + fit.ShapeDoubt.Vv;
        }

        Assert.InRange(stated / squares, 0.75, 1.35);
    }

    private static ZoneMap Map(Func<double, double, double> darkness)
    {
        float[] values = new float[s_grid.Size * s_grid.Size];
        for (int y = 0; y < s_grid.Size; y++)
        {
            for (int x = 0; x < s_grid.Size; x++)
            {
                CardPoint p = s_grid.ToCard(x, y);
                values[(y * s_grid.Size) + x] = (float)darkness(p.U, p.V);
            }
        }

        return new(s_grid, values);
    }

    /// <summary>Darkening at a radius in units of the mark's radius, edges some 0.1 radius wide.</summary>
    private static double Darkness(string profile, double r) => profile switch
    {
        "disc" => 0.9 * Step(r, 1),
        "halo" => (0.6 * Step(r, 1)) + (0.3 * Math.Exp(-r * r / 0.8)),
        "ring" => 0.8 * (Step(r, 1) - (0.6 * Step(r, 0.5))),
        _ => 0.9 * (Step(r, 1) - (1.3 * Step(r, 0.6))),
    };

    private static double Step(double r, double radius) => 1 / (1 + Math.Exp((r - radius) / 0.05));

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
