using MarkReader.Cameras.Boards;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.CardChecks;

public sealed class CardCheckCoverageTests
{
    private static readonly string[] s_names = ["stretch", "skew", "bendUu", "bendUv", "bendVv", "error u", "error v"];

    /// <summary>The smallest limit that is taken, mm. Of errors far below it the lower bound is short: 13 % of flat cards without faults are stated 1 to 13 nm off.</summary>
    private const double LeastLimit = 0.001;

    // Of 120 cards with seven correlated values each, a rate of all is known to about ±1 %.
    [Theory]
    [InlineData(0)]
    [InlineData(0.008)]
    public void The_stated_intervals_hold_the_truth_as_often_as_they_say(double fault)
    {
        const int Cards = 120;
        Trial[] trials = [.. Enumerable.Range(1, Cards).AsParallel().AsOrdered().Select(seed => Try(seed, fault, flat: false))];

        string rates = string.Join(", ", s_names.Select((n, i) => $"{n} {trials.Count(t => t.Inside[i]) / (double)Cards:0.000}"));
        double all = trials.Average(t => t.Inside.Count(y => y) / (double)t.Inside.Length);
        Assert.True(all is > 0.93 and < 0.97, $"{all:0.000}: {rates}");
        Assert.InRange(trials.Count(t => t.Worst > t.AtMost), 0, 0.05 * Cards);
        Assert.InRange(trials.Count(t => t.Worst < t.AtLeast), 0, 0.05 * Cards);
        // All photos of a trial show one card.
        Assert.InRange(trials.Count(t => t.Found.ShapesDiffer), 0, 0.01 * Cards);
    }

    // A limit that the true errors just keep, or the smallest one: 5 % may be called bad.
    [Theory]
    [InlineData(0)]
    [InlineData(0.008)]
    public void A_flat_true_card_is_not_called_bad_more_often_than_is_said(double fault)
    {
        const int Cards = 60;
        Trial[] trials = [.. Enumerable.Range(1001, Cards).AsParallel().AsOrdered().Select(seed => Try(seed, fault, flat: true))];

        Assert.InRange(trials.Count(t => t.AtLeast > Math.Max(t.Worst, LeastLimit)), 0, 0.05 * Cards);
        Assert.All(trials, t => Assert.Equal(CardVerdict.Good, t.Found.AsDrawn.Against(Length.FromMillimetres(0.05))));
        // Of each term 1 % may be shown that is not there.
        Assert.InRange(trials.Count(t => t.Found.Stretch.Shown) + trials.Count(t => t.Found.Skew.Shown) + trials.Count(t => t.Found.Bend.Shown), 0, 0.04 * 3 * Cards);
    }

    private static Trial Try(int seed, double fault, bool flat)
    {
        Random random = new(seed);
        PrintedShape shape = flat ? new() : new(1 + (0.004 * (random.NextDouble() - 0.5)), 1, 0.004 * (random.NextDouble() - 0.5), random.NextDouble() - 0.5, 180 * random.NextDouble());
        SimulatedCard card = new(seed, shape, fault);
        CheckedCard found = CardCheck.Check(card.Views, card.Camera, SomePrint.Plate).ValueOrThrow();
        (double s, double c) = Math.SinCos(shape.BendDegrees * Math.PI / 180);
        double b = shape.B * BoardShape.Reach * BoardShape.Reach, stretch = 2 * (shape.ScaleU - shape.ScaleV) / (shape.ScaleU + shape.ScaleV);
        BoardShape truth = new(stretch, b * c * c, 2 * b * c * s, b * s * s, 0) { Skew = shape.Skew };
        double[] values = [found.Shape.Stretch, found.Shape.Skew, found.Shape.BendUu, found.Shape.BendUv, found.Shape.BendVv];
        double[] truths = [stretch, shape.Skew, truth.BendUu, truth.BendUv, truth.BendVv];
        IEnumerable<bool> inside = truths.Select((t, i) => Math.Abs(values[i] - t) <= Normal95.Factor * Math.Sqrt(found.Variances[i]));

        Length distance = Length.FromMillimetres(found.Places.Average(p => p.Distance.Millimetres));
        CardPoint[] places = [.. found.AsDrawn.Straight.Select(p => p.At)];
        PrintedSection[] sections = PrintedSection.Of(card.Views);
        CardVector[] Errors(double tilt, double towards) => [.. new FlatReading(sections, SimulatedCard.Half, new(Angle.FromDegrees(tilt), Angle.FromDegrees(towards), distance))
            .View(truth, 1, card.Faults, places).Read.Zip(places, (r, p) => r - p)];
        CardVector[] straight = Errors(0, 0);
        double worst = Enumerable.Range(0, 8).SelectMany(k => Errors(20, 45 * k)).Concat(straight).Max(e => e.Magnitude);
        ErrorPlace place = found.AsDrawn.Straight[8];
        CardVector off = place.Error - straight[8];
        return new(
            found,
            [.. inside, Math.Abs(off.U) <= Normal95.Factor * Math.Sqrt(place.Covariance.Uu), Math.Abs(off.V) <= Normal95.Factor * Math.Sqrt(place.Covariance.Vv)],
            worst,
            found.AsDrawn.WorstAtLeast.Millimetres,
            found.AsDrawn.WorstAtMost.Millimetres);
    }

    private sealed record Trial(CheckedCard Found, bool[] Inside, double Worst, double AtLeast, double AtMost);
}
