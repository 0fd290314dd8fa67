using CsCheck;
using MarkReader.Imaging.Rectification;

namespace MarkReader.Imaging.Tests.Rectification;

public sealed class EdgeProfileFitTests
{
    [Fact]
    public void A_blurred_edge_is_located_without_bias_wherever_it_lies() =>
        Gen.Double[-3, 3].Select(Gen.Double[0.6, 2.5], Gen.Double[0.02, 0.3], Gen.Double[0.2, 0.7]).Sample((place, sigma, dark, step) =>
        {
            double[] profile = Profile(place, sigma, dark, step);
            EdgeProfileFit.Result fit = EdgeProfileFit.Fit(profile, 0.5);
            return fit.Converged && Math.Abs(fit.Place - place) < 0.002 && Math.Abs(fit.Step - step) < 0.01;
        });

    /// <summary>Defocus blurs with a disc and motion with a box; both are symmetric, so the place must not move.</summary>
    [Fact]
    public void A_box_blurred_edge_is_located_without_bias() => Gen.Double[-2, 2].Select(Gen.Double[1, 4]).Sample((place, half) =>
    {
        double[] profile = [.. Enumerable.Range(-20, 41).Select(i => 0.05 + (0.5 * Math.Clamp(((i * 0.5) - place + half) / (2 * half), 0, 1)))];
        EdgeProfileFit.Result fit = EdgeProfileFit.Fit(profile, 0.5);
        return fit.Converged && Math.Abs(fit.Place - place) < 0.05;
    });

    [Fact]
    public void The_stated_variance_is_the_scatter_under_noise()
    {
        Random random = new(20);
        const int trials = 2000;
        double sum = 0, stated = 0;
        for (int t = 0; t < trials; t++)
        {
            double place = (2 * random.NextDouble()) - 1;
            double[] profile = [.. Profile(place, 1.2, 0.05, 0.6).Select(p => p + (0.02 * Normal(random)))];
            EdgeProfileFit.Result fit = EdgeProfileFit.Fit(profile, 0.5);
            sum += (fit.Place - place) * (fit.Place - place);
            stated += fit.Variance;
        }

        Assert.InRange(stated / sum, 0.9, 1.1);
    }

    [Fact]
    public void A_flat_profile_is_no_edge()
    {
        EdgeProfileFit.Result fit = EdgeProfileFit.Fit([.. Enumerable.Repeat(0.4, 41)], 0.5);
        Assert.True(!fit.Converged || Math.Abs(fit.Step) < 0.02);
    }

    private static double[] Profile(double place, double sigma, double dark, double step) =>
        [.. Enumerable.Range(-20, 41).Select(i => dark + (step * MathNet.Numerics.Distributions.Normal.CDF(place, sigma, i * 0.5)))];

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
