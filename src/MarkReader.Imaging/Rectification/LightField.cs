using MarkReader.Imaging.Fitting;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>The fall of the light over a photo, from the white beside the printed edges: its logarithm as a fourth-degree polynomial.</summary>
/// <remarks>
/// White that grows brighter with the distance from an edge draws the edge's place towards it; all edges of one part of a photo alike, as
/// distortion of the lens would.
/// </remarks>
internal sealed class LightField
{
    private const int Degree = 4;
    private const int Terms = (Degree + 1) * (Degree + 2) / 2;
    private const double Tukey = 4.685;

    private readonly PhotoSize _photo;
    private readonly double _half;
    private readonly Vector<double> _terms;

    private LightField(PhotoSize photo, Vector<double> terms) => (_photo, _half, _terms) = (photo, HalfDiagonal(photo), terms);

    /// <summary>Null when the edges do not determine it.</summary>
    /// <param name="view">Where the edges are in the photo.</param>
    public static LightField? Of(IReadOnlyList<EdgeMeasurement> edges, CardView view, PhotoSize photo)
    {
        if (edges.Count < 4 * Terms)
            return null;
        double[][] rows = [.. edges.Select(e => Row(view.ToPhoto(e.Card), photo))];
        double[] logs = [.. edges.Select(e => Math.Log(e.White))];
        double[] weights = [.. logs.Select(_ => 1.0)];
        Vector<double>? terms = null;
        // Iterated reweighting, so that a thing lying on the board does not count.
        for (int round = 0; round < 5; round++)
        {
            NormalEquations equations = new(Terms);
            for (int i = 0; i < rows.Length; i++)
                equations.Add(rows[i], logs[i], weights[i]);
            if (equations.Solve() is not { } solved)
                return null;
            terms = solved;
            double[] left = [.. rows.Select((r, i) => Math.Abs(logs[i] - terms.DotProduct(Vector<double>.Build.Dense(r))))];
            double scale = Math.Max(1e-6, 1.4826 * left.Median());
            weights = [.. left.Select(e => Biweight(e / (Tukey * scale)))];
        }

        return new(photo, terms!);
    }

    /// <summary>Relative change of the light per px along a unit vector.</summary>
    public double Slope(PixelPoint at, PixelVector along)
    {
        (double x, double y) = Scaled(at, _photo);
        (double byX, double byY) = (0, 0);
        int k = 0;
        for (int i = 0; i <= Degree; i++)
        {
            for (int j = 0; i + j <= Degree; j++, k++)
            {
                if (i > 0)
                    byX += _terms[k] * i * Math.Pow(x, i - 1) * Math.Pow(y, j);
                if (j > 0)
                    byY += _terms[k] * j * Math.Pow(x, i) * Math.Pow(y, j - 1);
            }
        }

        return ((byX * along.X) + (byY * along.Y)) / _half;
    }

    private static double[] Row(PixelPoint at, PhotoSize photo)
    {
        (double x, double y) = Scaled(at, photo);
        double[] row = new double[Terms];
        int k = 0;
        for (int i = 0; i <= Degree; i++)
        {
            for (int j = 0; i + j <= Degree; j++, k++)
                row[k] = Math.Pow(x, i) * Math.Pow(y, j);
        }

        return row;
    }

    private static (double X, double Y) Scaled(PixelPoint p, PhotoSize photo)
    {
        double half = HalfDiagonal(photo);
        return ((p.X - (photo.Width / 2.0)) / half, (p.Y - (photo.Height / 2.0)) / half);
    }

    private static double HalfDiagonal(PhotoSize photo) => Math.Sqrt(((double)photo.Width * photo.Width) + ((double)photo.Height * photo.Height)) / 2;

    private static double Biweight(double t) => t < 1 ? (1 - (t * t)) * (1 - (t * t)) : 0;
}
