using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>Marks of a beam with known line, with normal errors of marks and path lengths.</summary>
internal sealed record SimulatedLeg(MersenneTwister Random, double MarkUncertainty = 0.05, double PathUncertainty = 0, double Incidence = 0)
{
    public Leg Leg => Some.Leg(Incidence);

    /// <summary>The true path lengths of these stated ones; the same for every round of a leg.</summary>
    public Dictionary<double, double> Paths(params double[] stated) => stated.Distinct().ToDictionary(p => p, p => Normal.Sample(Random, p, PathUncertainty));

    public Observation[] Marks(BeamLine beam, Dictionary<double, double> paths, params double[] stated) =>
    [
        .. stated.Select(p => new Observation(
            Some.Station(p, PathUncertainty), new(new BeamFrame(Leg.Incidence).OnTape(beam, paths[p]) + Error(), Covariance2.Isotropic(MarkUncertainty)))),
    ];

    public CardVector Error() => new(Normal.Sample(Random, 0, MarkUncertainty), Normal.Sample(Random, 0, MarkUncertainty));
}
