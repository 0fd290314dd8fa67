using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>What light that differs from side to side may have done to a centre found from edges.</summary>
internal static class LevelDoubt
{
    /// <summary>
    /// Part of the edge's width by which it is displaced where the light outside is twice the usual: cameras bend their tone curve, so that an
    /// edge between other levels lies elsewhere in its blur. From rendered photos with tone curves of phones.
    /// </summary>
    private const double Shift = 0.1;

    /// <summary>The same where the light outside is clipped on one side: how high it would have gone is not known.</summary>
    private const double ClippedShift = 0.2;

    /// <summary>Light outside that counts as clipped, of full scale.</summary>
    private const double Clipped = 0.95;

    /// <summary>Part of it that may have any direction.</summary>
    private const double AnyWay = 0.3;

    /// <summary>Covariance from the first harmonics of the light outside and inside and of clipping, mm².</summary>
    /// <param name="sigma">Standard deviation of the edge's blur, mm.</param>
    public static Covariance2 Of(IReadOnlyList<EdgePoint> edges, double sigma)
    {
        double outside = edges.Average(e => e.Outside), step = edges.Average(e => e.Step);
        CardVector level = Harmonic(edges, e => e.Outside / outside);
        CardVector added = Harmonic(edges, e => (e.Outside - e.Step) / step);
        CardVector clipped = Harmonic(edges, e => e.Outside > Clipped ? 1 : 0);
        return Doubt(Shift * sigma * level) + Doubt(Shift * sigma * added) + Doubt(ClippedShift * sigma * clipped);
    }

    private static CardVector Harmonic(IReadOnlyList<EdgePoint> edges, Func<EdgePoint, double> value)
    {
        double mean = edges.Average(value);
        return new(2 * edges.Average(e => Math.Cos(e.Angle) * (value(e) - mean)), 2 * edges.Average(e => Math.Sin(e.Angle) * (value(e) - mean)));
    }

    private static Covariance2 Doubt(CardVector v) =>
        Covariance2.Along(v) + Covariance2.Isotropic(AnyWay * v.Magnitude);
}
