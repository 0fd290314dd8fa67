using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.LineFitting;

/// <summary>The straight line y = a + b·x through observations whose x is exact.</summary>
/// <remarks>Formulas: JCGM 100:2008, H.3 (ordinary); ISO/TS 28037:2010, clause 6 (weighted).</remarks>
public static class LineFit
{
    /// <summary>All y alike, their scatter taken from the residuals; at least three points.</summary>
    /// <exception cref="ArgumentException">Unequal counts, fewer than three points, or all x equal.</exception>
    public static FittedLine Ordinary(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        double centre = Centre(x, y.Count);
        return new(centre, LeastSquares.Ordinary(Design(x, centre), Vector<double>.Build.DenseOfEnumerable(y)));
    }

    /// <summary>Each y with its known standard uncertainty, above zero; at least two points.</summary>
    /// <exception cref="ArgumentException">Unequal counts, all x equal, or an uncertainty that is not above zero.</exception>
    public static FittedLine Weighted(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> uncertainty)
    {
        double centre = Centre(x, y.Count);
        if (uncertainty.Count != x.Count || uncertainty.Any(u => !(u > 0)))
            throw new ArgumentException("Each observation needs an uncertainty above zero.", nameof(uncertainty));
        Matrix<double> covariance = Matrix<double>.Build.DenseOfDiagonalArray([.. uncertainty.Select(u => u * u)]);
        return new(centre, LeastSquares.Generalised(Design(x, centre), Vector<double>.Build.DenseOfEnumerable(y), covariance));
    }

    private static double Centre(IReadOnlyList<double> x, int count)
    {
        if (count != x.Count || x.Distinct().Count() < 2)
            throw new ArgumentException("A line needs as many y as x, and at least two different x.", nameof(x));
        return x.Average();
    }

    // About the mean of x, where intercept and slope hardly depend on each other.
    private static Matrix<double> Design(IReadOnlyList<double> x, double centre) =>
        Matrix<double>.Build.Dense(x.Count, 2, (i, j) => j == 0 ? 1 : x[i] - centre);
}
