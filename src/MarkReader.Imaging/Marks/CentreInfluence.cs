using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>How far each pixel's error moves a fitted centre, to first order.</summary>
/// <param name="grid">The pixels' grid.</param>
/// <param name="pixels">Place (px), displacement of the centre in u and v (mm) by an error of the bare target's light of 1 there.</param>
internal sealed class CentreInfluence(ZoneGrid grid, IReadOnlyList<(int X, int Y, double U, double V)> pixels)
{
    public double PixelsPerMm => grid.PixelsPerMm;

    /// <summary>Largest distance of two pixels along x or y.</summary>
    public int Extent { get; } = pixels.Count == 0 ? 0 : Math.Max(pixels.Max(p => p.X) - pixels.Min(p => p.X), pixels.Max(p => p.Y) - pixels.Min(p => p.Y));

    /// <summary>The centre's covariance when the errors are texture: the sum over all pairs of pixels (JCGM 100:2008, 5.2.2).</summary>
    public Covariance2 Under(TextureNoise texture)
    {
        double uu = 0, uv = 0, vv = 0;
        double[] table = texture.Table(Extent), us = [.. pixels.Select(p => p.U)], vs = [.. pixels.Select(p => p.V)];
        // A difference of places is a difference of indices.
        int[] places = [.. pixels.Select(p => (p.Y * ((2 * Extent) + 1)) + p.X)];
        for (int i = 0; i < us.Length; i++)
        {
            (double u, double v) = (us[i], vs[i]);
            (uu, uv, vv) = (uu + (u * u * texture.Variance), uv + (u * v * texture.Variance), vv + (v * v * texture.Variance));
            int from = places[i] + (table.Length / 2);
            for (int j = 0; j < i; j++)
            {
                (double u2, double v2) = (us[j], vs[j]);
                double c = table[from - places[j]];
                uu += 2 * c * u * u2;
                uv += c * ((u * v2) + (v * u2));
                vv += 2 * c * v * v2;
            }
        }

        (uu, vv) = (Math.Max(0, uu), Math.Max(0, vv));
        double bound = Math.Sqrt(uu * vv);
        return new(uu, Math.Clamp(uv, -bound, bound), vv);
    }
}
