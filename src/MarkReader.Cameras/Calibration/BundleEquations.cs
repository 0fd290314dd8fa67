using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>Normal equations of shared parameters and of each view's own, solved by eliminating the views.</summary>
/// <remarks>Triggs, McLauchlan, Hartley and Fitzgibbon, Bundle adjustment, LNCS 1883, 2000, section 6.1.</remarks>
internal sealed class BundleEquations
{
    private const int V = SightingRow.OfView;

    private readonly int _shared;
    private readonly Matrix<double> _a;
    private readonly Vector<double> _right;
    private readonly Matrix<double>[] _cross;
    private readonly Matrix<double>[] _own;
    private readonly Vector<double>[] _rightOwn;

    public BundleEquations(int shared, int views)
    {
        _shared = shared;
        _a = Matrix<double>.Build.Dense(shared, shared);
        _right = Vector<double>.Build.Dense(shared);
        _cross = [.. Enumerable.Range(0, views).Select(_ => Matrix<double>.Build.Dense(shared, V))];
        _own = [.. Enumerable.Range(0, views).Select(_ => Matrix<double>.Build.Dense(V, V))];
        _rightOwn = [.. Enumerable.Range(0, views).Select(_ => Vector<double>.Build.Dense(V))];
    }

    public void Add(int view, ReadOnlySpan<double> shared, ReadOnlySpan<double> own, double residual, double weight)
    {
        (Matrix<double> cross, Matrix<double> square) = (_cross[view], _own[view]);
        for (int i = 0; i < _shared; i++)
        {
            double w = weight * shared[i];
            _right[i] += w * residual;
            for (int j = 0; j <= i; j++)
                _a[i, j] += w * shared[j];
            for (int j = 0; j < V; j++)
                cross[i, j] += w * own[j];
        }

        for (int i = 0; i < V; i++)
        {
            double w = weight * own[i];
            _rightOwn[view][i] += w * residual;
            for (int j = 0; j <= i; j++)
                square[i, j] += w * own[j];
        }
    }

    /// <summary>A normal belief about one shared parameter: its change should be <paramref name="target"/>.</summary>
    public void Believe(int shared, double target, double precision)
    {
        _a[shared, shared] += precision;
        _right[shared] += precision * target;
    }

    public void BelieveOwn(int view, int parameter, double target, double precision)
    {
        _own[view][parameter, parameter] += precision;
        _rightOwn[view][parameter] += precision * target;
    }

    /// <summary>The step, with the diagonal raised by <paramref name="damping"/>; null when the equations do not determine it.</summary>
    public (Vector<double> Shared, Vector<double>[] Own)? Solve(double damping)
    {
        if (Reduce(damping) is not { } reduced)
            return null;
        Vector<double>? shared = SolveScaled(reduced.Matrix, reduced.Right);
        if (shared is null)
            return null;
        Vector<double>[] own = [.. Enumerable.Range(0, _own.Length).Select(i => reduced.Inverse[i] * (_rightOwn[i] - (_cross[i].Transpose() * shared)))];
        return (shared, own);
    }

    /// <summary>What is left of the shared parameters after elimination: inverse of the reduced matrix, and for each view what carries its derivatives into it.</summary>
    public (Matrix<double> Inverse, Matrix<double>[] Carry)? Covariance()
    {
        if (Reduce(0) is not { } reduced || Inverse(reduced.Matrix) is not { } inverse)
            return null;
        return (inverse, [.. _cross.Select((c, i) => c * reduced.Inverse[i])]);
    }

    private (Matrix<double> Matrix, Vector<double> Right, Matrix<double>[] Inverse)? Reduce(double damping)
    {
        Matrix<double> matrix = Symmetric(_a, damping);
        Vector<double> right = _right.Clone();
        Matrix<double>[] inverses = new Matrix<double>[_own.Length];
        for (int i = 0; i < _own.Length; i++)
        {
            if (Inverse(Symmetric(_own[i], damping)) is not { } inverse)
                return null;
            inverses[i] = inverse;
            Matrix<double> carry = _cross[i] * inverse;
            matrix -= carry * _cross[i].Transpose();
            right -= carry * _rightOwn[i];
        }

        return (matrix, right, inverses);
    }

    private static Matrix<double> Symmetric(Matrix<double> lower, double damping) => Matrix<double>.Build.Dense(
        lower.RowCount, lower.ColumnCount, (i, j) => i == j ? lower[i, i] * (1 + damping) : lower[Math.Max(i, j), Math.Min(i, j)]);

    private static Vector<double>? SolveScaled(Matrix<double> m, Vector<double> right) => Inverse(m) is { } inverse ? inverse * right : null;

    /// <summary>By Cholesky's decomposition after scaling to unit diagonal; null when the matrix is not positive definite.</summary>
    private static Matrix<double>? Inverse(Matrix<double> m)
    {
        int n = m.RowCount;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++)
        {
            if (!(m[i, i] > 0))
                return null;
            scale[i] = 1 / Math.Sqrt(m[i, i]);
        }

        Matrix<double> scaled = Matrix<double>.Build.Dense(n, n, (i, j) => scale[i] * (m[i, j] + m[j, i]) / 2 * scale[j]);
        try
        {
            Matrix<double> inverse = scaled.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(n));
            return Matrix<double>.Build.Dense(n, n, (i, j) => scale[i] * inverse[i, j] * scale[j]);
        }
        catch (ArgumentException)
        {
            return null; // thrown for a matrix that is not positive definite
        }
    }
}
