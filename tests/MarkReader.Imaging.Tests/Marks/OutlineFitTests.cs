using CsCheck;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class OutlineFitTests
{
    private const double Radius = 1.5;

    public static TheoryData<string> Disturbances => ["none", "smoke", "shadow", "glare"];

    /// <summary>Everything that changes the light inside and outside an edge alike leaves the edge where it is.</summary>
    [Theory]
    [MemberData(nameof(Disturbances))]
    public void Light_and_smoke_on_one_side_leave_the_centre_within_a_hundredth_of_a_millimetre(string disturbance) =>
        Gen.Double[-1, 1].Select(Gen.Double[-1, 1]).Sample((u, v) =>
        {
            ZoneMap light = Burns.Map((x, y) => Light(disturbance, x, y, Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v)))));
            FittedOutline? fit = OutlineFit.Fit(light, new Disc(new(u + 0.1, v - 0.1), Radius), 0.1);
            return fit is not null && fit.Centre.DistanceTo(new(u, v)) < 0.01;
        }, iter: 30);

    [Fact]
    public void An_ellipse_keeps_its_centre_and_its_axes()
    {
        ZoneMap light = Burns.Map((x, y) => 0.8 * (1 - Burns.Darkness("disc", Math.Sqrt((x * x / 9) + (y * y / 4)))));
        FittedOutline fit = OutlineFit.Fit(light, new Disc(new(0.1, 0.1), 2.4, new(-0.3, 0)), 0.12)!;
        Assert.InRange(fit.Centre.DistanceTo(CardPoint.Origin), 0, 0.005);
        Assert.Equal(2.0 / 3, fit.Shape.AxisRatio, 0.015);
        Assert.Equal(Math.Sqrt(6), fit.Radius, 0.03);
    }

    /// <summary>Both ways: neither too small nor too large, over white noise.</summary>
    [Fact]
    public void The_stated_covariance_is_the_scatter_under_noise()
    {
        Random random = new(3);
        double squares = 0, stated = 0;
        for (int t = 0; t < 120; t++)
        {
            (double u, double v) = (random.NextDouble() - 0.5, random.NextDouble() - 0.5);
            ZoneMap light = Burns.Map((x, y) =>
                (0.8 * (1 - Burns.Darkness("disc", Math.Sqrt(((x - u) * (x - u)) + ((y - v) * (y - v))) / Radius))) + (0.06 * Burns.Normal(random)));
            FittedOutline fit = OutlineFit.Fit(light, new Disc(new(u + 0.05, v), Radius), 0.09)!;
            squares += Math.Pow(fit.Centre.DistanceTo(new(u, v)), 2);
            stated += fit.Covariance.Uu + fit.Covariance.Vv;
        }

        Assert.InRange(stated / squares, 0.6, 1.6);
    }

    [Fact]
    public void Two_discs_that_overlap_are_placed_by_their_common_outline() =>
        Gen.Double[0.9, 1.5].Select(Gen.Double[-Math.PI, Math.PI]).Sample((distance, angle) =>
        {
            CardPoint a = CardPoint.Origin, b = new(distance * Radius * Math.Cos(angle), distance * Radius * Math.Sin(angle));
            ZoneMap light = Burns.Map((x, y) => 0.8 * Transmission(a, x, y) * Transmission(b, x, y));
            FittedOutline[]? fits = OutlineFit.Fit(light, (new Disc(new(a.U - 0.1, a.V), Radius), new Disc(b, 1.1 * Radius)), 0.09);
            return fits is not null && fits[0].Centre.DistanceTo(a) < 0.02 && fits[1].Centre.DistanceTo(b) < 0.02;
        }, iter: 20);

    [Fact]
    public void Light_that_is_even_all_round_leaves_no_doubt_and_more_on_one_side_does()
    {
        Assert.InRange(Sd(Doubt("none")), 0, 1e-4);
        Covariance2 shadow = Doubt("smoke");
        Assert.InRange(Sd(shadow), 5e-4, 0.01);
    }

    private static double Sd(Covariance2 c) => Math.Sqrt(c.Uu + c.Vv);

    private static Covariance2 Doubt(string disturbance) =>
        OutlineFit.Fit(Burns.Map((x, y) => Light(disturbance, x, y, Math.Sqrt((x * x) + (y * y)))), new Disc(CardPoint.Origin, Radius), 0.1)!.LevelDoubt;

    private static double Transmission(CardPoint centre, double x, double y) =>
        1 - Burns.Darkness("disc", Math.Sqrt(((x - centre.U) * (x - centre.U)) + ((y - centre.V) * (y - centre.V))) / Radius);

    private static double Light(string disturbance, double x, double y, double r)
    {
        double burn = 0.7 * (1 - Burns.Darkness("disc", r / Radius));
        return disturbance switch
        {
            "smoke" => burn * Math.Exp(-0.6 / (1 + Math.Exp(-2 * x))),
            "shadow" => burn * (1 - (0.5 / (1 + Math.Exp(-(x + (0.3 * y) - 0.4) / 0.02)))),
            "glare" => burn + (0.25 / (1 + Math.Exp(-x))),
            _ => burn,
        };
    }
}
