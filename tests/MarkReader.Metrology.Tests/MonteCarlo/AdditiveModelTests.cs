using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Tests.MonteCarlo;

/// <summary>JCGM 101:2008, 9.2: Y = X1 + X2 + X3 + X4.</summary>
public sealed class AdditiveModelTests
{
    private static readonly double s_root3 = Math.Sqrt(3);

    /// <summary>9.2.2: y = 0, u(y) = 2.0, 95 % interval ±3.92.</summary>
    [Fact]
    public void Four_normal_inputs_give_the_interval_of_3_92() => Check(2.0, 3.92, [.. Enumerable.Repeat(Inputs.Normal(0, 1), 4)]);

    /// <summary>9.2.3: y = 0, u(y) = 2.0, 95 % interval ±3.88 = 2√3·(2 − (3/5)^¼).</summary>
    [Fact]
    public void Four_rectangular_inputs_give_the_interval_of_3_88() => Check(2.0, 3.88, [.. Enumerable.Repeat(Inputs.Rectangular(0, s_root3), 4)]);

    /// <summary>9.2.4: one input ten times as wide: u(y) = 10.1, 95 % interval ±17.0, where linear propagation says ±19.9.</summary>
    [Fact]
    public void One_wide_rectangular_input_gives_the_interval_of_17_and_not_of_19_9() =>
        Check(10.149, 17.0, [.. Enumerable.Repeat(Inputs.Rectangular(0, s_root3), 3), Inputs.Rectangular(0, 10 * s_root3)], 0.05);

    [Fact]
    public void The_same_plan_gives_the_same_sample_and_another_seed_another()
    {
        IInput[] inputs = [Inputs.Normal(0, 1)];
        double Mean(int seed) => Propagation.Run(inputs, x => [x[0]], new(1000, seed)).Mean[0];
        Assert.Equal(Mean(1), Mean(1));
        Assert.NotEqual(Mean(1), Mean(2));
    }

    private static void Check(double u, double half, IInput[] inputs, double tolerance = 0.02)
    {
        Sample sample = Propagation.Run(inputs, x => [x.Sum()], new(400_000, 101));
        Assert.Equal(0, sample.Mean[0], 0.01 * u);
        Assert.Equal(u, sample.StandardUncertainty(), 0.005 * u);
        Assert.Equal(-half, sample.Symmetric().Low, tolerance);
        Assert.Equal(half, sample.Symmetric().High, tolerance);
        Assert.InRange(sample.Shortest().Width, (2 * half) - (3 * tolerance), sample.Symmetric().Width);
    }
}
