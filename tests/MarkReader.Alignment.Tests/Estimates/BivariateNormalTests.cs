using CsCheck;
using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Estimates;

public sealed class BivariateNormalTests
{
    [Fact]
    public void A_nearly_round_covariance_gives_the_noncentral_chi_square() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[0.05, 2], Gen.Double[0.1, 4]).Sample((u, v, sigma, radius) =>
        {
            double round = BivariateNormal.WithinDisc(new(u, v), Covariance2.Isotropic(sigma), radius);
            double nearly = BivariateNormal.WithinDisc(new(u, v), new(sigma * sigma * (1 + 1e-7), 0, sigma * sigma), radius);
            return Math.Abs(round - nearly) < 1e-6;
        });

    [Fact]
    public void Chords_along_either_axis_agree_when_the_frame_is_turned() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[0.001, 1.5], Gen.Double[0.001, 1.5], Gen.Double[0, 3]).Sample((u, v, one, other, turn) =>
        {
            (double sin, double cos) = Math.SinCos(turn);
            Covariance2 plain = new(one * one, 0, other * other);
            double straight = BivariateNormal.WithinDisc(new(u, v), plain, 1);
            double turned = BivariateNormal.WithinDisc(
                new((cos * u) - (sin * v), (sin * u) + (cos * v)), plain.Transform(cos, -sin, sin, cos), 1);
            return Math.Abs(straight - turned) < 1e-7;
        });

    [Theory]
    [InlineData(0.3, -0.2, 0.5, 0.05, 0.7)]
    [InlineData(0.9, 0.1, 0.02, 0.4, 1)]
    [InlineData(1.4, 0, 0.3, 0.2, 1)]
    [InlineData(0, 0, 2, 0.01, 0.5)]
    public void Probability_is_the_part_of_random_draws_inside(double u, double v, double su, double sv, double radius)
    {
        MersenneTwister random = new(4, threadSafe: false);
        const int draws = 200_000;
        int inside = 0;
        for (int i = 0; i < draws; i++)
        {
            double x = Normal.Sample(random, u, su), y = Normal.Sample(random, v, sv);
            if ((x * x) + (y * y) <= radius * radius)
                inside++;
        }

        double p = BivariateNormal.WithinDisc(new(u, v), new(su * su, 0, sv * sv), radius);
        Assert.Equal(inside / (double)draws, p, 4 * Math.Sqrt(Math.Max(p * (1 - p), 1e-5) / draws));
    }

    [Theory]
    [InlineData(0.6, 0, 1)]
    [InlineData(1.1, 0, 0)]
    public void Without_uncertainty_the_point_decides(double u, double v, double expected) =>
        Assert.Equal(expected, BivariateNormal.WithinDisc(new(u, v), new(0, 0, 0), 1));

    /// <summary>All the uncertainty along u: a normal variable on a chord.</summary>
    [Fact]
    public void A_singular_covariance_is_a_normal_variable_on_a_chord() => Assert.Equal(
        Normal.CDF(0.2, 0.5, 0.8) - Normal.CDF(0.2, 0.5, -0.8), BivariateNormal.WithinDisc(new(0.2, 0.6), new(0.25, 0, 0), 1), 1e-12);
}
