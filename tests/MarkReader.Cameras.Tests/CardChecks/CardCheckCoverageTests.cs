using MarkReader.Cameras.Boards;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.CardChecks;

public sealed class CardCheckCoverageTests
{
    private static readonly string[] s_names = ["stretch", "skew", "bendUu", "bendUv", "bendVv"];

    // Rates from 200 cards with five correlated values each; at 95 % a rate of all is known to about ±1 %.
    [Theory]
    [InlineData(0)]
    [InlineData(0.008)]
    public void The_stated_intervals_hold_the_truth_as_often_as_they_say(double fault)
    {
        const int Cards = 200;
        bool[][] inside = [.. Enumerable.Range(1, Cards).AsParallel().AsOrdered().Select(seed => Inside(seed, fault))];

        string rates = string.Join(", ", s_names.Select((n, i) => $"{n} {inside.Count(x => x[i]) / (double)Cards:0.000}"));
        double all = inside.Average(x => x.Count(y => y) / (double)x.Length);
        Assert.True(all is > 0.93 and < 0.97, $"{all:0.000}: {rates}");
    }

    private static bool[] Inside(int seed, double fault)
    {
        Random random = new(seed);
        PrintedShape shape = new(1 + (0.004 * (random.NextDouble() - 0.5)), 1, 0.004 * (random.NextDouble() - 0.5), random.NextDouble() - 0.5, 180 * random.NextDouble());
        SimulatedCard card = new(seed, shape, fault);
        CheckedCard found = CardCheck.Check(card.Views, card.Camera, Some.Plate).ValueOrThrow();
        (double s, double c) = Math.SinCos(shape.BendDegrees * Math.PI / 180);
        double b = shape.B * BoardShape.Reach * BoardShape.Reach;
        double[] truth = [shape.ScaleU - shape.ScaleV, shape.Skew, b * c * c, 2 * b * c * s, b * s * s];
        double[] values = [found.Shape.Stretch, found.Shape.Skew, found.Shape.BendUu, found.Shape.BendUv, found.Shape.BendVv];
        return [.. truth.Select((t, i) => Math.Abs(values[i] - t) <= Normal95.Factor * Math.Sqrt(found.Variances[i]))];
    }
}

internal static class Some
{
    /// <summary>The simulated card.</summary>
    public static CheckedPrint Plate { get; } = new(Length.FromMillimetres(2 * SimulatedCard.Half), Length.FromMillimetres(SimulatedCard.Zone), null);
}
