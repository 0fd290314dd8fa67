using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>By how much errors that sightings have in common raise the uncertainties that take them as independent.</summary>
/// <remarks>
/// Of one place of all photos: what light and lens do to edges is the same in all (clusters, Liang and Zeger, Biometrika 73, 1986), for each parameter by itself.
/// Of one photo: its light, its blur, the paper's lie; by the jackknife in one step (Bell and McCaffrey, Survey Methodology 28, 2002, there CR3) over what it gives
/// on average for independent errors, a mean of all parameters, since a dozen photos tell little of each. Both excesses add, whichever sign each happens to have; only
/// their sum is not taken below zero, since a limit on each by itself would make it too large on average.
/// </remarks>
/// <param name="inverse">Of the normal equations that are left when the views' own parameters are eliminated.</param>
/// <param name="parameters">How many of the first parameters are wanted.</param>
/// <param name="unit">Variance of a sighting of unit weight.</param>
internal sealed class SharedErrors(Matrix<double> inverse, int parameters, double unit)
{
    private readonly Dictionary<int, double[]> _places = [];
    private readonly Dictionary<int, (double[] Score, double[] Normal)> _views = [];

    /// <param name="row">Derivatives by the parameters, the view's own eliminated.</param>
    public void Add(int view, int place, ReadOnlySpan<double> row, double weight, double residual)
    {
        int n = row.Length;
        if (!_places.TryGetValue(place, out double[]? score))
            _places[place] = score = new double[n];
        if (!_views.TryGetValue(view, out (double[] Score, double[] Normal) sums))
            _views[view] = sums = (new double[n], new double[n * n]);
        for (int f = 0; f < n; f++)
        {
            double w = weight * row[f];
            score[f] += w * residual;
            sums.Score[f] += w * residual;
            RowSums.AddScaled(row, w, sums.Normal.AsSpan(f * n, n));
        }
    }

    /// <summary>Factors of the first parameters' standard uncertainties, at least 1.</summary>
    public double[] Inflation()
    {
        double excess = OfViews() - 1;
        return [.. OfPlaces().Select(p => Math.Sqrt(Math.Max(1, p + excess)))];
    }

    private double[] OfPlaces()
    {
        double few = _places.Count / Math.Max(1.0, _places.Count - parameters);
        double[] sum = Squares(_places.Values.Select(s => inverse * Vector<double>.Build.Dense(s)));
        return [.. sum.Select((x, f) => few * x / (inverse[f, f] * unit))];
    }

    private double OfViews()
    {
        Matrix<double> normal = inverse.Inverse();
        (double found, double expected) = (0, 0);
        foreach ((double[] score, double[] own) in _views.Values)
        {
            Matrix<double> view = Matrix<double>.Build.DenseOfColumnMajor(score.Length, score.Length, own);
            Matrix<double> rest = (normal - view).Inverse();
            double[] move = [.. rest * Vector<double>.Build.Dense(score)];
            Matrix<double> scatter = rest.SubMatrix(0, parameters, 0, score.Length) * (view * inverse.SubMatrix(0, score.Length, 0, parameters));
            // Without this photo the others do not determine the camera.
            if (!(scatter.Trace() >= 0))
                continue;
            for (int f = 0; f < parameters; f++)
            {
                found += move[f] * move[f] / (inverse[f, f] * unit);
                expected += scatter[f, f] / inverse[f, f];
            }
        }

        return expected > 0 ? found / expected : 1;
    }

    private double[] Squares(IEnumerable<Vector<double>> moves)
    {
        double[] sum = new double[parameters];
        foreach (Vector<double> move in moves)
        {
            for (int f = 0; f < parameters; f++)
                sum[f] += move[f] * move[f];
        }

        return sum;
    }
}
