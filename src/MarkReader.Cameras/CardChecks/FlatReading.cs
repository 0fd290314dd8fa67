using MarkReader.Cameras.Boards;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.CardChecks;

/// <summary>What is read of marks on a card in one photo when the card is taken as flat and as drawn: a homography is fitted to its printed edges.</summary>
internal sealed class FlatReading
{
    /// <summary>Elements of the homography.</summary>
    public const int Homography = 8;

    /// <summary>With the growth of black.</summary>
    private const int Parameters = Homography + 1;

    private readonly PrintedSection[] _sections;
    private readonly double _half;
    private readonly (double X, double Y, double Z) _centre, _right, _down, _ahead;
    private readonly (double X, double Y)[] _normals;
    private readonly double[] _flat;

    /// <param name="half">Half the card's side, mm.</param>
    /// <param name="from">Where the camera stands.</param>
    public FlatReading(PrintedSection[] sections, double half, Sight from)
    {
        (_sections, _half) = (sections, half);
        (double st, double ct) = Math.SinCos(from.Tilt.Radians);
        (double sa, double ca) = Math.SinCos(from.Towards.Radians);
        _ahead = (-st * ca, -st * sa, -ct);
        _right = (-sa, ca, 0);
        _down = (ct * ca, ct * sa, -st);
        double d = from.Distance.Millimetres;
        _centre = (-d * _ahead.X, -d * _ahead.Y, -d * _ahead.Z);
        // ahead·(p − centre) is d at the origin.
        _flat = [_right.X * half / d, _right.Y * half / d, 0, _down.X * half / d, _down.Y * half / d, 0, _ahead.X * half / d, _ahead.Y * half / d];
        _normals = [.. sections.Select(NormalOf)];
    }

    /// <summary>Where marks on the card's surface are read.</summary>
    /// <param name="scale">Of the whole print.</param>
    /// <param name="places">On the paper laid flat, true millimetres.</param>
    public FlatView View(BoardShape shape, double scale, IReadOnlyDictionary<int, double> faults, IReadOnlyList<CardPoint> places)
    {
        (double X, double Y)[] seen = new (double, double)[_sections.Length];
        (double X, double Y)[] slopes = new (double, double)[_sections.Length];
        for (int i = 0; i < seen.Length; i++)
        {
            PrintedSection s = _sections[i];
            CardPoint at = s.At + (faults.GetValueOrDefault(s.Group) * s.Across);
            CardPoint paper = shape.OnPaper(new(scale * at.U, scale * at.V));
            seen[i] = Project(shape.Bent(paper));
            const double Step = 0.01; // mm
            (double x, double y) = Project(shape.Bent(paper + (Step * s.Across)));
            slopes[i] = ((x - seen[i].X) / Step, (y - seen[i].Y) / Step);
        }

        double[] h = [.. _flat];
        Matrix<double> inverse = Matrix<double>.Build.Dense(Parameters, Parameters);
        for (int round = 0; round < 4; round++)
        {
            (Matrix<double> matrix, Vector<double> right) = Normal(h, seen);
            inverse = matrix.Inverse();
            Vector<double> step = inverse * right;
            for (int k = 0; k < h.Length; k++)
                h[k] += step[k];
        }

        return new([.. places.Select(p => Read(h, Project(shape.Bent(p)), p))], places, FaultSteps(h, inverse, slopes), p => ByElements(h, p));
    }

    private (Matrix<double> Matrix, Vector<double> Right) Normal(double[] h, (double X, double Y)[] seen)
    {
        double[,] matrix = new double[Parameters, Parameters];
        double[] right = new double[Parameters], row = new double[Parameters];
        for (int i = 0; i < seen.Length; i++)
        {
            (double px, double py) = Row(h, i, row);
            double residual = (_normals[i].X * (seen[i].X - px)) + (_normals[i].Y * (seen[i].Y - py));
            for (int j = 0; j < Parameters; j++)
            {
                right[j] += row[j] * residual;
                for (int k = 0; k < Parameters; k++)
                    matrix[j, k] += row[j] * row[k];
            }
        }

        return (Matrix<double>.Build.DenseOfArray(matrix), Vector<double>.Build.Dense(right));
    }

    /// <summary>How the fit answers a fault of 1 mm of each printed edge.</summary>
    private Dictionary<int, Vector<double>> FaultSteps(double[] h, Matrix<double> inverse, (double X, double Y)[] slopes)
    {
        Dictionary<int, Vector<double>> sums = [];
        double[] row = new double[Parameters];
        for (int i = 0; i < _sections.Length; i++)
        {
            Row(h, i, row);
            double slope = (_normals[i].X * slopes[i].X) + (_normals[i].Y * slopes[i].Y);
            Vector<double> part = slope * Vector<double>.Build.DenseOfArray(row);
            sums[_sections[i].Group] = sums.TryGetValue(_sections[i].Group, out Vector<double>? sum) ? sum + part : part;
        }

        return sums.ToDictionary(s => s.Key, s => inverse * s.Value);
    }

    private (double X, double Y) Row(double[] h, int i, double[] row)
    {
        (double a, double b) = (_sections[i].At.U / _half, _sections[i].At.V / _half);
        (double nx, double ny) = _normals[i];
        (double x, double y, double w) = Map(h, a, b);
        double along = (nx * x) + (ny * y);
        (row[0], row[1], row[2], row[3], row[4], row[5]) = (nx * a / w, nx * b / w, nx / w, ny * a / w, ny * b / w, ny / w);
        (row[6], row[7], row[8]) = (-along * a / w, -along * b / w, 1);
        return (x, y);
    }

    private CardPoint Read(double[] h, (double X, double Y) seen, CardPoint start)
    {
        (double a, double b) = (start.U / _half, start.V / _half);
        for (int i = 0; i < 6; i++)
        {
            (double x, double y, double w) = Map(h, a, b);
            (double xa, double xb, double ya, double yb) = Slopes(h, x, y, w);
            double det = (xa * yb) - (xb * ya);
            (double ex, double ey) = (seen.X - x, seen.Y - y);
            a += ((yb * ex) - (xb * ey)) / det;
            b += ((xa * ey) - (ya * ex)) / det;
        }

        return new(a * _half, b * _half);
    }

    /// <summary>What a change of the homography's elements does to the place that is read, mm: two rows.</summary>
    private (double[] U, double[] V) ByElements(double[] h, CardPoint read)
    {
        (double a, double b) = (read.U / _half, read.V / _half);
        (double x, double y, double w) = Map(h, a, b);
        (double xa, double xb, double ya, double yb) = Slopes(h, x, y, w);
        double det = ((xa * yb) - (xb * ya)) / _half;
        double[] byX = [a / w, b / w, 1 / w, 0, 0, 0, -x * a / w, -x * b / w, 0], byY = [0, 0, 0, a / w, b / w, 1 / w, -y * a / w, -y * b / w, 0];
        return ([.. byX.Zip(byY, (dx, dy) => -((yb * dx) - (xb * dy)) / det)], [.. byX.Zip(byY, (dx, dy) => -((xa * dy) - (ya * dx)) / det)]);
    }

    private static (double X, double Y, double W) Map(double[] h, double a, double b)
    {
        double w = (h[6] * a) + (h[7] * b) + 1;
        return (((h[0] * a) + (h[1] * b) + h[2]) / w, ((h[3] * a) + (h[4] * b) + h[5]) / w, w);
    }

    private static (double Xa, double Xb, double Ya, double Yb) Slopes(double[] h, double x, double y, double w) =>
        ((h[0] - (x * h[6])) / w, (h[1] - (x * h[7])) / w, (h[3] - (y * h[6])) / w, (h[4] - (y * h[7])) / w);

    private (double X, double Y) Project((double X, double Y, double Z) p)
    {
        (double x, double y, double z) = (p.X - _centre.X, p.Y - _centre.Y, p.Z - _centre.Z);
        double depth = (x * _ahead.X) + (y * _ahead.Y) + (z * _ahead.Z);
        return (((x * _right.X) + (y * _right.Y) + (z * _right.Z)) / depth, ((x * _down.X) + (y * _down.Y) + (z * _down.Z)) / depth);
    }

    /// <summary>Across the edge in the photo.</summary>
    private (double X, double Y) NormalOf(PrintedSection s)
    {
        const double Step = 0.1;
        (double x, double y) = Project((s.At.U, s.At.V, 0));
        (double lx, double ly) = Project((s.At.U - (Step * s.Across.V), s.At.V + (Step * s.Across.U), 0));
        (double ox, double oy) = Project((s.At.U + (Step * s.Across.U), s.At.V + (Step * s.Across.V), 0));
        (double nx, double ny) = (-(ly - y), lx - x);
        double size = Math.Sqrt((nx * nx) + (ny * ny)) * Math.Sign((nx * (ox - x)) + (ny * (oy - y)));
        return (nx / size, ny / size);
    }
}

/// <summary>Where a camera stands that takes a photo of a card.</summary>
/// <param name="Tilt">Angle between the card's normal and the line of sight to its middle.</param>
/// <param name="Towards">Direction in the card, from u towards v, in which it stands.</param>
/// <param name="Distance">From the card's middle.</param>
internal readonly record struct Sight(Angle Tilt, Angle Towards, Length Distance);

/// <summary>Marks read in one photo.</summary>
/// <param name="Read">Where each is read.</param>
/// <param name="Places">Where each truly is.</param>
/// <param name="FaultSteps">How the fit answers a fault of 1 mm of each printed edge.</param>
/// <param name="ByElements">What a change of the fit does to a place that is read.</param>
internal sealed record FlatView(IReadOnlyList<CardPoint> Read, IReadOnlyList<CardPoint> Places, IReadOnlyDictionary<int, Vector<double>> FaultSteps, Func<CardPoint, (double[] U, double[] V)> ByElements)
{
    /// <summary>By how much a mark's reading is moved by a fault of 1 mm of an edge; zero for an edge that the views do not show.</summary>
    public CardVector ByFault(int group, (double[] U, double[] V) elements)
    {
        if (!FaultSteps.TryGetValue(group, out Vector<double>? step))
            return default;
        (double u, double v) = (0, 0);
        for (int k = 0; k < step.Count; k++)
        {
            u += elements.U[k] * step[k];
            v += elements.V[k] * step[k];
        }

        return new(u, v);
    }
}
