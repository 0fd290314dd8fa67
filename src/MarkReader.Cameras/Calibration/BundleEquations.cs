using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>Normal equations of shared parameters and of each view's own, solved by eliminating the views.</summary>
/// <remarks>Triggs, McLauchlan, Hartley and Fitzgibbon, Bundle adjustment, LNCS 1883, 2000, section 6.1.</remarks>
internal sealed class BundleEquations
{
    private const int V = SightingRow.OfView;

    private readonly int _shared;
    private readonly double[] _a;
    private readonly double[] _right;

    /// <summary>Per view: shared × own, own × own (lower triangles filled), and the right side of its own.</summary>
    private readonly (double[] Cross, double[] Own, double[] Right)[] _views;

    public BundleEquations(int shared, int views)
    {
        _shared = shared;
        _a = new double[shared * shared];
        _right = new double[shared];
        _views = [.. Enumerable.Range(0, views).Select(_ => (new double[shared * V], new double[V * V], new double[V]))];
    }

    /// <param name="shared">Derivatives by the first of the shared parameters.</param>
    /// <param name="also">Number of one more shared parameter, or less than 0.</param>
    /// <param name="slope">Derivative by it.</param>
    public void Add(int view, ReadOnlySpan<double> shared, ReadOnlySpan<double> own, double residual, double weight, int also = -1, double slope = 0)
    {
        (double[] cross, double[] square, double[] right) = _views[view];
        for (int i = 0; i < shared.Length; i++)
        {
            double w = weight * shared[i];
            _right[i] += w * residual;
            for (int j = 0; j <= i; j++)
                _a[(i * _shared) + j] += w * shared[j];
            for (int j = 0; j < V; j++)
                cross[(i * V) + j] += w * own[j];
        }

        for (int i = 0; i < V; i++)
        {
            double w = weight * own[i];
            right[i] += w * residual;
            for (int j = 0; j <= i; j++)
                square[(i * V) + j] += w * own[j];
        }

        if (also < 0)
            return;
        double more = weight * slope;
        _right[also] += more * residual;
        for (int j = 0; j < shared.Length; j++)
            _a[(also * _shared) + j] += more * shared[j];
        _a[(also * _shared) + also] += more * slope;
        for (int j = 0; j < V; j++)
            cross[(also * V) + j] += more * own[j];
    }

    /// <summary>A normal belief about one shared parameter: its change should be <paramref name="target"/>.</summary>
    public void Believe(int shared, double target, double precision)
    {
        _a[(shared * _shared) + shared] += precision;
        _right[shared] += precision * target;
    }

    public void BelieveOwn(int view, int parameter, double target, double precision)
    {
        _views[view].Own[(parameter * V) + parameter] += precision;
        _views[view].Right[parameter] += precision * target;
    }

    /// <summary>The step, with the diagonal raised by <paramref name="damping"/>; null when the equations do not determine it.</summary>
    public (Vector<double> Shared, Vector<double>[] Own)? Solve(double damping)
    {
        if (Reduce(damping) is not { } reduced || Inverse(reduced.Matrix) is not { } inverse)
            return null;
        Vector<double> shared = inverse * reduced.Right;
        Vector<double>[] own = [.. _views.Select((v, i) => reduced.Own[i] * (Vector<double>.Build.Dense(v.Right) - Cross(v.Cross).TransposeThisAndMultiply(shared)))];
        return (shared, own);
    }

    /// <summary>Inverse of the matrix left after elimination, and for each view what carries its own derivatives into the shared ones.</summary>
    public (Matrix<double> Inverse, Matrix<double>[] Carry)? Covariance()
    {
        if (Reduce(0) is not { } reduced || Inverse(reduced.Matrix) is not { } inverse)
            return null;
        return (inverse, [.. _views.Select((v, i) => Cross(v.Cross) * reduced.Own[i])]);
    }

    /// <summary>Matrix and right side of the shared parameters from number <paramref name="first"/> on, with those before it and the views eliminated; null when these are not determined.</summary>
    public (Matrix<double> Matrix, Vector<double> Right)? Last(int first)
    {
        if (Reduce(0) is not { } reduced || Inverse(reduced.Matrix.SubMatrix(0, first, 0, first)) is not { } inverse)
            return null;
        int rest = _shared - first;
        Matrix<double> carry = reduced.Matrix.SubMatrix(first, rest, 0, first) * inverse;
        return (
            reduced.Matrix.SubMatrix(first, rest, first, rest) - (carry * reduced.Matrix.SubMatrix(0, first, first, rest)),
            reduced.Right.SubVector(first, rest) - (carry * reduced.Right.SubVector(0, first)));
    }

    private (Matrix<double> Matrix, Vector<double> Right, Matrix<double>[] Own)? Reduce(double damping)
    {
        Matrix<double> matrix = Symmetric(_a, _shared, damping);
        Vector<double> right = Vector<double>.Build.DenseOfArray(_right);
        Matrix<double>[] own = new Matrix<double>[_views.Length];
        for (int i = 0; i < _views.Length; i++)
        {
            if (Inverse(Symmetric(_views[i].Own, V, damping)) is not { } inverse)
                return null;
            own[i] = inverse;
            Matrix<double> cross = Cross(_views[i].Cross);
            Matrix<double> carry = cross * inverse;
            matrix -= carry.TransposeAndMultiply(cross);
            right -= carry * Vector<double>.Build.Dense(_views[i].Right);
        }

        return (matrix, right, own);
    }

    private Matrix<double> Cross(double[] byRows) => Matrix<double>.Build.DenseOfRowMajor(_shared, V, byRows);

    private static Matrix<double> Symmetric(double[] lower, int n, double damping) => Matrix<double>.Build.Dense(
        n, n, (i, j) => i == j ? lower[(i * n) + i] * (1 + damping) : lower[(Math.Max(i, j) * n) + Math.Min(i, j)]);

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
