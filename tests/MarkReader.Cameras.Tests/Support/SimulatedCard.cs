using MarkReader.Cameras.Boards;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.Support;

/// <summary>A printed card and what a camera, known with its stated uncertainty, would measure of it from several sides; its own projection, not the tested one.</summary>
internal sealed class SimulatedCard
{
    public const double Half = 25, Zone = 26;

    private readonly Random _random;
    private readonly Dictionary<int, double> _faults = [];
    private readonly CameraModel _true;

    /// <param name="fault">Standard deviation of the printed edges' places, mm.</param>
    public SimulatedCard(int seed, PrintedShape shape, double fault = 0, int views = 5)
    {
        _random = new(seed);
        Shape = shape;
        double focal = 3000 * (0.9 + (0.2 * _random.NextDouble()));
        CameraModel model = new(new(4032, 3024), focal, focal, new(2020, 1505), new(0.05, -0.02, 0, 0.0003, -0.0004));
        Camera = new("phone", model, [0.01 * focal, 0.01 * focal, 2.5, 2.5, 0.004, 0, 0, 0, 0]);
        double f = focal * (1 + (0.01 * Gauss()));
        _true = model with
        {
            FocalX = f,
            FocalY = f,
            Principal = new(model.Principal.X + (2.5 * Gauss()), model.Principal.Y + (2.5 * Gauss())),
            Lens = model.Lens with { K1 = model.Lens.K1 + (0.004 * Gauss()) },
        };
        for (int i = 0; i < 200; i++)
            _faults[i] = fault * Gauss();
        Views = [.. Enumerable.Range(0, views).Select(View)];
    }

    public PrintedShape Shape { get; }

    /// <summary>Of the printed edges, mm.</summary>
    public IReadOnlyDictionary<int, double> Faults => _faults;

    public KnownCamera Camera { get; }

    public IReadOnlyList<BoardView> Views { get; }

    public double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    private double Uniform(double low, double high) => low + ((high - low) * _random.NextDouble());

    /// <summary>From straight above, then tilted by 20° to 40° from all sides in turn.</summary>
    private BoardView View(int index)
    {
        double tilt = index == 0 ? Uniform(0, 0.08) : Uniform(0.35, 0.7), towards = (index * Math.PI / 2) + Uniform(-0.4, 0.4), roll = Uniform(-0.3, 0.3);
        double distance = _true.FocalX / Uniform(28, 40);
        (double shiftX, double shiftY) = (Uniform(-6, 6), Uniform(-6, 6));
        List<BoardSighting> sightings = [];
        int group = 0;
        foreach ((double u, double v, double side, int sections) in Squares())
        {
            foreach ((double nu, double nv) in (ReadOnlySpan<(double, double)>)[(1, 0), (0, 1), (-1, 0), (0, -1)])
            {
                for (int k = 0; k < sections; k++)
                {
                    double along = (((k + 0.5) / sections) - 0.5) * 0.85 * side;
                    CardPoint at = new(u + (nu * side / 2) - (nv * along), v + (nv * side / 2) + (nu * along));
                    CardVector across = new(nu, nv);
                    PixelPoint seen = See(at + ((0.02 + _faults[group]) * across)), beside = See(at + (0.02 * across) + new CardVector(-0.1 * nv, 0.1 * nu)), outside = See(at + (0.2 * across));
                    PixelVector line = beside - seen;
                    PixelVector normal = 1 / line.Magnitude * new PixelVector(-line.Y, line.X);
                    PixelVector out1 = outside - seen;
                    if ((normal.X * out1.X) + (normal.Y * out1.Y) < 0)
                        normal = -1 * normal;
                    sightings.Add(new(at, seen + (((0.06 * Gauss()) + 0.2) * normal), normal, 0.06, group, across));
                }

                group++;
            }
        }

        return new($"view {index}", _true.Photo, sightings);

        PixelPoint See(CardPoint p) => Project(Shape.InSpace(p), tilt, towards, roll, distance, shiftX, shiftY);
    }

    /// <summary>Eight markers round the zone, and squares between them.</summary>
    private static IEnumerable<(double U, double V, double Side, int Sections)> Squares()
    {
        foreach (double u in (double[])[-18.75, 0, 18.75])
        {
            foreach (double v in (double[])[-18.75, 0, 18.75])
            {
                if (u != 0 || v != 0)
                    yield return (u, v, 9, 5);
            }
        }

        foreach (double a in (double[])[-10, 10])
        {
            foreach (double b in (double[])[-21, -16, 16, 21])
            {
                yield return (a, b, 3, 2);
                yield return (b, a, 3, 2);
            }
        }
    }

    private PixelPoint Project((double X, double Y, double Z) p, double tilt, double towards, double roll, double distance, double shiftX, double shiftY)
    {
        // The card's point in a frame that looks at it from `towards` under `tilt`.
        (double st, double ct) = Math.SinCos(tilt);
        (double sa, double ca) = Math.SinCos(towards);
        double radial = (ca * p.X) + (sa * p.Y), across = (ca * p.Y) - (sa * p.X);
        double up = (ct * radial) - (st * p.Z), near = (st * radial) + (ct * p.Z);
        (double sr, double cr) = Math.SinCos(roll + towards);
        (double x, double y) = ((cr * up) - (sr * across), (sr * up) + (cr * across));
        double z = distance - near;
        (double dx, double dy) = ((x + shiftX) / z, (shiftY - y) / z);
        double r2 = (dx * dx) + (dy * dy);
        LensDistortion l = _true.Lens;
        double f = 1 + (l.K1 * r2) + (l.K2 * r2 * r2);
        return new(
            _true.Principal.X + (_true.FocalX * ((dx * f) + (2 * l.P1 * dx * dy) + (l.P2 * (r2 + (2 * dx * dx))))),
            _true.Principal.Y + (_true.FocalY * ((dy * f) + (2 * l.P2 * dx * dy) + (l.P1 * (r2 + (2 * dy * dy))))));
    }
}

/// <summary>How the simulated print lies: scales, skew, and a cylinder of paper that keeps its lengths.</summary>
/// <param name="Sag">Height at half the card's side from the middle along the bend, mm.</param>
internal sealed record PrintedShape(double ScaleU = 1, double ScaleV = 1, double Skew = 0, double Sag = 0, double BendDegrees = 0)
{
    /// <summary>Curvature of the parabola, 1/mm.</summary>
    public double B => Sag / (SimulatedCard.Half * SimulatedCard.Half);

    public (double X, double Y, double Z) InSpace(CardPoint p) => OnSurface(new((p.U * ScaleU) + (p.V * Skew / 2), (p.V * ScaleV) + (p.U * Skew / 2)));

    /// <summary>A point at true lengths along the paper.</summary>
    public (double X, double Y, double Z) OnSurface(CardPoint q)
    {
        (double s, double c) = Math.SinCos(BendDegrees * Math.PI / 180);
        double along = (q.U * c) + (q.V * s), t = along;
        // Arc length of z = B·t²: ∫√(1 + 4B²t²) dt, by Newton's method.
        for (int i = 0; i < 20; i++)
            t -= (Arc(t) - along) / Math.Sqrt(1 + (4 * B * B * t * t));
        return (q.U + ((t - along) * c), q.V + ((t - along) * s), B * t * t);
    }

    private double Arc(double t)
    {
        double k = 2 * B * t;
        return B == 0 ? t : ((k * Math.Sqrt(1 + (k * k))) + Math.Asinh(k)) / (4 * B);
    }
}
