using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Tests.MonteCarlo;

/// <summary>
/// JCGM 101:2008, 9.3: a weight W against a reference R in air of density a, δm = (m + δ)·(1 + (a − 1.2)·(1/W − 1/R)) − 100 000 mg. The product of the
/// air's deviation with that of the densities has no first-order part, so that linear propagation states 0.0539 mg instead of 0.0754 mg.
/// </summary>
public sealed class MassCalibrationTests
{
    private static readonly IInput[] s_inputs =
    [
        Inputs.Normal(100_000, 0.050), Inputs.Normal(1.234, 0.020), Inputs.Rectangular(1.2, 0.1), Inputs.Rectangular(8000, 1000), Inputs.Rectangular(8000, 50),
    ];

    private readonly Sample _sample = Propagation.Run(s_inputs, x => [((x[0] + x[1]) * (1 + ((x[2] - 1.2) * ((1 / x[3]) - (1 / x[4]))))) - 100_000], new(400_000, 93));

    [Fact]
    public void Mean_and_uncertainty_are_the_printed_ones()
    {
        Assert.Equal(1.2341, _sample.Mean[0], 0.0005);
        Assert.Equal(0.0754, _sample.StandardUncertainty(), 0.0003);
    }

    /// <summary>Printed 1.0834 to 1.3825 mg; where the shortest interval of so flat a distribution lies is ill-determined, its width is not.</summary>
    [Fact]
    public void The_shortest_interval_has_the_printed_width()
    {
        Assert.Equal(0.2991, _sample.Shortest().Width, 0.002);
        Assert.Equal(1.2340, (_sample.Symmetric().Low + _sample.Symmetric().High) / 2, 0.001);
        Assert.True(_sample.Shortest().Width > 1.35 * (1.3395 - 1.1285));
    }
}
