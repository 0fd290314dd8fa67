using CsCheck;
using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class PairSplitTests
{
    [Fact]
    public void Two_discs_from_half_a_radius_apart_to_touching_are_told_apart() =>
        Gen.Select(Gen.Double[0.6, 1.8], Gen.Double[0.85, 1.15], Gen.Double[-Math.PI, Math.PI]).Sample((distance, ratio, turn) =>
        {
            CardPoint second = new(distance * Math.Cos(turn), distance * Math.Sin(turn));
            List<CardPoint> outline = Outline(angle => Math.Max(Far(CardPoint.Origin, 1, angle, second), Far(second, ratio, angle, second)), Middle(second));
            (Disc First, Disc Second)? pair = PairSplit.Of(outline);
            if (pair is null)
                return false;
            Disc[] discs = [pair.Value.First, pair.Value.Second];
            return discs.Min(d => d.Centre.DistanceTo(CardPoint.Origin)) < 0.1 && discs.Min(d => d.Centre.DistanceTo(second)) < 0.1;
        }, iter: 60);

    [Fact]
    public void An_ellipse_is_one_mark() => Gen.Double[0.6, 1].Select(Gen.Double[-Math.PI, Math.PI]).Sample((ratio, turn) =>
        PairSplit.Of(Outline(angle => ratio / Math.Sqrt(Math.Pow(ratio * Math.Cos(angle - turn), 2) + Math.Pow(Math.Sin(angle - turn), 2)), CardPoint.Origin)) is null);

    /// <summary>Wobble by harmonics 3 to 8 as of a burn in fibrous tape.</summary>
    [Fact]
    public void A_ragged_disc_is_one_mark() => Gen.Double[-1, 1].Array[12].Sample(a =>
        PairSplit.Of(Outline(
            angle => 1 + (0.02 * Enumerable.Range(0, 6).Sum(k => (a[2 * k] * Math.Cos((k + 3) * angle)) + (a[(2 * k) + 1] * Math.Sin((k + 3) * angle)))), CardPoint.Origin)) is null);

    private static CardPoint Middle(CardPoint second) => new(second.U / 2, second.V / 2);

    private static List<CardPoint> Outline(Func<double, double> radius, CardPoint about) =>
        [.. Enumerable.Range(0, 96).Select(k => 2 * Math.PI * k / 96).Select(t => new CardPoint(about.U + (radius(t) * Math.Cos(t)), about.V + (radius(t) * Math.Sin(t))))];

    /// <summary>Distance from the middle of both centres to a circle's far side in a direction; 0 when the ray misses it.</summary>
    private static double Far(CardPoint centre, double radius, double angle, CardPoint second)
    {
        CardVector d = centre - Middle(second);
        double along = (d.U * Math.Cos(angle)) + (d.V * Math.Sin(angle)), across = (d.V * Math.Cos(angle)) - (d.U * Math.Sin(angle));
        double under = (radius * radius) - (across * across);
        return under < 0 ? 0 : along + Math.Sqrt(under);
    }
}
