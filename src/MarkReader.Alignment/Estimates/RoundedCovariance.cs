using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Estimates;

/// <summary>Covariances of points out of computed matrices, which rounding may leave a little short of positive semidefinite.</summary>
internal static class RoundedCovariance
{
    /// <summary>Rows and columns <paramref name="u"/> and <paramref name="v"/> of a computed covariance matrix.</summary>
    /// <remarks>
    /// A source that moves the point along one line has a singular covariance. Where one component is nearly nothing, the rounding of the other exceeds
    /// it, and |uv| comes out above √(uu·vv); it is held there.
    /// </remarks>
    public static Covariance2 Points(this Matrix<double> covariance, int u = 0, int v = 1)
    {
        double uu = Math.Max(0, covariance[u, u]), vv = Math.Max(0, covariance[v, v]);
        double most = Math.Sqrt(uu) * Math.Sqrt(vv);
        return new(uu, Math.Clamp((covariance[u, v] + covariance[v, u]) / 2, -most, most), vv);
    }
}
