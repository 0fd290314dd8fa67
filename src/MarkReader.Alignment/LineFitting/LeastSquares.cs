using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace MarkReader.Alignment.LineFitting;

/// <summary>Linear least squares y = X·b, ordinary or with the full covariance of y (Aitken, Proc. R. Soc. Edinburgh 55, 1935).</summary>
/// <remarks>Solved by a QR factorisation of the design, whitened by the Cholesky factor of the covariance; no normal equations.</remarks>
public static class LeastSquares
{
    /// <summary>All observations alike and their scatter unknown: the covariance is scaled by the residual variance.</summary>
    /// <exception cref="ArgumentException">Not more rows than columns, or columns that depend on each other.</exception>
    public static LinearFit Ordinary(Matrix<double> design, Vector<double> observed)
    {
        if (design.RowCount <= design.ColumnCount)
            throw new ArgumentException("An unknown scatter needs more observations than parameters.", nameof(design));
        LinearFit unit = Solve(design, observed);
        double variance = unit.ChiSquare / unit.DegreesOfFreedom;
        return unit with { Covariance = variance * unit.Covariance };
    }

    /// <summary>Observations of known covariance: the covariance of the result follows from it alone.</summary>
    /// <exception cref="ArgumentException">The covariance is not positive definite, or columns depend on each other.</exception>
    public static LinearFit Generalised(Matrix<double> design, Vector<double> observed, Matrix<double> covariance)
    {
        Matrix<double> root = covariance.Cholesky().Factor;
        LinearFit white = Solve(root.Solve(design), root.Solve(observed));
        return white with { Residuals = observed - (design * white.Parameters) };
    }

    private static LinearFit Solve(Matrix<double> design, Vector<double> observed)
    {
        // Columns of unit length: the conditioning does not depend on the units of the parameters.
        Vector<double> scale = design.ColumnNorms(2).Map(n => n > 0 ? n : throw new ArgumentException("A column of the design is zero.", nameof(design)));
        Matrix<double> scaled = design.MapIndexed((_, j, x) => x / scale[j]);
        QR<double> qr = scaled.QR(QRMethod.Thin);
        Vector<double> solution = qr.R.Solve(qr.Q.TransposeThisAndMultiply(observed));
        // One step of refinement on the residual.
        solution += qr.R.Solve(qr.Q.TransposeThisAndMultiply(observed - (scaled * solution)));
        Vector<double> residuals = observed - (scaled * solution);
        Matrix<double> inverse = qr.R.Inverse();
        Matrix<double> covariance = (inverse * inverse.Transpose()).MapIndexed((i, j, x) => x / (scale[i] * scale[j]));
        return new(solution.PointwiseDivide(scale), covariance, residuals, residuals.DotProduct(residuals), design.RowCount - design.ColumnCount);
    }
}

/// <summary>The result of a linear fit.</summary>
/// <param name="Parameters">The estimates, in the order of the design's columns.</param>
/// <param name="Covariance">Their covariance.</param>
/// <param name="Residuals">Observed minus fitted.</param>
/// <param name="ChiSquare">Sum of squared residuals, weighted by the inverse covariance when one was given.</param>
/// <param name="DegreesOfFreedom">Observations minus parameters.</param>
public sealed record LinearFit(
    Vector<double> Parameters, Matrix<double> Covariance, Vector<double> Residuals, double ChiSquare, int DegreesOfFreedom);
