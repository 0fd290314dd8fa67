using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>Whether each view, taken by itself, wants other values of some shared parameters than all views together.</summary>
/// <remarks>
/// A score test (Rao) of one view's own values: the sum of its residuals by those parameters' derivatives, over its covariance. That is taken from the scatter
/// of the sums of single printed edges within the views (clusters, Liang and Zeger, Biometrika 73, 1986), so that what the sightings of an edge have in common
/// does no harm; with few clusters Hotelling's T². What the shared fit takes from each view is counted, and what single views may differ in by right.
/// </remarks>
/// <param name="inverse">Of the normal equations that are left when the views' own parameters are eliminated.</param>
/// <param name="wanted">Which of the parameters.</param>
/// <param name="own">Parameters with standard deviations by which views may differ from each other.</param>
internal sealed class ViewAgreement(Matrix<double> inverse, IReadOnlyList<int> wanted, IReadOnlyList<(int Parameter, double Sigma)> own)
{
    private readonly SortedDictionary<int, View> _views = [];

    /// <param name="row">Derivatives by the parameters, the view's own eliminated.</param>
    /// <param name="cluster">Which sightings have errors in common with this one.</param>
    public void Add(int view, int cluster, ReadOnlySpan<double> row, double weight, double residual)
    {
        int n = row.Length;
        if (!_views.TryGetValue(view, out View? sums))
            _views[view] = sums = new(new double[n * n], []);
        if (!sums.Scores.TryGetValue(cluster, out double[]? score))
            sums.Scores[cluster] = score = new double[n];
        for (int f = 0; f < n; f++)
        {
            double w = weight * row[f];
            score[f] += w * residual;
            RowSums.AddScaled(row, w, sums.Normal.AsSpan(f * n, n));
        }
    }

    /// <summary>For each view in order the probability that one which agrees with the others shows as much.</summary>
    public IReadOnlyList<double> Probabilities() => [.. _views.Select(v => Probability(v.Key, v.Value))];

    private double Probability(int number, View view)
    {
        int n = inverse.RowCount, p = wanted.Count;
        // What the common values take from the view's sums, and from those of the others.
        Matrix<double> taken = Matrix<double>.Build.DenseOfColumnMajor(n, n, view.Normal) * inverse;
        Matrix<double> others = Rows(taken), mine = Rows(Matrix<double>.Build.DenseIdentity(n) - taken);
        Matrix<double> covariance = Matrix<double>.Build.Dense(p, p);
        foreach ((int i, View v) in _views)
        {
            double few = v.Scores.Count / Math.Max(1.0, v.Scores.Count - SightingRow.OfView);
            foreach (double[] score in v.Scores.Values)
            {
                Vector<double> by = (i == number ? mine : others) * Vector<double>.Build.Dense(score);
                covariance += few * by.OuterProduct(by);
            }
        }

        foreach ((int parameter, double sigma) in own)
        {
            Vector<double> by = sigma * (mine * Vector<double>.Build.Dense(view.Normal.AsSpan(parameter * n, n).ToArray()));
            covariance += by.OuterProduct(by);
        }

        Vector<double> sum = Vector<double>.Build.Dense(p);
        foreach (double[] score in view.Scores.Values)
            sum += Vector<double>.Build.Dense([.. wanted.Select(f => score[f])]);
        double squared = sum * covariance.Solve(sum);
        double freedom = view.Scores.Count - SightingRow.OfView - p + 1;
        return freedom > 0 && squared >= 0 ? 1 - FisherSnedecor.CDF(p, freedom, squared * freedom / (p * (freedom + p - 1))) : 1;

        Matrix<double> Rows(Matrix<double> m) => Matrix<double>.Build.Dense(p, n, (i, j) => m[wanted[i], j]);
    }

    /// <param name="Normal">The view's part of the normal equations, symmetric.</param>
    /// <param name="Scores">For each cluster the sum of derivatives times weighted residuals.</param>
    private sealed record View(double[] Normal, Dictionary<int, double[]> Scores);
}
