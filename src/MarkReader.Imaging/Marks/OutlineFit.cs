using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Marks;

/// <summary>
/// Fits the centre of a mark to its outline: in every direction the edge is located between the light just inside and just outside it,
/// so that smoke, shadow and glare, which change both, do not move it.
/// </summary>
/// <remarks>An ellipse by robust least squares over the directions (Tukey's biweight); the covariance is clustered by pairs of opposite sectors as in <see cref="SymmetricFit"/>.</remarks>
internal static class OutlineFit
{
    private const int Directions = 72;
    private const int Clusters = 18;
    private const int Parameters = 5; // centre u, v; radius; shape e1, e2
    /// <summary>Standard deviation of the shape before the outline is seen: axis ratios down to 0.9 are usual.</summary>
    private const double ShapePrior = 0.12;

    /// <summary>
    /// Part of the edge's width by which it is displaced where the light outside is twice the usual: cameras bend their tone curve, so that an
    /// edge between other levels lies elsewhere in its blur. From rendered photos with tone curves of phones.
    /// </summary>
    private const double LevelShift = 0.08;

    private const double Tukey = 4.685;
    private const int LeastDirections = 24;

    /// <summary>Least step of light at an edge, of full scale.</summary>
    private const double LeastStep = 0.005;

    /// <param name="light">The zone in linear light; NaN where nothing is known.</param>
    /// <param name="centre">Centre from a first fit, mm.</param>
    /// <param name="radius">Radius at half depth, mm.</param>
    /// <param name="edgeWidth">Standard deviation of the edge's blur, mm.</param>
    public static FittedOutline? Fit(ZoneMap light, CardPoint centre, double radius, double edgeWidth)
    {
        double half = Math.Clamp((2.4 * edgeWidth) + 0.08, Math.Min(0.2, 0.7 * radius), 0.75 * radius);
        FittedOutline? outline = new(centre, new(1, 0, 1), new(1, 0, 1), radius, 0, 0, edgeWidth, 0, 0);
        for (int round = 0; round < 3; round++)
        {
            List<EdgePoint> edges = Edges(light, outline, half);
            if (edges.Count < LeastDirections || (outline = Ellipse(edges, outline)) is null)
                return null;
            if (outline.Centre.DistanceTo(centre) > 0.5 * radius || outline.Radius < 0.5 * radius || outline.Radius > 1.6 * radius)
                return null;
        }

        return outline;
    }

    private static List<EdgePoint> Edges(ZoneMap light, FittedOutline about, double half)
    {
        const int Lines = 5;
        double pixel = 1 / light.Grid.PixelsPerMm;
        double step = Math.Min(pixel, half / 8);
        int samples = (2 * (int)(half / step)) + 1;
        Span<double> profile = stackalloc double[samples];
        List<EdgePoint> edges = [];
        for (int k = 0; k < Directions; k++)
        {
            double angle = 2 * Math.PI * k / Directions;
            double r0 = about.RadiusAt(angle);
            profile.Clear();
            bool known = true;
            for (int line = 0; line < Lines && known; line++)
            {
                double a = angle + (2 * Math.PI / Directions * (((line + 0.5) / Lines) - 0.5));
                (double s, double c) = Math.SinCos(a);
                for (int i = 0; i < samples; i++)
                {
                    double r = r0 + (step * (i - (samples / 2)));
                    double v = Sample(light, new(about.Centre.U + (r * c), about.Centre.V + (r * s)));
                    known &= !double.IsNaN(v);
                    profile[i] += v / Lines;
                }
            }

            if (!known)
                continue;
            if (OutlineEdge.Fit(profile, step, pixel) is not { } fit || fit.Step < LeastStep || Math.Abs(fit.Place) > 0.75 * half || !(fit.Variance < half * half))
                continue;
            edges.Add(new(angle, r0 + fit.Place, fit.Variance, fit.Sigma, fit.Step, fit.Outside, k % (Directions / 2) / (Directions / 2 / Clusters)));
        }

        // A direction with much less of a step than most shows a pen line or another mark.
        if (edges.Count == 0)
            return edges;
        double usual = Median(edges.Select(e => e.Step));
        return [.. edges.Where(e => e.Step > usual / 3)];
    }

    private static FittedOutline? Ellipse(List<EdgePoint> edges, FittedOutline start)
    {
        Vector<double> p = Vector<double>.Build.Dense([0, 0, start.Radius, start.E1, start.E2]);
        int n = edges.Count;
        double[] residuals = new double[n];
        double[] weights = new double[n];
        double[][] rows = new double[n][];
        double extra = 0;
        Matrix<double> normal = Matrix<double>.Build.Dense(Parameters, Parameters);
        for (int iteration = 0; iteration < 25; iteration++)
        {
            for (int i = 0; i < n; i++)
            {
                residuals[i] = edges[i].Radius - Distance(p, edges[i].Angle);
                rows[i] = Row(p, edges[i].Angle);
            }

            // Roughness of the outline adds to every direction alike.
            double scale = 1.4826 * Median(residuals.Select(Math.Abs));
            extra = Math.Max(scale * scale, 1e-8);
            for (int i = 0; i < n; i++)
            {
                double t = iteration < 2 ? 0 : residuals[i] / (Tukey * Math.Sqrt(extra));
                weights[i] = Math.Abs(t) < 1 ? Square(1 - (t * t)) / (extra + edges[i].Variance) : 0;
            }

            normal.Clear();
            Vector<double> right = Vector<double>.Build.Dense(Parameters);
            for (int i = 0; i < n; i++)
            {
                Vector<double> row = Vector<double>.Build.Dense(rows[i]);
                normal += weights[i] * row.OuterProduct(row);
                right += weights[i] * residuals[i] * row;
            }

            // Marks are nearly round: a weak belief that keeps a half-hidden outline determined.
            for (int k = 3; k < Parameters; k++)
            {
                normal[k, k] += 1 / Square(ShapePrior);
                right[k] -= p[k] / Square(ShapePrior);
            }

            Vector<double> step = normal.LU().Solve(right);
            if (!step.All(double.IsFinite))
                return null;
            p += step;
            if (Math.Sqrt((p[3] * p[3]) + (p[4] * p[4])) > 0.85 || p[2] <= 0)
                return null;
            if (iteration > 4 && Math.Abs(step[0]) + Math.Abs(step[1]) < 1e-6)
                break;
        }

        if (weights.Count(w => w > 0) < LeastDirections)
            return null;
        Matrix<double> inverse = normal.Inverse();
        Vector<double>[] scores = [.. Enumerable.Range(0, Clusters).Select(_ => Vector<double>.Build.Dense(Parameters))];
        for (int i = 0; i < n; i++)
            scores[edges[i].Cluster] += weights[i] * residuals[i] * Vector<double>.Build.Dense(rows[i]);
        Matrix<double> meat = Matrix<double>.Build.Dense(Parameters, Parameters);
        foreach (Vector<double> s in scores)
            meat += s.OuterProduct(s);
        meat *= Clusters / (Clusters - 1.0);
        Matrix<double> c = inverse * meat * inverse;
        EdgePoint[] used = [.. edges.Where((_, i) => weights[i] > 0)];
        double rough = Math.Sqrt(residuals.Where((_, i) => weights[i] > 0).Average(Square));
        double sigma = Median(used.Select(e => e.Sigma));
        return new(
            new(start.Centre.U + p[0], start.Centre.V + p[1]),
            new(c[0, 0], c[0, 1], c[1, 1]),
            LevelDoubt(used, sigma),
            p[2],
            p[3],
            p[4],
            sigma,
            used.Length / (double)Directions,
            Math.Sqrt(Math.Max(0, Square(rough) - used.Average(e => e.Variance))) / p[2]);
    }

    /// <summary>What the first harmonic of the light outside may have done to the centre.</summary>
    private static Covariance2 LevelDoubt(EdgePoint[] edges, double sigma)
    {
        double mean = edges.Average(e => e.Outside);
        double u = 2 * edges.Average(e => Math.Cos(e.Angle) * (e.Outside - mean)) / mean * LevelShift * sigma;
        double v = 2 * edges.Average(e => Math.Sin(e.Angle) * (e.Outside - mean)) / mean * LevelShift * sigma;
        return new Covariance2(u * u, u * v, v * v) + Covariance2.Isotropic(0.3 * Math.Sqrt((u * u) + (v * v)));
    }

    /// <summary>Distance from the start's centre to the ellipse with parameters p in a direction, to first order in the centre's move.</summary>
    private static double Distance(Vector<double> p, double angle)
    {
        (double s, double c) = Math.SinCos(angle);
        double along = (p[0] * c) + (p[1] * s), across = (p[1] * c) - (p[0] * s);
        double turned = angle - (across / p[2]);
        return along + RadiusAt(p[2], p[3], p[4], turned) - (across * across / (2 * p[2]));
    }

    internal static double RadiusAt(double radius, double e1, double e2, double angle)
    {
        (double s, double c) = Math.SinCos(angle);
        double q = ((1 + e1) * c * c) + (2 * e2 * s * c) + ((1 - e1) * s * s);
        return radius * Math.Sqrt(Math.Sqrt(1 - (e1 * e1) - (e2 * e2)) / q);
    }

    private static double[] Row(Vector<double> p, double angle)
    {
        double[] row = new double[Parameters];
        for (int k = 0; k < Parameters; k++)
        {
            const double h = 1e-5;
            Vector<double> up = p.Clone(), down = p.Clone();
            up[k] += h;
            down[k] -= h;
            row[k] = (Distance(up, angle) - Distance(down, angle)) / (2 * h);
        }

        return row;
    }

    private static double Sample(ZoneMap map, CardPoint at)
    {
        (double x, double y) = map.Grid.ToPixel(at);
        int ix = (int)Math.Floor(x), iy = (int)Math.Floor(y);
        if (ix < 0 || iy < 0 || ix >= map.Grid.Size - 1 || iy >= map.Grid.Size - 1)
            return double.NaN;
        double fx = x - ix, fy = y - iy;
        double top = map[ix, iy] + (fx * (map[ix + 1, iy] - map[ix, iy]));
        double bottom = map[ix, iy + 1] + (fx * (map[ix + 1, iy + 1] - map[ix, iy + 1]));
        return top + (fy * (bottom - top));
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private static double Square(double x) => x * x;
}
