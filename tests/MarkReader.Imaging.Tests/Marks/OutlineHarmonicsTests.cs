using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Tests.Support;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class OutlineHarmonicsTests
{
    private const int Directions = 72;

    /// <summary>The centre of n directions with scatter s has the variance 2·s²/n on either axis (least squares); the estimate is a fifth above it.</summary>
    [Fact]
    public void White_noise_gives_the_variance_of_a_circles_centre()
    {
        Random random = new(11);
        const double Scatter = 0.02;
        double mean = Enumerable.Range(0, 400).Average(_ => OutlineHarmonics.OfCentre(Residuals(_ => Scatter * Burns.Normal(random))).Uu);
        Assert.InRange(mean / (2 * Scatter * Scatter / Directions), 1.05, 1.35);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    public void An_outline_that_is_alike_on_opposite_sides_says_nothing_against_its_centre(int order) =>
        Assert.InRange(OutlineHarmonics.OfCentre(Residuals(a => 0.05 * Math.Cos(order * a))).Uu, 0, 1e-12);

    /// <summary>A third harmonic of amplitude A counts as a quarter of the odd power: 1.2·A²/4/2 on either axis.</summary>
    [Fact]
    public void A_lopsided_outline_widens_the_centres_uncertainty() =>
        Assert.Equal(1.2 * 0.05 * 0.05 / 8, OutlineHarmonics.OfCentre(Residuals(a => 0.05 * Math.Sin(3 * a))).Vv, 1e-9);

    private static List<(double Angle, double Residual)> Residuals(Func<double, double> residual) =>
        [.. Enumerable.Range(0, Directions).Select(k => 2 * Math.PI * k / Directions).Select(a => (a, residual(a)))];
}
