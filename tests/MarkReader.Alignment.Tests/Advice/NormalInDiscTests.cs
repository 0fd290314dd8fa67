using CsCheck;
using MarkReader.Alignment.Advice;

namespace MarkReader.Alignment.Tests.Advice;

public sealed class NormalInDiscTests
{
    /// <summary>Without offset and alike in all directions: 1 − exp(−r²/2σ²) (Rayleigh).</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(1)]
    [InlineData(2.4477468)]
    [InlineData(6)]
    public void A_centred_round_normal_follows_the_Rayleigh_distribution(double radius) =>
        Assert.Equal(1 - Math.Exp(-radius * radius / 2), NormalInDisc.Probability((0, 0), (1, 0, 1), radius), 1e-9);

    [Fact]
    public void A_narrow_normal_is_inside_or_outside()
    {
        Assert.Equal(1, NormalInDisc.Probability((0.5, 0.5), (1e-8, 0, 1e-8), 1), 1e-9);
        Assert.Equal(0, NormalInDisc.Probability((0.9, 0.5), (1e-8, 0, 1e-8), 1), 1e-9);
        Assert.Equal(0.5, NormalInDisc.Probability((1, 0), (1e-6, 0, 1e-6), 1), 1e-3);
        Assert.Equal(0, NormalInDisc.Probability((0, 0), (1, 0, 1), 0));
    }

    [Fact]
    public void A_drawn_normal_falls_inside_as_often()
    {
        Random random = new(3);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        int inside = 0;
        const int Draws = 200_000;
        for (int i = 0; i < Draws; i++)
        {
            double a = Normal(), b = Normal(), u = 0.4 + (0.9 * a), v = -0.3 + (0.5 * a) + (0.2 * b);
            inside += Math.Sqrt((u * u) + (v * v)) <= 0.8 ? 1 : 0;
        }

        Assert.Equal((double)inside / Draws, NormalInDisc.Probability((0.4, -0.3), (0.81, 0.45, 0.29), 0.8), 0.005);
    }

    [Fact]
    public void The_probability_does_not_depend_on_how_the_axes_lie() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[0.02, 1], Gen.Double[0.02, 1], Gen.Double[0, 6]).Sample((u, v, a, b, turn) =>
        {
            (double s, double c) = Math.SinCos(turn);
            double aa = a * a, bb = b * b;
            double straight = NormalInDisc.Probability((u, v), (aa, 0, bb), 1);
            double turned = NormalInDisc.Probability(
                ((c * u) - (s * v), (s * u) + (c * v)), ((c * c * aa) + (s * s * bb), c * s * (aa - bb), (s * s * aa) + (c * c * bb)), 1);
            return Math.Abs(straight - turned) < 1e-6;
        });
}
