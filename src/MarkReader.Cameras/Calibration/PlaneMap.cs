using MarkReader.Cameras.Boards;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>A homography from board to photo by the normalised direct linear transform, as a start for a fit.</summary>
/// <remarks>Hartley and Zisserman, Multiple View Geometry, 2nd ed. 2004, algorithm 4.2.</remarks>
internal static class PlaneMap
{
    /// <summary>Three by three; null when the points do not determine a map.</summary>
    public static Matrix<double>? Fit(IReadOnlyList<BoardSighting> sightings)
    {
        // Sightings along two directions of one point give it twice; that weights, but does not harm.
        int n = sightings.Count;
        if (n < 8)
            return null;
        Matrix<double> board = Normalisation([.. sightings.Select(s => (s.At.U, s.At.V))]);
        Matrix<double> photo = Normalisation([.. sightings.Select(s => (s.Seen.X, s.Seen.Y))]);
        Matrix<double> a = Matrix<double>.Build.Dense(9, 9);
        double[] row = new double[9];
        foreach (BoardSighting s in sightings)
        {
            (double u, double v) = ((board[0, 0] * s.At.U) + board[0, 2], (board[1, 1] * s.At.V) + board[1, 2]);
            (double x, double y) = ((photo[0, 0] * s.Seen.X) + photo[0, 2], (photo[1, 1] * s.Seen.Y) + photo[1, 2]);
            row = [u, v, 1, 0, 0, 0, -x * u, -x * v, -x];
            Add(a, row);
            row = [0, 0, 0, u, v, 1, -y * u, -y * v, -y];
            Add(a, row);
        }

        var eigen = a.Evd(Symmetricity.Symmetric);
        // The second smallest eigenvalue vanishes, too, when all points lie on a line.
        if (!(eigen.EigenValues[1].Real > 1e-7 * n))
            return null;
        Vector<double> h = eigen.EigenVectors.Column(0);
        Matrix<double> map = photo.Inverse() * Matrix<double>.Build.DenseOfRowMajor(3, 3, h) * board;
        return Math.Abs(map[2, 2]) > 1e-12 ? map / map[2, 2] : null;
    }

    private static void Add(Matrix<double> a, double[] row)
    {
        for (int i = 0; i < 9; i++)
        {
            for (int j = 0; j < 9; j++)
                a[i, j] += row[i] * row[j];
        }
    }

    private static Matrix<double> Normalisation((double X, double Y)[] points)
    {
        double mx = points.Average(p => p.X), my = points.Average(p => p.Y);
        double spread = Math.Sqrt(points.Average(p => ((p.X - mx) * (p.X - mx)) + ((p.Y - my) * (p.Y - my))) / 2);
        double s = spread > 0 ? 1 / spread : 1;
        return Matrix<double>.Build.DenseOfRowMajor(3, 3, [s, 0, -s * mx, 0, s, -s * my, 0, 0, 1]);
    }
}
