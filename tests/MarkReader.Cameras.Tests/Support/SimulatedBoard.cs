using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.Support;

/// <summary>A random camera and what it would measure of a board of printed squares, with normal noise; its own projection, not the tested one.</summary>
internal sealed class SimulatedBoard
{
    private const int Columns = 4;
    private const int Rows = 6;
    private const double Pitch = 40;
    private const double Side = 28;
    private const int Sections = 3;

    private Random _random;

    /// <summary>How far each printed edge is out of its place, mm.</summary>
    private readonly double[] _faults;

    /// <param name="fault">Standard deviation of the printed edges' places, mm.</param>
    public SimulatedBoard(int seed, int views = 14, double fault = 0)
    {
        _random = new(seed + 100_000);
        _faults = [.. Enumerable.Range(0, 4 * Columns * Rows).Select(_ => fault * Gauss())];
        _random = new(seed);
        double focal = Uniform(0.65, 1.1) * 4032;
        Camera = new(
            new(4032, 3024),
            focal,
            focal,
            new(2015.5 + (25 * Gauss()), 1511.5 + (25 * Gauss())),
            new(Uniform(-0.12, 0.08), Uniform(-0.04, 0.04), seed % 2 == 0 ? 0 : Uniform(-0.03, 0.03), 0.0006 * Gauss(), 0.0006 * Gauss()));
        Sigma = 0.06;
        Views = [.. Enumerable.Range(0, views).Select(View)];
    }

    public CameraModel Camera { get; }

    public double Sigma { get; }

    public IReadOnlyList<BoardView> Views { get; }

    public double Uniform(double low, double high) => low + ((high - low) * _random.NextDouble());

    public double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>The board tilted and turned at random, filling two thirds of the photo or more.</summary>
    private BoardView View(int index)
    {
        double tilt = index == 0 ? 0.02 : Uniform(0.2, 0.75), towards = Uniform(0, 2 * Math.PI), roll = ((index % 2) * Math.PI / 2) + Uniform(-0.3, 0.3);
        double distance = Uniform(0.75, 1.15) * 300 * Camera.FocalX / 4032;
        (double shiftX, double shiftY) = (Uniform(-45, 45), Uniform(-35, 35));
        List<BoardSighting> sightings = [];
        for (int c = 0; c < Columns; c++)
        {
            for (int r = 0; r < Rows; r++)
                AddSquare(sightings, (c - 1.5) * Pitch, (r - 2.5) * Pitch, 4 * ((Rows * c) + r), p => Project(p, tilt, towards, roll, distance, shiftX, shiftY));
        }

        return new($"view {index}", Camera.Photo, sightings);
    }

    private void AddSquare(List<BoardSighting> sightings, double u, double v, int group, Func<CardPoint, PixelPoint> project)
    {
        ReadOnlySpan<(double X, double Y)> out4 = [(1, 0), (0, 1), (-1, 0), (0, -1)];
        for (int side = 0; side < 4; side++)
        {
            (double nx, double ny) = out4[side];
            for (int k = 0; k < Sections; k++)
            {
                double along = (((k + 0.5) / Sections) - 0.5) * Side * 0.85;
                CardPoint at = new(u + (nx * Side / 2) - (ny * along), v + (ny * Side / 2) + (nx * along));
                PixelPoint seen = project(at + ((0.03 + _faults[group + side]) * new CardVector(nx, ny)));
                if (seen.X < 5 || seen.Y < 5 || seen.X > Camera.Photo.Width - 6 || seen.Y > Camera.Photo.Height - 6)
                    continue;
                PixelVector line = project(new(at.U - (0.1 * ny), at.V + (0.1 * nx))) - seen;
                PixelVector normal = 1 / line.Magnitude * new PixelVector(-line.Y, line.X);
                PixelVector outwards = project(new(at.U + (0.1 * nx), at.V + (0.1 * ny))) - seen;
                if ((normal.X * outwards.X) + (normal.Y * outwards.Y) < 0)
                    normal = -1 * normal;
                // The ink has spread by 0.03 mm, black has grown by 0.3 px in the photo, and a prediction that is wrong along the edge by what does not count.
                double error = (Sigma * Gauss()) + 0.3;
                double slip = 0.2 * Gauss();
                sightings.Add(new(at, seen + (error * normal) + (slip / line.Magnitude * line), normal, Sigma, group + side, new(nx, ny)));
            }
        }
    }

    private PixelPoint Project(CardPoint p, double tilt, double towards, double roll, double distance, double shiftX, double shiftY)
    {
        // Turn in the plane, tilt about an axis in it, then stand before the camera with v up.
        (double sr, double cr) = Math.SinCos(roll);
        (double x, double y) = ((cr * p.U) - (sr * p.V), (sr * p.U) + (cr * p.V));
        (double st, double ct) = Math.SinCos(towards);
        (double a, double b) = ((ct * x) + (st * y), (ct * y) - (st * x));
        (double sa, double ca) = Math.SinCos(tilt);
        double deep = sa * a;
        a *= ca;
        (x, y) = ((ct * a) - (st * b), (st * a) + (ct * b));
        double z = distance + deep;
        double dx = (x + shiftX) / z, dy = (shiftY - y) / z;
        double r2 = (dx * dx) + (dy * dy);
        LensDistortion lens = Camera.Lens;
        double f = 1 + (lens.K1 * r2) + (lens.K2 * r2 * r2) + (lens.K3 * r2 * r2 * r2);
        return new(
            Camera.Principal.X + (Camera.FocalX * ((dx * f) + (2 * lens.P1 * dx * dy) + (lens.P2 * (r2 + (2 * dx * dx))))),
            Camera.Principal.Y + (Camera.FocalY * ((dy * f) + (2 * lens.P2 * dx * dy) + (lens.P1 * (r2 + (2 * dy * dy))))));
    }
}
