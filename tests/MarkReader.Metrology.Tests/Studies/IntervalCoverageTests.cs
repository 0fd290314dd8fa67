using MarkReader.Metrology.Studies;
using MathNet.Numerics.Random;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>The study on data with known components covers them at the stated confidence.</summary>
public sealed class IntervalCoverageTests
{
    private const int Trials = 3000;

    public static TheoryData<KnownComponents, bool> Studies => new()
    {
        { new(10, 3, 3, 1, 0.25, 0.1, 0, 0.2), false },
        { new(10, 3, 3, 1, 0.02, 0, 0, 0.2), false },
        { new(5, 6, 3, 10, 0.1, 0.2, 0, 0.2), false },
        { new(5, 4, 3, 5, 0.03, 0.01, 0.03, 0.01), true },
        { new(9, 3, 5, 5, 0, 0, 0.02, 0.02), true },
        { new(4, 8, 2, 5, 0.02, 0.02, 0, 0.02), true },
    };

    /// <summary>95 % intervals: at least 94 % less three standard deviations of the simulation, and not so wide that they say little.</summary>
    [Theory]
    [MemberData(nameof(Studies))]
    public void Intervals_hold_the_true_components_at_their_confidence(KnownComponents known, bool photos)
    {
        MersenneTwister random = new(20260611, threadSafe: false);
        Dictionary<StudyPart, int> held = [];
        for (int trial = 0; trial < Trials; trial++)
        {
            GaugeStudy study = GaugeStudy.Run(known.Draw(random), new() { Photos = photos }).ValueOrThrow();
            foreach (VarianceComponent c in study.Components.Values)
                held[c.Part] = held.GetValueOrDefault(c.Part) + (c.Interval.Low <= known.Variance(c.Part) && known.Variance(c.Part) <= c.Interval.High ? 1 : 0);
        }

        Assert.Equal(photos ? 8 : 7, held.Count);
        foreach ((StudyPart part, int count) in held)
            Assert.True(count / (double)Trials >= 0.94 - (3 * Math.Sqrt(0.95 * 0.05 / Trials)), $"{part}: {count} of {Trials}");
        // The χ² interval is exact.
        if (!photos)
            Assert.InRange(held[StudyPart.Repeatability] / (double)Trials, 0.933, 0.967);
    }

    /// <summary>Where marks of one photo are shifted together, an evaluation that takes them as separate calls the shift an operator's and is too sure of the repeatability.</summary>
    [Fact]
    public void Readings_that_share_a_photos_error_need_the_photo_in_the_model()
    {
        KnownComponents known = new(9, 3, 3, 5, 0, 0, 0.03, 0.005);
        MersenneTwister random = new(7, threadSafe: false);
        (int with, int without, int falseWith, int falseWithout) = (0, 0, 0, 0);
        for (int trial = 0; trial < 600; trial++)
        {
            IReadOnlyList<Reading> readings = known.Draw(random);
            GaugeStudy photos = GaugeStudy.Run(readings, new() { Photos = true }).ValueOrThrow(), separate = GaugeStudy.Run(readings).ValueOrThrow();
            with += Holds(photos, known) ? 1 : 0;
            without += Holds(separate, known) ? 1 : 0;
            falseWith += OperatorFound(photos) ? 1 : 0;
            falseWithout += OperatorFound(separate) ? 1 : 0;
        }

        Assert.InRange(with, 0.93 * 600, 600);
        Assert.InRange(without, 0, 0.75 * 600);
        Assert.InRange(falseWith, 0, 0.08 * 600);
        Assert.InRange(falseWithout, 0.3 * 600, 600);
    }

    private static bool Holds(GaugeStudy study, KnownComponents known) =>
        study[StudyPart.Repeatability].Interval is var i && i.Low <= known.Variance(StudyPart.Repeatability) && known.Variance(StudyPart.Repeatability) <= i.High;

    private static bool OperatorFound(GaugeStudy study) => study.Rows.Single(r => r.Source == AnovaSource.Operator).Test!.Probability < 0.05;
}
