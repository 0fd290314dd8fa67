using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Marks;

/// <summary>
/// Fits a faint scorch against the tape's texture: a soft disc A·Φ((R − r)/w) on a plane, by generalised least squares with the texture's own
/// covariance, so that fibres and creases, which are long one way, count for what they are worth.
/// </summary>
/// <remarks>Aitken, Proc. R. Soc. Edinb. 55, 1935; Gauss–Newton on the whitened residuals. The covariance is the estimator's own, scaled by χ²/ν where that exceeds 1.</remarks>
internal static class TextureFit
{
    private const int Parameters = 8; // centre u, v; radius; edge width; amplitude; plane 1, u, v
    private const int MostPixels = 900;

    /// <summary>Variance without structure that is added, as part of the texture's: no estimate of it is so exact that a fit may rest on what it never showed.</summary>
    private const double Unstructured = 1;

    /// <param name="darkening">Other marks divided out; NaN where nothing is known.</param>
    /// <param name="centre">Rough centre, mm.</param>
    /// <param name="radius">Rough radius at half depth, mm.</param>
    /// <param name="edgeWidth">Rough standard deviation of the edge's blur, mm.</param>
    /// <param name="depth">Rough darkening.</param>
    public static FittedTexture? Fit(ZoneMap darkening, CardPoint centre, double radius, double edgeWidth, double depth)
    {
        double window = (1.3 * radius) + (2 * edgeWidth) + 0.5;
        int reduction = darkening.Grid.Divisor((int)Math.Ceiling(window * darkening.Grid.PixelsPerMm * Math.Sqrt(Math.PI / MostPixels)));
        ZoneMap map = darkening.Reduce(reduction);
        List<(int X, int Y, CardPoint P, double D)> pixels = Collect(map, centre, window);
        int n = pixels.Count;
        int lags = (int)(2 * window * map.Grid.PixelsPerMm) + 2;
        if (n < 100 || TextureNoise.Around(map, centre, window, lags) is not { } noise)
            return null;
        Matrix<double> covariance = Matrix<double>.Build.Dense(n, n, (i, j) => noise[pixels[i].X - pixels[j].X, pixels[i].Y - pixels[j].Y]);
        for (int i = 0; i < n; i++)
            covariance[i, i] += (Unstructured * noise.Variance) + 1e-8;
        double[,] lower = covariance.Cholesky().Factor.ToArray();
        double[] p = [centre.U, centre.V, radius, Math.Max(edgeWidth, 0.05), depth, 0, 0, 0];
        Matrix<double> normal = Matrix<double>.Build.Dense(Parameters, Parameters);
        double cost = double.PositiveInfinity;
        double lambda = 1e-3;
        for (int iteration = 0; iteration < 25; iteration++)
        {
            double[] residual = Residual(pixels, p, centre);
            Whiten(lower, residual);
            double[][] columns = Jacobian(pixels, p, centre);
            foreach (double[] column in columns)
                Whiten(lower, column);
            cost = residual.Sum(Square);
            normal = Matrix<double>.Build.Dense(Parameters, Parameters, (a, b) => Dot(columns[a], columns[b]));
            Vector<double> right = Vector<double>.Build.Dense(Parameters, a => Dot(columns[a], residual));
            Vector<double>? step = null;
            for (int tries = 0; tries < 12 && step is null; tries++)
            {
                Matrix<double> damped = normal.Clone();
                damped.SetDiagonal(normal.Diagonal() * (1 + lambda));
                Vector<double> trial = damped.LU().Solve(right);
                double[] next = [.. p.Select((v, k) => v + trial[k])];
                next[3] = Math.Clamp(next[3], 0.03, 1.5 * radius);
                double[] after = Residual(pixels, next, centre);
                Whiten(lower, after);
                if (trial.All(double.IsFinite) && next[2] > 0.2 * radius && next[2] < 2 * radius && after.Sum(Square) <= cost)
                {
                    step = trial;
                    p = next;
                    lambda = Math.Max(1e-8, lambda / 5);
                }
                else
                {
                    lambda *= 6;
                }
            }

            if (step is null || Math.Max(Math.Abs(step[0]), Math.Abs(step[1])) < 1e-5)
                break;
        }

        CardPoint found = new(p[0], p[1]);
        Matrix<double> inverse = normal.Inverse() * Math.Max(1, cost / (n - Parameters));
        double determinant = (inverse[0, 0] * inverse[1, 1]) - Square(inverse[0, 1]);
        if (!(determinant > 0) || found.DistanceTo(centre) > radius || !(p[4] > 0))
            return null;
        return new(found, new(inverse[0, 0], inverse[0, 1], inverse[1, 1]), p[2], p[4], p[4] / Math.Sqrt(inverse[4, 4]));
    }

    private static List<(int X, int Y, CardPoint P, double D)> Collect(ZoneMap map, CardPoint centre, double window)
    {
        ZoneGrid grid = map.Grid;
        List<(int, int, CardPoint, double)> pixels = [];
        (double cx, double cy) = grid.ToPixel(centre);
        double reach = window * grid.PixelsPerMm;
        for (int y = Math.Max(0, (int)(cy - reach)); y <= Math.Min(grid.Size - 1, (int)(cy + reach) + 1); y++)
        {
            for (int x = Math.Max(0, (int)(cx - reach)); x <= Math.Min(grid.Size - 1, (int)(cx + reach) + 1); x++)
            {
                if (!float.IsNaN(map[x, y]) && Square(x - cx) + Square(y - cy) <= reach * reach)
                    pixels.Add((x, y, grid.ToCard(x, y), map[x, y]));
            }
        }

        return pixels;
    }

    private static double[] Residual(List<(int X, int Y, CardPoint P, double D)> pixels, double[] p, CardPoint origin) =>
        [.. pixels.Select(x => x.D - Model(p, x.P, origin))];

    private static double Model(double[] p, CardPoint at, CardPoint origin)
    {
        double r = Math.Sqrt(Square(at.U - p[0]) + Square(at.V - p[1]));
        return (p[4] * Normal.Distribution((p[2] - r) / p[3])) + p[5] + (p[6] * (at.U - origin.U)) + (p[7] * (at.V - origin.V));
    }

    private static double[][] Jacobian(List<(int X, int Y, CardPoint P, double D)> pixels, double[] p, CardPoint origin)
    {
        double[][] columns = [.. Enumerable.Range(0, Parameters).Select(_ => new double[pixels.Count])];
        for (int i = 0; i < pixels.Count; i++)
        {
            CardPoint at = pixels[i].P;
            double du = at.U - p[0], dv = at.V - p[1];
            double r = Math.Max(1e-9, Math.Sqrt((du * du) + (dv * dv)));
            double t = (p[2] - r) / p[3];
            double slope = p[4] * Normal.Density(t) / p[3];
            columns[0][i] = slope * du / r;
            columns[1][i] = slope * dv / r;
            columns[2][i] = slope;
            columns[3][i] = -slope * t;
            columns[4][i] = Normal.Distribution(t);
            columns[5][i] = 1;
            columns[6][i] = at.U - origin.U;
            columns[7][i] = at.V - origin.V;
        }

        return columns;
    }

    /// <summary>Solves L·z = x in place.</summary>
    private static void Whiten(double[,] lower, double[] x)
    {
        for (int i = 0; i < x.Length; i++)
        {
            double sum = x[i];
            for (int j = 0; j < i; j++)
                sum -= lower[i, j] * x[j];
            x[i] = sum / lower[i, i];
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private static double Square(double x) => x * x;
}

/// <summary>A soft disc fitted against the texture; radius in mm, significance = amplitude over its standard uncertainty.</summary>
internal sealed record FittedTexture(CardPoint Centre, Covariance2 Covariance, double Radius, double Amplitude, double Significance);
