using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>How evenly the target around a mark is lit and coloured.</summary>
internal static class Surroundings
{
    private const int Sectors = 36;
    private const double RingWidth = 0.5;

    /// <summary>First harmonic of the light on a ring around a mark over its mean: 0 where it is even; null when too little of the ring is seen.</summary>
    /// <param name="light">The zone's light with other marks divided out.</param>
    /// <param name="inner">Inner radius of the ring, mm.</param>
    public static CardVector? Unevenness(ZoneMap light, CardPoint centre, double inner)
    {
        ZoneGrid grid = light.Grid;
        double step = 1 / grid.PixelsPerMm;
        double[] levels = new double[Sectors];
        int seen = 0;
        for (int k = 0; k < Sectors; k++)
        {
            List<double> values = [];
            for (double r = inner; r < inner + RingWidth; r += step)
            {
                for (int j = 0; j < 5; j++)
                {
                    double angle = 2 * Math.PI * (k + ((j + 0.5) / 5)) / Sectors;
                    double v = light.Between(new(centre.U + (r * Math.Cos(angle)), centre.V + (r * Math.Sin(angle))));
                    if (!double.IsNaN(v))
                        values.Add(v);
                }
            }

            levels[k] = double.NaN;
            if (values.Count > 5)
            {
                levels[k] = values.Median();
                seen++;
            }
        }

        if (seen < Sectors / 2)
            return null;
        double mean = levels.Where(l => !double.IsNaN(l)).Average();
        double u = 0, v2 = 0;
        for (int k = 0; k < Sectors; k++)
        {
            if (double.IsNaN(levels[k]))
                continue;
            double angle = 2 * Math.PI * (k + 0.5) / Sectors;
            u += 2 * Math.Cos(angle) * (levels[k] - mean) / seen;
            v2 += 2 * Math.Sin(angle) * (levels[k] - mean) / seen;
        }

        return mean > 0 ? 1 / mean * new CardVector(u, v2) : null;
    }
}
