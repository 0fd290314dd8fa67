using System.Runtime.Intrinsics;
using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Autocovariance of the bare target's darkening about a place: the tape's texture and the photo's noise.</summary>
/// <remarks>
/// The biased estimator over a masked region, which is positive semidefinite (Priestley, Spectral Analysis and Time Series, 1981, 5.3.3):
/// what the mask hides counts as zero.
/// </remarks>
internal sealed class TextureNoise
{
    /// <summary>How far from the mark the texture is read, mm.</summary>
    private const double Reach = 6;

    /// <summary>Beyond this many robust standard deviations a pixel is no texture: a pen line, the tape's edge.</summary>
    private const double Outlier = 5;

    private const int LeastPixels = 400;

    /// <summary>How many lags are summed side by side.</summary>
    private const int Lanes = 16;

    private readonly double[,] _covariance;
    private readonly int _lags;

    private TextureNoise(double[,] covariance, int lags)
    {
        _covariance = covariance;
        _lags = lags;
    }

    /// <summary>Variance of one pixel.</summary>
    public double Variance => _covariance[0, _lags];

    /// <summary>Covariance of two pixels (dx, dy) apart.</summary>
    public double this[int dx, int dy] => dy < 0 || (dy == 0 && dx < 0) ? At(-dx, -dy) : At(dx, dy);

    /// <summary>The covariances of pixels up to <paramref name="reach"/> px apart along x and y, row by row of dy, each from -reach to reach.</summary>
    public double[] Table(int reach)
    {
        int side = (2 * reach) + 1;
        double[] table = new double[side * side];
        for (int i = 0; i < table.Length; i++)
            table[i] = this[(i % side) - reach, (i / side) - reach];
        return table;
    }

    /// <summary>Reads the texture around a mark; null when there is too little bare target.</summary>
    /// <param name="darkening">Marks divided out or NaN, background near zero.</param>
    /// <param name="inner">Radius about the mark that is left out, mm.</param>
    /// <param name="lags">Largest distance along x or y, px.</param>
    public static TextureNoise? Around(ZoneMap darkening, CardPoint centre, double inner, int lags)
    {
        ZoneGrid grid = darkening.Grid;
        (double cx, double cy) = grid.ToPixel(centre);
        int reach = (int)((inner + Reach) * grid.PixelsPerMm);
        int x0 = Math.Max(0, (int)cx - reach), x1 = Math.Min(grid.Size - 1, (int)cx + reach);
        int y0 = Math.Max(0, (int)cy - reach), y1 = Math.Min(grid.Size - 1, (int)cy + reach);
        int w = x1 - x0 + 1, h = y1 - y0 + 1;
        if (w <= 0 || h <= 0)
            return null;
        double[] values = new double[w * h];
        List<double> seen = [];
        double hidden = inner * inner * grid.PixelsPerMm * grid.PixelsPerMm;
        for (int y = 0; y < h; y++)
        {
            for (int x = 0; x < w; x++)
            {
                double dx = x + x0 - cx, dy = y + y0 - cy;
                float d = darkening[x + x0, y + y0];
                bool bare = !float.IsNaN(d) && (dx * dx) + (dy * dy) > hidden;
                values[(y * w) + x] = bare ? d : double.NaN;
                if (bare)
                    seen.Add(d);
            }
        }

        if (seen.Count < LeastPixels)
            return null;
        double middle = seen.Median();
        double spread = 1.4826 * seen.Select(v => Math.Abs(v - middle)).Median();
        double[] texture = [.. values.Select(v => Math.Abs(v - middle) <= Outlier * spread ? v : double.NaN)];
        double mean = texture.Where(v => !double.IsNaN(v)).Average();
        int count = texture.Count(v => !double.IsNaN(v));
        if (count < LeastPixels)
            return null;
        // Zeros beside and behind the rows, so that all lags run over the same pixels; they add nothing.
        int stride = w + (2 * lags) + Lanes;
        double[] padded = new double[h * stride];
        for (int i = 0; i < texture.Length; i++)
        {
            if (!double.IsNaN(texture[i]))
                padded[((i / w) * stride) + lags + (i % w)] = texture[i] - mean;
        }

        double[,] covariance = new double[lags + 1, (2 * lags) + 1];
        Parallel.For(0, lags + 1, dy =>
        {
            Span<double> products = stackalloc double[Lanes];
            for (int first = -lags; first <= lags; first += Lanes)
            {
                Products(padded, stride, h, lags, w, dy, first, products);
                for (int k = 0; k < Lanes && first + k <= lags; k++)
                    covariance[dy, first + k + lags] = products[k] / count;
            }
        });
        return new(covariance, lags);
    }

    /// <summary>Sums of products of pixels that are (dx, dy) apart, for the <see cref="Lanes"/> values of dx from <paramref name="first"/> on; each sum runs from pixel to pixel in turn.</summary>
    private static void Products(double[] padded, int stride, int h, int lags, int w, int dy, int first, Span<double> products)
    {
        Vector256<double> s0 = default, s1 = default, s2 = default, s3 = default;
        for (int y = 0; y + dy < h; y++)
        {
            ReadOnlySpan<double> row = padded.AsSpan((y * stride) + lags, w);
            ReadOnlySpan<double> other = padded.AsSpan(((y + dy) * stride) + lags + first, w + Lanes);
            for (int x = 0; x < row.Length; x++)
            {
                double value = row[x];
                if (value == 0)
                    continue;
                Vector256<double> v = Vector256.Create(value);
                ReadOnlySpan<double> beside = other.Slice(x, Lanes);
                s0 += v * Vector256.Create(beside);
                s1 += v * Vector256.Create(beside[4..]);
                s2 += v * Vector256.Create(beside[8..]);
                s3 += v * Vector256.Create(beside[12..]);
            }
        }

        s0.CopyTo(products);
        s1.CopyTo(products[4..]);
        s2.CopyTo(products[8..]);
        s3.CopyTo(products[12..]);
    }

    private double At(int dx, int dy) => dy > _lags || Math.Abs(dx) > _lags ? 0 : _covariance[dy, dx + _lags];
}
