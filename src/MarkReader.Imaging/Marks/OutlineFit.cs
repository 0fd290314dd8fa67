using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Marks;

/// <summary>
/// Fits the centre of a mark, or of two that overlap, to the outline: in every direction the edge is located between the light just inside and
/// just outside it, so that smoke, shadow and glare, which change both, do not move it.
/// </summary>
/// <remarks>
/// Ellipses by robust least squares over the directions (Tukey's biweight); two marks share one shape, since one beam made them. The covariance
/// is clustered by sectors (Liang and Zeger, Biometrika 73, 1986), of a single mark by pairs of opposite ones: an outline that bulges alike on
/// opposite sides does not move its centre. Of a whole outline the mean of that and of what its harmonics say (<see cref="OutlineHarmonics"/>) is taken:
/// each rests on few numbers.
/// </remarks>
internal static class OutlineFit
{
    private const int Directions = 72;
    private const int Sectors = 36;
    private const int OfMark = 3; // centre u, v; radius
    private const double Tukey = 4.685;
    private const int LeastDirections = 24;
    private const int LeastDirectionsOfPair = 16;

    /// <summary>Rounds in which the edges are sought again about the fitted outline.</summary>
    private const int Rounds = 4;

    /// <summary>Least step of light at an edge, of full scale: the steps of an 8-bit photo in deep shade.</summary>
    private const double LeastStep = 0.0005;

    /// <summary>An outline's edges keep so many standard deviations of their blur away from another mark's.</summary>
    private const double Clearance = 1.5;

    /// <summary>What one part of hidden directions adds to the variance, as a factor.</summary>
    private const double HiddenWeight = 4;

    /// <summary>Part of the directions from which on the outline's harmonics can be told apart.</summary>
    private const double NearlyWhole = 0.9;

    /// <summary>Half an outline does not average its irregularities as a whole one does. Factor of variance, from rendered pairs.</summary>
    private const double PairInflation = 2.5;

    /// <summary>Standard deviation of the two shape elements before the outline is seen: axis ratios down to 0.9 are usual.</summary>
    private const double ShapePrior = 0.12;
    private const double ShapePriorOfPair = 0.06;

    /// <param name="light">The zone in linear light; NaN where nothing is known.</param>
    /// <param name="mark">Centre and radius from a first fit.</param>
    /// <param name="edgeWidth">Standard deviation of the edge's blur, mm.</param>
    public static FittedOutline? Fit(ZoneMap light, Disc mark, double edgeWidth) => Fit(light, [mark], edgeWidth)?[0];

    /// <summary>Two marks that overlap.</summary>
    public static FittedOutline[]? Fit(ZoneMap light, (Disc First, Disc Second) pair, double edgeWidth) => Fit(light, [pair.First, pair.Second], edgeWidth);

    private static FittedOutline[]? Fit(ZoneMap light, Disc[] marks, double edgeWidth)
    {
        double radius = marks.Min(m => m.Radius);
        double half = Math.Clamp((2.4 * edgeWidth) + 0.08, Math.Min(0.2, 0.7 * radius), 0.75 * radius);
        FittedOutline[] outlines = [.. marks.Select(m => FittedOutline.Start(m, edgeWidth))];
        for (int round = 0; round < Rounds; round++)
        {
            List<EdgePoint> edges = [.. Enumerable.Range(0, marks.Length).SelectMany(k => Edges(light, outlines, k, half))];
            if (!AreEnough(edges, marks.Length) || Ellipses(edges, outlines) is not { } fitted)
                return null;
            outlines = fitted;
            for (int k = 0; k < marks.Length; k++)
            {
                if (outlines[k].Centre.DistanceTo(marks[k].Centre) > 0.5 * marks[k].Radius || outlines[k].Radius < 0.5 * marks[k].Radius || outlines[k].Radius > 1.6 * marks[k].Radius)
                    return null;
            }
        }

        return outlines;
    }

    private static bool AreEnough(List<EdgePoint> edges, int marks) =>
        Enumerable.Range(0, marks).All(k => edges.Count(e => e.Mark == k) >= (marks == 1 ? LeastDirections : LeastDirectionsOfPair));

    private static List<EdgePoint> Edges(ZoneMap light, FittedOutline[] outlines, int mark, double half)
    {
        const int Lines = 5;
        FittedOutline about = outlines[mark];
        FittedOutline? other = outlines.Length == 1 ? null : outlines[1 - mark];
        double pixel = 1 / light.Grid.PixelsPerMm;
        double step = Math.Min(pixel, half / 8);
        int samples = (2 * (int)(half / step)) + 1;
        Span<double> profile = stackalloc double[samples];
        List<EdgePoint> edges = [];
        for (int k = 0; k < Directions; k++)
        {
            double angle = 2 * Math.PI * k / Directions;
            double r0 = about.RadiusAt(angle);
            if (other is not null && other.Clearance(about.At(angle, r0)) < Clearance * Math.Max(about.Sigma, other.Sigma))
                continue;
            profile.Clear();
            for (int line = 0; line < Lines; line++)
            {
                double a = angle + (2 * Math.PI / Directions * (((line + 0.5) / Lines) - 0.5));
                for (int i = 0; i < samples; i++)
                    profile[i] += light.Between(about.At(a, r0 + (step * (i - (samples / 2))))) / Lines;
            }

            if (profile.ContainsAnyExceptInRange(double.NegativeInfinity, double.MaxValue))
                continue;
            if (OutlineEdge.Fit(profile, step, pixel) is not { } fit || fit.Step < LeastStep || Math.Abs(fit.Place) > 0.75 * half || !(fit.Variance < half * half))
                continue;
            edges.Add(new(mark, angle, r0 + fit.Place, fit.Variance, fit.Sigma, fit.Step, fit.Outside));
        }

        // A direction with much less contrast than most shows a pen line or another mark.
        if (edges.Count == 0)
            return edges;
        double usual = edges.Select(e => e.Step / e.Outside).Median();
        return [.. edges.Where(e => e.Step / e.Outside > usual / 3)];
    }

    private static FittedOutline[]? Ellipses(List<EdgePoint> edges, FittedOutline[] start)
    {
        int marks = start.Length;
        int shape = OfMark * marks;
        int parameters = shape + 2;
        double certainty = 1 / Square(marks == 1 ? ShapePrior : ShapePriorOfPair);
        Vector<double> p = Vector<double>.Build.Dense([.. start.SelectMany(s => (double[])[0, 0, s.Radius]), start[0].Shape.E1, start[0].Shape.E2]);
        int n = edges.Count;
        double[] residuals = new double[n];
        double[] weights = new double[n];
        double[][] rows = new double[n][];
        NormalEquations equations = new(parameters);
        for (int iteration = 0; iteration < 25; iteration++)
        {
            for (int i = 0; i < n; i++)
            {
                residuals[i] = edges[i].Radius - Distance(p, edges[i], shape);
                rows[i] = Row(p, edges[i], shape);
            }

            // Roughness of the outline adds to every direction alike.
            double extra = Math.Max(Square(1.4826 * residuals.Select(Math.Abs).Median()), 1e-8);
            equations = new(parameters);
            for (int i = 0; i < n; i++)
            {
                double t = iteration < 2 ? 0 : residuals[i] / (Tukey * Math.Sqrt(extra));
                weights[i] = Math.Abs(t) < 1 ? Square(1 - (t * t)) / (extra + edges[i].Variance) : 0;
                equations.Add(rows[i], residuals[i], weights[i]);
            }

            for (int k = shape; k < parameters; k++)
                equations.AddPrior(k, -p[k], certainty);
            if (equations.Solve() is not { } step)
                return null;
            p += step;
            if (new EllipticShape(p[shape], p[shape + 1]).Elongation > 0.85 || Enumerable.Range(0, marks).Any(k => p[(OfMark * k) + 2] <= 0))
                return null;
            if (iteration > 4 && step.L2Norm() < 1e-6)
                break;
        }

        List<EdgePoint> used = [.. edges.Where((_, i) => weights[i] > 0)];
        if (!AreEnough(used, marks))
            return null;
        Matrix<double> covariance = Covariance(equations.Matrix, edges, rows, residuals, weights, shape, certainty);
        return [.. Enumerable.Range(0, marks).Select(k => Outline(k))];

        FittedOutline Outline(int mark)
        {
            int at = OfMark * mark;
            EdgePoint[] own = [.. used.Where(e => e.Mark == mark)];
            double rough = Enumerable.Range(0, n).Where(i => weights[i] > 0 && edges[i].Mark == mark).Average(i => Square(residuals[i]));
            double sigma = own.Select(e => e.Sigma).Median();
            double seen = own.Length / (double)Directions;
            // Directions that were left out show that something lies on the mark; it may lie on some of the rest.
            double hidden = marks == 1 ? 1 + (HiddenWeight * (1 - seen)) : PairInflation;
            Covariance2 ofCentre = new(covariance[at, at], covariance[at, at + 1], covariance[at + 1, at + 1]);
            if (marks == 1 && seen > NearlyWhole)
                ofCentre = 0.5 * (ofCentre + OutlineHarmonics.OfCentre([.. Enumerable.Range(0, n).Where(i => weights[i] > 0).Select(i => (edges[i].Angle, residuals[i]))]));
            return new(
                start[mark].Centre + new CardVector(p[at], p[at + 1]),
                hidden * ofCentre,
                LevelDoubt.Of(own, sigma),
                p[at + 2],
                new(p[shape], p[shape + 1]),
                sigma,
                seen,
                Math.Sqrt(Math.Max(0, rough - own.Average(e => e.Variance))) / p[at + 2]);
        }
    }

    private static Matrix<double> Covariance(
        Matrix<double> normal, List<EdgePoint> edges, double[][] rows, double[] residuals, double[] weights, int shape, double certainty)
    {
        Dictionary<int, Vector<double>> scores = [];
        for (int i = 0; i < rows.Length; i++)
        {
            if (weights[i] <= 0)
                continue;
            int sector = (int)(edges[i].Angle / (2 * Math.PI) * Sectors);
            // One mark: opposite sectors together. Two: the opposite ones are hidden, so neighbours go together.
            int cluster = shape == OfMark ? sector % (Sectors / 2) : (edges[i].Mark * Sectors) + (sector / 2);
            Vector<double> score = weights[i] * residuals[i] * Vector<double>.Build.Dense(rows[i]);
            scores[cluster] = scores.TryGetValue(cluster, out Vector<double>? sum) ? sum + score : score;
        }

        Matrix<double> meat = Matrix<double>.Build.Dense(normal.RowCount, normal.RowCount);
        foreach (Vector<double> s in scores.Values)
            meat += s.OuterProduct(s);
        meat *= scores.Count / Math.Max(1.0, scores.Count - normal.RowCount);
        for (int k = shape; k < shape + 2; k++)
            meat[k, k] += certainty;
        Matrix<double> inverse = normal.Inverse();
        return inverse * meat * inverse;
    }

    /// <summary>Distance from a mark's start centre to its ellipse with parameters p in an edge's direction, to second order in the centre's move.</summary>
    private static double Distance(Vector<double> p, EdgePoint e, int shape)
    {
        int at = OfMark * e.Mark;
        (double s, double c) = Math.SinCos(e.Angle);
        double along = (p[at] * c) + (p[at + 1] * s), across = (p[at + 1] * c) - (p[at] * s);
        double turned = e.Angle - (across / p[at + 2]);
        return along + (p[at + 2] * new EllipticShape(p[shape], p[shape + 1]).At(turned)) - (across * across / (2 * p[at + 2]));
    }

    private static double[] Row(Vector<double> p, EdgePoint e, int shape)
    {
        const double h = 1e-5;
        double[] row = new double[p.Count];
        foreach (int k in (ReadOnlySpan<int>)[OfMark * e.Mark, (OfMark * e.Mark) + 1, (OfMark * e.Mark) + 2, shape, shape + 1])
        {
            double kept = p[k];
            p[k] = kept + h;
            double up = Distance(p, e, shape);
            p[k] = kept - h;
            row[k] = (up - Distance(p, e, shape)) / (2 * h);
            p[k] = kept;
        }

        return row;
    }

    private static double Square(double x) => x * x;
}
