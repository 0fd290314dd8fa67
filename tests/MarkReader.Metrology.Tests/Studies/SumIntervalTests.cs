using CsCheck;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Studies;
using MathNet.Numerics.Random;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>A sum of variances is no less than its parts, and its interval says so.</summary>
public sealed class SumIntervalTests
{
    private static readonly (StudyPart Sum, StudyPart[] Parts)[] s_sums =
    [
        (StudyPart.Repeatability, [StudyPart.Within, StudyPart.Photo]),
        (StudyPart.Reproducibility, [StudyPart.Operator, StudyPart.Interaction]),
        (StudyPart.Gauge, [StudyPart.Repeatability, StudyPart.Reproducibility]),
    ];

    [Fact]
    public void No_end_of_a_sums_interval_lies_below_that_of_its_part()
    {
        Gen<KnownComponents> known =
            from size in Gen.Select(Gen.Int[2, 6], Gen.Int[2, 5], Gen.Int[2, 4])
            from sd in Gen.Double[0, 1].Array[4]
            select new KnownComponents(size.Item1, size.Item2, size.Item3, 5, sd[0], sd[1], sd[2], sd[3]);
        Gen.Select(known, Gen.Bool, Gen.Int[0, 1_000_000]).Sample((of, photos, seed) =>
        {
            GaugeStudy study = GaugeStudy.Run(of.Draw(new MersenneTwister(seed, threadSafe: false)), new() { Photos = photos }).ValueOrThrow();
            foreach ((StudyPart sum, StudyPart[] parts) in s_sums)
            {
                Interval whole = study[sum].Interval;
                foreach (Interval part in parts.Where(study.Components.ContainsKey).Select(p => study[p].Interval))
                    Assert.True(whole.Low >= part.Low && whole.High >= part.High, $"{sum}: {whole} beside {part}");
            }
        }, iter: 1000);
    }

    /// <summary>People far apart and marks that add nothing: the interval of both together used to begin below that of the people.</summary>
    [Fact]
    public void Reproducibility_begins_where_its_larger_part_begins()
    {
        GaugeStudy study = GaugeStudy.Run(new KnownComponents(4, 3, 3, 5, 1, 0, 0, 0.5).Draw(new MersenneTwister(3, threadSafe: false))).ValueOrThrow();
        IReadOnlyList<WeightedSquare> plain = [new(1 / 12.0, study.Squares.Operator), new(3 / 12.0, study.Squares.Interaction), new(-1 / 3.0, study.Squares.Repeat)];
        double low = VarianceIntervals.Of(plain).Low, part = study[StudyPart.Operator].Interval.Low;
        Assert.Equal(Math.Max(low, part), study[StudyPart.Reproducibility].Interval.Low, 1e-12);
        Assert.True(part > 0);
    }
}
