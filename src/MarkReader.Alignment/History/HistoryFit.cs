using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.History;

/// <summary>Generalised least squares of all changes together, with the covariances between neighbours.</summary>
/// <remarks>
/// For d = X·b with covariance V: b = (Xᵀ·V⁻¹·X)⁻¹·Xᵀ·V⁻¹·d, of covariance (Xᵀ·V⁻¹·X)⁻¹ (A. C. Aitken, Proc. R. Soc. Edinburgh 55 (1935) 42);
/// dᵀ·V⁻¹·d, what b takes of it and what it leaves are χ² when d is normal about zero.
/// </remarks>
internal sealed class HistoryFit
{
    // Of the mean variance: keeps the matrix of a measurement that is nearly without error invertible.
    private const double Ridge = 1e-9;

    private readonly IReadOnlyList<HistoryChange> _changes;
    private readonly Matrix<double> _inverse;
    private readonly Vector<double> _weighted;

    public HistoryFit(IReadOnlyList<HistoryChange> changes)
    {
        _changes = changes;
        Matrix<double> covariance = Covariance(changes);
        Vector<double> d = Vector<double>.Build.DenseOfEnumerable(changes.SelectMany(c => new[] { c.Value.U, c.Value.V }));
        _inverse = covariance.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(2 * changes.Count));
        _weighted = _inverse * d;
        ChiSquare = d * _weighted;
    }

    /// <summary>Of all changes against zero; 2 degrees of freedom for each.</summary>
    public double ChiSquare { get; }

    /// <summary>A constant rate, in the unit a month.</summary>
    public Part Rate() => Fit([.. _changes.Select(c => c.Months)]);

    /// <summary>One change that is not zero.</summary>
    public Part Jump(int at) => Fit([.. _changes.Select((_, i) => i == at ? 1.0 : 0)]);

    // Both components with the same weights.
    private Part Fit(double[] weights)
    {
        Matrix<double> x = Matrix<double>.Build.Dense(2 * weights.Length, 2, (row, column) => row % 2 == column ? weights[row / 2] : 0);
        Matrix<double> covariance = (x.TransposeThisAndMultiply(_inverse) * x).Inverse();
        Vector<double> right = x.TransposeThisAndMultiply(_weighted);
        Vector<double> value = covariance * right;
        double taken = Math.Max(0, value * right);
        return new(taken, Math.Max(0, ChiSquare - taken), Size(value, covariance));
    }

    private static HistorySize Size(Vector<double> value, Matrix<double> covariance)
    {
        double length = value.L2Norm();
        // Without a direction: the longer axis.
        double variance = length > 0 ? value * covariance * value / (length * length) : (covariance.Trace() / 2) + Math.Sqrt(Math.Pow((covariance[0, 0] - covariance[1, 1]) / 2, 2) + Math.Pow(covariance[0, 1], 2));
        double expanded = Normal95.Factor * Math.Sqrt(Math.Max(0, variance));
        return new(length, Math.Max(0, length - expanded), length + expanded);
    }

    private static Matrix<double> Covariance(IReadOnlyList<HistoryChange> changes)
    {
        Matrix<double> v = Matrix<double>.Build.Dense(2 * changes.Count, 2 * changes.Count);
        for (int i = 0; i < changes.Count; i++)
        {
            Add(v, i, i, changes[i].Left.Covariance, 1);
            Add(v, i, i, changes[i].Found.Covariance, 1);
            if (i > 0 && changes[i].BeginsWhereLastEnded)
            {
                Add(v, i, i - 1, changes[i].Left.Covariance, -1);
                Add(v, i - 1, i, changes[i].Left.Covariance, -1);
            }
        }

        double ridge = Math.Max(1e-300, Ridge * v.Diagonal().Average());
        for (int i = 0; i < v.RowCount; i++)
            v[i, i] += ridge;
        return v;
    }

    private static void Add(Matrix<double> v, int i, int j, Covariance2 c, double sign)
    {
        v[2 * i, 2 * j] += sign * c.Uu;
        v[2 * i, (2 * j) + 1] += sign * c.Uv;
        v[(2 * i) + 1, 2 * j] += sign * c.Uv;
        v[(2 * i) + 1, (2 * j) + 1] += sign * c.Vv;
    }

    /// <summary>A vector fitted to the changes.</summary>
    /// <param name="Taken">The fall of χ² that it brings; 2 degrees of freedom.</param>
    /// <param name="LeftOver">The χ² that it leaves; 2 degrees of freedom fewer than before.</param>
    public sealed record Part(double Taken, double LeftOver, HistorySize Size);
}
