using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>What light that differs from side to side may have done to a centre found from edges.</summary>
internal static class LevelDoubt
{
    /// <summary>
    /// Part of the edge's width by which it is displaced where the light outside is twice the usual: cameras bend their tone curve, so that an
    /// edge between other levels lies elsewhere in its blur. From rendered photos with tone curves of phones.
    /// </summary>
    private const double Shift = 0.08;

    /// <summary>Part of it that may have any direction.</summary>
    private const double AnyWay = 0.3;

    /// <summary>Covariance from the first harmonic of the light outside, mm².</summary>
    /// <param name="sigma">Standard deviation of the edge's blur, mm.</param>
    public static Covariance2 Of(IReadOnlyList<EdgePoint> edges, double sigma)
    {
        double mean = edges.Average(e => e.Outside);
        double u = 2 * edges.Average(e => Math.Cos(e.Angle) * (e.Outside - mean)) / mean * Shift * sigma;
        double v = 2 * edges.Average(e => Math.Sin(e.Angle) * (e.Outside - mean)) / mean * Shift * sigma;
        return new Covariance2(u * u, u * v, v * v) + Covariance2.Isotropic(AnyWay * Math.Sqrt((u * u) + (v * v)));
    }
}
