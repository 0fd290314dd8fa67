using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class TextureFitTests
{
    private const double Depth = 0.2;

    [Fact]
    public void The_texture_of_a_bare_target_is_read_with_its_direction()
    {
        TextureNoise noise = TextureNoise.Around(Creases(new(5), 0.05, _ => 0), CardPoint.Origin, 1, 20)!;
        Assert.Equal(0.05 * 0.05, noise.Variance, 0.0005);
        // Long along v, short along u.
        Assert.InRange(noise[0, 10] / noise.Variance, 0.6, 1);
        Assert.InRange(noise[10, 0] / noise.Variance, -0.25, 0.25);
        Assert.Equal(noise[3, 5], noise[-3, -5]);
    }

    /// <summary>The law of propagation for a known filter: the mean of n pixels of white noise has variance σ²/n.</summary>
    [Fact]
    public void The_influence_of_pixels_adds_up_as_for_a_mean_of_white_noise()
    {
        Random random = new(11);
        ZoneMap white = Burns.Map((_, _) => 0.04 * Burns.Normal(random));
        TextureNoise noise = TextureNoise.Around(white, CardPoint.Origin, 0.5, 40)!;
        CentreInfluence mean = new(white.Grid, [.. Enumerable.Range(0, 400).Select(i => (i % 20, i / 20, 1 / 400.0, 0.0))]);
        Assert.Equal(0.04 * 0.04 / 400, mean.Under(noise).Uu, 0.04 * 0.04 / 400);
        Assert.Equal(0, mean.Under(noise).Vv);
    }

    /// <summary>Squared Mahalanobis distances of a well stated centre have expectation 2 (χ² with 2 degrees of freedom).</summary>
    [Fact]
    public void A_scorch_in_creased_tape_is_placed_as_well_as_it_says()
    {
        Random random = new(2);
        List<double> distances = [];
        for (int t = 0; t < 40; t++)
        {
            (double u, double v) = (random.NextDouble() - 0.5, random.NextDouble() - 0.5);
            ZoneMap map = Creases(random, 0.05, r => Depth * Burns.Step(r / 1.2, 1), u, v);
            FittedTexture? fit = TextureFit.Fit(map, new(u + 0.1, v - 0.1), 1.2, 0.1, Depth);
            Assert.NotNull(fit);
            distances.Add(fit.Covariance.MahalanobisSquared(fit.Centre - new CardPoint(u, v)));
        }

        Assert.InRange(distances.Average(), 0.4, 3);
    }

    /// <summary>Noise averaged over 2 mm along v and a sixth of one along u, as creases run.</summary>
    private static ZoneMap Creases(Random random, double sigma, Func<double, double> mark, double u = 0, double v = 0)
    {
        ZoneMap white = Burns.Map((_, _) => Burns.Normal(random));
        int size = white.Grid.Size;
        const int Along = 33, Across = 3;
        float[] values = new float[white.Values.Length];
        double scale = sigma * Math.Sqrt(Along * Across) / (Along * Across);
        // Running sums, wrapped round at the borders.
        double[] columns = new double[values.Length];
        for (int x = 0; x < size; x++)
        {
            double sum = Enumerable.Range(0, Along).Sum(k => (double)white[x, k]);
            for (int y = 0; y < size; y++)
            {
                columns[(y * size) + x] = sum;
                sum += white[x, (y + Along) % size] - white[x, y];
            }
        }

        for (int y = 0; y < size; y++)
        {
            for (int x = 0; x < size; x++)
            {
                double texture = 0;
                for (int k = 0; k < Across; k++)
                    texture += scale * columns[(y * size) + ((x + k) % size)];
                CardPoint p = white.Grid.ToCard(x, y);
                double r = p.DistanceTo(new(u, v));
                values[(y * size) + x] = (float)(1 - ((1 - mark(r)) * (1 - texture)));
            }
        }

        return new(white.Grid, values);
    }
}
