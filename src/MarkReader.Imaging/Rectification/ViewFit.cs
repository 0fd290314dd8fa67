using MarkReader.Imaging.Fitting;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>Fits a view to the distances of edge sections: robust maximum likelihood with a normal prior on lens and bend.</summary>
/// <remarks>
/// Tukey's biweight by iterated reweighting (Holland and Welsch, Commun. Stat. A6, 1977). The covariance is the larger of the model's and of
/// the one clustered by printed edge (Liang and Zeger, Biometrika 73, 1986), since the sections of one edge share print and paper faults.
/// </remarks>
internal sealed class ViewFit
{
    /// <summary>What no profile's noise shows: print, paper and interpolation, px.</summary>
    public const double Floor = 0.02;

    private const double Tukey = 4.685;

    private readonly CardView _start;
    private readonly IReadOnlyList<EdgeMeasurement> _edges;
    private readonly double[][] _rows;
    private readonly double[] _target;
    private readonly double[] _precision;

    public ViewFit(CardView start, IReadOnlyList<EdgeMeasurement> edges)
    {
        _start = start;
        _edges = edges;
        _rows = [.. edges.Select(Row)];
        _target = [.. edges.Select(e => e.Offset - start.GrowthPx)];
        _precision = [.. edges.Select(e => 1 / (e.Variance + (Floor * Floor)))];
    }

    public FittedView Run(ViewPrior prior)
    {
        int n = _rows.Length;
        Vector<double> belief = prior.Precision();
        Vector<double> current = Vector<double>.Build.Dense(ViewParameters.Count, i => i < ViewParameters.Homography ? 0 : _start[i]);
        double[] residuals = new double[n];
        double[] weights = [.. _precision];
        NormalEquations equations = new(ViewParameters.Count);
        Vector<double> step = current;
        double scale = Math.Max(1, 1.4826 * _target.Select((t, i) => Math.Abs(t) * Math.Sqrt(_precision[i])).Median());
        for (int iteration = 0; iteration < 15; iteration++)
        {
            equations = new(ViewParameters.Count);
            for (int i = 0; i < n; i++)
                equations.Add(_rows[i], _target[i], weights[i]);
            for (int k = 0; k < ViewParameters.Count; k++)
                equations.AddPrior(k, -current[k], belief[k] * scale * scale);
            step = equations.Solve() ?? throw new InvalidOperationException("The printed edges do not determine the view.");
            for (int i = 0; i < n; i++)
                residuals[i] = _target[i] - Dot(_rows[i], step);
            double[] standard = [.. residuals.Select((r, i) => Math.Abs(r) * Math.Sqrt(_precision[i]))];
            scale = Math.Max(1, 1.4826 * standard.Median());
            for (int i = 0; i < n; i++)
            {
                double t = standard[i] / (Tukey * scale);
                weights[i] = t < 1 ? _precision[i] * Square(1 - (t * t)) : 0;
            }
        }

        Matrix<double> inverse = equations.Matrix.Inverse();
        Matrix<double> model = inverse * (scale * scale);
        double inflation = Inflation(inverse, model, residuals, weights);
        return new(_start.Moved(step).WithCovariance(model * inflation), weights, residuals, scale * scale * inflation);
    }

    /// <summary>One factor for all: the ratio of the clustered to the model's variances on the homography's elements, never below 1.</summary>
    private double Inflation(Matrix<double> inverse, Matrix<double> model, double[] residuals, double[] weights)
    {
        Dictionary<int, Vector<double>> scores = [];
        for (int i = 0; i < _rows.Length; i++)
        {
            if (weights[i] <= 0)
                continue;
            Vector<double> score = weights[i] * residuals[i] * Vector<double>.Build.Dense(_rows[i]);
            int edge = _edges[i].EdgeIndex;
            scores[edge] = scores.TryGetValue(edge, out Vector<double>? sum) ? sum + score : score;
        }

        Matrix<double> meat = Matrix<double>.Build.Dense(ViewParameters.Count, ViewParameters.Count);
        foreach (Vector<double> score in scores.Values)
            meat += score.OuterProduct(score);
        meat *= scores.Count / Math.Max(1.0, scores.Count - ViewParameters.Count);
        Matrix<double> clustered = inverse * meat * inverse;
        return Math.Max(1, Enumerable.Range(0, ViewParameters.Homography).Average(k => clustered[k, k] / model[k, k]));
    }

    private double[] Row(EdgeMeasurement e)
    {
        (double[] x, double[] y) = _start.ParameterJacobian(e.Card);
        double[] row = new double[ViewParameters.Count];
        for (int i = 0; i < row.Length; i++)
            row[i] = (e.Normal.X * x[i]) + (e.Normal.Y * y[i]);
        // Black that has grown shows its edges shifted towards white.
        row[ViewParameters.Growth] = 1;
        return row;
    }

    private static double Dot(double[] row, Vector<double> v)
    {
        double sum = 0;
        for (int i = 0; i < row.Length; i++)
            sum += row[i] * v[i];
        return sum;
    }

    private static double Square(double x) => x * x;
}

/// <summary>A fitted view, the weight (1/px²) and residual (px) of each edge section, and the variance of a residual of unit weight, clusters counted.</summary>
internal sealed record FittedView(CardView View, double[] Weights, double[] Residuals, double UnitVariance);
