using MarkReader.Imaging.Fitting;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Tells two overlapping marks from one long one: their joint outline is that of two discs.</summary>
internal static class PairSplit
{
    private const int Parameters = 6; // centre and radius of both discs

    /// <summary>Two discs must fit this much better than one ellipse: ratio of root mean square residuals.</summary>
    private const double Gain = 0.5;

    /// <summary>And so well, as part of the radius.</summary>
    private const double MostMisfit = 0.05;

    /// <summary>An outline this close to an ellipse, as part of its radius, is one mark's.</summary>
    private const double LeastMisfit = 0.035;

    /// <summary>Centres closer than this part of the mean radius are not told apart; farther than twice it they do not overlap.</summary>
    private const double LeastDistance = 0.5;
    private const double MostDistance = 2.1;

    private const int Directions = 96;

    /// <summary>The two discs whose union a dark area is, or null when it is one mark.</summary>
    /// <param name="darkening">The zone's darkening at full resolution.</param>
    /// <param name="area">The area.</param>
    public static (Disc First, Disc Second)? Of(ZoneMap darkening, MarkCandidate area)
    {
        List<CardPoint> outline = HalfDepth(darkening, area);
        return outline.Count < Directions / 2 ? null : Of(outline);
    }

    /// <summary>The two discs whose union has this outline, or null when it is one ellipse.</summary>
    internal static (Disc First, Disc Second)? Of(IReadOnlyList<CardPoint> outline)
    {
        CardPoint middle = new(outline.Average(p => p.U), outline.Average(p => p.V));
        CardVector[] points = [.. outline.Select(p => p - middle)];
        double uu = points.Average(p => p.U * p.U), uv = points.Average(p => p.U * p.V), vv = points.Average(p => p.V * p.V);
        Ellipse moments = new Covariance2(uu, uv, vv).Ellipse(Math.Sqrt(2));
        (double major, double minor) = (moments.SemiMajor, moments.SemiMinor);
        double ellipse = EllipseResidual(points, moments);
        if (ellipse < LeastMisfit * minor)
            return null;
        (double sin, double cos) = Math.SinCos(moments.Direction.Radians);
        (double[] P, double Rms)? best = null;
        foreach (double share in (ReadOnlySpan<double>)[0.6, 1.0, 1.4])
        {
            double reach = share * Math.Max(major - minor, 0.15 * minor);
            double[] start = [reach * cos, reach * sin, minor, -reach * cos, -reach * sin, minor];
            (double[] P, double Rms) trial = Refine(points, start);
            if (best is null || trial.Rms < best.Value.Rms)
                best = trial;
        }

        double[] p = best!.Value.P;
        double distance = Math.Sqrt(Square(p[0] - p[3]) + Square(p[1] - p[4]));
        double mean = (p[2] + p[5]) / 2;
        bool plausible = distance > LeastDistance * mean && distance < MostDistance * mean && p[2] > 0.5 * p[5] && p[5] > 0.5 * p[2];
        return plausible && best.Value.Rms < Gain * ellipse && best.Value.Rms < MostMisfit * mean
            ? (new(middle + new CardVector(p[0], p[1]), p[2]), new(middle + new CardVector(p[3], p[4]), p[5]))
            : null;
    }

    /// <summary>Where the darkening falls through half the area's depth, outermost, in directions all round.</summary>
    private static List<CardPoint> HalfDepth(ZoneMap darkening, MarkCandidate area)
    {
        double step = 0.5 / darkening.Grid.PixelsPerMm;
        double level = area.Depth / 2;
        List<CardPoint> places = [];
        for (int k = 0; k < Directions; k++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * k / Directions);
            double outside = double.NaN;
            for (double r = 0.9 * area.Diameter; r > 0; r -= step)
            {
                double d = darkening.Between(area.Centre + new CardVector(r * c, r * s));
                if (d >= level && outside < level)
                {
                    places.Add(area.Centre + ((r + (step * (d - level) / (d - outside))) * new CardVector(c, s)));
                    break;
                }

                outside = d;
            }
        }

        return places;
    }

    private static double EllipseResidual(CardVector[] points, Ellipse e)
    {
        (double s, double c) = Math.SinCos(e.Direction.Radians);
        (double a, double b) = (e.SemiMajor, e.SemiMinor);
        return Math.Sqrt(points.Average(p =>
        {
            double x = (p.U * c) + (p.V * s), y = (p.V * c) - (p.U * s);
            double r = Math.Sqrt((x * x) + (y * y));
            double onEllipse = 1 / Math.Sqrt(Square(x / r / a) + Square(y / r / b));
            return Square(r - onEllipse);
        }));
    }

    /// <summary>Gauss–Newton with damping on the distance of each point from the nearer disc's rim, outside the other.</summary>
    private static (double[] P, double Rms) Refine(CardVector[] points, double[] p)
    {
        double lambda = 1e-2;
        double[] row = new double[Parameters];
        double cost = points.Sum(q => Square(Distance(q, p)));
        for (int iteration = 0; iteration < 60; iteration++)
        {
            NormalEquations equations = new(Parameters);
            foreach (CardVector q in points)
            {
                for (int k = 0; k < Parameters; k++)
                    row[k] = Derivative(q, p, k);
                equations.Add(row, -Distance(q, p), 1);
            }

            if (equations.Solve(lambda) is not { } step)
                break;
            double[] next = [.. p.Select((v, k) => v + step[k])];
            double changed = points.Sum(q => Square(Distance(q, next)));
            if (changed < cost)
            {
                (p, cost) = (next, changed);
                lambda = Math.Max(1e-6, lambda / 4);
                if (step.L2Norm() < 1e-6)
                    break;
            }
            else if ((lambda *= 5) > 1e6)
            {
                break;
            }
        }

        return (p, Math.Sqrt(cost / points.Length));
    }

    /// <summary>Distance of a point from the union of both discs, negative inside.</summary>
    private static double Distance(CardVector q, double[] p) => Math.Min(
        Math.Sqrt(Square(q.U - p[0]) + Square(q.V - p[1])) - p[2],
        Math.Sqrt(Square(q.U - p[3]) + Square(q.V - p[4])) - p[5]);

    private static double Derivative(CardVector q, double[] p, int k)
    {
        const double h = 1e-5;
        double kept = p[k];
        p[k] = kept + h;
        double up = Distance(q, p);
        p[k] = kept - h;
        double down = Distance(q, p);
        p[k] = kept;
        return (up - down) / (2 * h);
    }

    private static double Square(double x) => x * x;
}
