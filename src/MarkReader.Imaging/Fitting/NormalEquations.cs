using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Fitting;

/// <summary>Normal equations of a weighted least-squares problem, filled row by row.</summary>
internal sealed class NormalEquations(int parameters)
{
    /// <summary>By rows, the lower triangle filled.</summary>
    private readonly double[] _matrix = new double[parameters * parameters];

    private readonly double[] _right = new double[parameters];

    public Matrix<double> Matrix => Matrix<double>.Build.Dense(parameters, parameters, (r, c) => _matrix[(parameters * Math.Max(r, c)) + Math.Min(r, c)]);

    /// <summary>Adds one observation: its derivatives by the parameters, its residual and its weight (1/variance).</summary>
    public void Add(ReadOnlySpan<double> row, double residual, double weight)
    {
        if (weight <= 0)
            return;
        for (int r = 0; r < row.Length; r++)
        {
            double wr = weight * row[r];
            if (wr == 0)
                continue;
            _right[r] += wr * residual;
            Span<double> line = _matrix.AsSpan(r * parameters, r + 1);
            for (int c = 0; c < line.Length; c++)
                line[c] += wr * row[c];
        }
    }

    /// <summary>Adds what is known of one parameter: its distance from the expected value and the weight of that.</summary>
    public void AddPrior(int parameter, double residual, double weight)
    {
        _matrix[(parameters + 1) * parameter] += weight;
        _right[parameter] += weight * residual;
    }

    /// <summary>The step, with each diagonal element raised by a factor 1 + <paramref name="damping"/> (Marquardt, J. SIAM 11, 1963); null when it is not determined.</summary>
    public Vector<double>? Solve(double damping = 0)
    {
        Matrix<double> damped = Matrix;
        damped.SetDiagonal((damped.Diagonal() * (1 + damping)) + 1e-12);
        Vector<double> step = damped.LU().Solve(Vector<double>.Build.Dense(_right));
        return step.All(double.IsFinite) ? step : null;
    }
}
