using CsCheck;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Verdicts;

public sealed class DiscConformityTests
{
    private static readonly Gen<Covariance2> s_covariance =
        Gen.Select(Gen.Double[0.001, 1], Gen.Double[0.001, 1], Gen.Double[-0.99, 0.99], (a, b, r) => new Covariance2(a * a, r * a * b, b * b));

    [Fact]
    public void Within_means_that_every_point_of_the_95_percent_ellipse_is_in_the_circle_and_only_then() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], s_covariance).Sample((u, v, c) =>
        {
            double farthest = c.Ellipse95().Outline(new(u, v), 2000).Max(p => p.DistanceTo(CardPoint.Origin));
            return Math.Abs(farthest - 1) < 1e-4 || (DiscConformity.Of(new(u, v), c, 1).Verdict == Verdict.Within) == farthest < 1;
        });

    [Fact]
    public void Distance_to_the_circle_is_the_least_over_its_points() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], s_covariance).Sample((u, v, c) =>
        {
            double distance = DiscConformity.SquaredDistanceToDisc(BivariateNormal.Axes(new(u, v), c), 1);
            if ((u * u) + (v * v) <= 1)
                return distance == 0;
            double least = new Ellipse(1, 1, Angle.Zero).Outline(CardPoint.Origin, 20_000).Min(p => c.MahalanobisSquared(p - new CardPoint(u, v)));
            return distance <= least * (1 + 1e-9) && distance >= least - (0.01 * Math.Max(1, least));
        });

    [Fact]
    public void A_turn_of_the_frame_and_a_change_of_unit_change_nothing() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], s_covariance, Gen.Double[0, 6], Gen.Double[0.01, 100]).Sample((u, v, c, turn, unit) =>
        {
            (double sin, double cos) = Math.SinCos(turn);
            Conformity plain = DiscConformity.Of(new(u, v), c, 1);
            Conformity turned = DiscConformity.Of(
                new(unit * ((cos * u) - (sin * v)), unit * ((sin * u) + (cos * v))), (unit * unit) * c.Transform(cos, -sin, sin, cos), unit);
            return Math.Abs(plain.Probability - turned.Probability) < 1e-6 && Math.Abs(plain.OutsideLevel - turned.OutsideLevel) < 1e-6;
        });

    public static TheoryData<double, double, double, double> Limits => new()
    {
        // Tolerance 1; standard deviations and correlation; bearing of the truth on the circle.
        { 0.05, 0.05, 0, 0 },
        { 0.3, 0.3, 0, 0 },
        { 0.5, 0.1, 0, 0 },
        { 0.5, 0.1, 0, 1.5708 },
        { 0.4, 0.3, 0.8, 0.8 },
        { 3, 3, 0, 0 },
        { 3, 0.01, 0, 0 },
        { 20, 20, 0, 0 },
    };

    [Theory]
    [MemberData(nameof(Limits))]
    public void On_the_circle_at_most_2_5_percent_are_called_within_and_at_most_2_5_percent_outside(double su, double sv, double r, double bearing)
    {
        MersenneTwister random = new(12, threadSafe: false);
        Covariance2 c = new(su * su, r * su * sv, sv * sv);
        CardVector truth = new(Math.Cos(bearing), Math.Sin(bearing));
        const int trials = 5_000;
        Dictionary<Verdict, int> count = Enum.GetValues<Verdict>().ToDictionary(v => v, _ => 0);
        for (int i = 0; i < trials; i++)
        {
            double first = Normal.Sample(random, 0, 1), second = Normal.Sample(random, 0, 1);
            CardVector error = new(su * first, sv * ((r * first) + (Math.Sqrt(1 - (r * r)) * second)));
            count[DiscConformity.Of(truth + error, c, 1).Verdict]++;
        }

        int most = (int)((0.025 * trials) + (3 * Math.Sqrt(0.025 * 0.975 * trials)));
        Assert.InRange(count[Verdict.Within], 0, most);
        Assert.InRange(count[Verdict.Outside], 0, most);
    }

    [Theory]
    [InlineData(0.2, "Within")]
    [InlineData(0.7, "Within")]
    [InlineData(0.9, "Undecided")]
    [InlineData(1.2, "Undecided")]
    [InlineData(1.4, "Outside")]
    public void A_point_well_inside_or_well_outside_is_decided(double at, string verdict) =>
        Assert.Equal(verdict, DiscConformity.Of(new(0, at), Covariance2.Isotropic(0.1), 1).Verdict.ToString());

    /// <summary>A region that is larger than the circle decides nothing, wherever in the circle its centre lies.</summary>
    [Fact]
    public void A_poor_measurement_decides_nothing()
    {
        Conformity conformity = DiscConformity.Of(new(0, 0), Covariance2.Isotropic(1), 1);
        Assert.Equal(Verdict.Undecided, conformity.Verdict);
        Assert.Equal(0.393469, conformity.Probability, 1e-6);
        Assert.Equal(1, conformity.OutsideLevel);
    }
}
