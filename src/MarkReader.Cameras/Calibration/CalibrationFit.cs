using MarkReader.Cameras.Boards;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Statistics;

namespace MarkReader.Cameras.Calibration;

/// <summary>Fits camera, lens, board and poses to the sightings of all views at once.</summary>
/// <remarks>
/// Levenberg–Marquardt on the reduced normal equations; Tukey's biweight by iterated reweighting (Holland and Welsch, Commun. Stat. A6,
/// 1977). The covariance is the larger of the model's and of the one clustered (Liang and Zeger, Biometrika 73, 1986).
/// </remarks>
internal sealed class CalibrationFit(IReadOnlyList<BoardView> views, CameraTerms terms, bool robust)
{
    private const double Tukey = 4.685;
    private const int MostSteps = 60;

    private readonly IReadOnlyList<int[]> _free = Globals.Free(terms);

    private double[][] _weights = [.. views.Select(v => v.Sightings.Select(s => 1 / (s.StandardUncertainty * s.StandardUncertainty)).ToArray())];

    /// <summary>Null when the views do not determine the camera.</summary>
    public FittedCalibration? Run(CalibrationState start)
    {
        if (Descend(start) is not { } state)
            return null;
        double scale = 1;
        if (robust)
        {
            for (int round = 0; round < 8; round++)
            {
                double before = scale;
                scale = Reweight(state);
                if (Descend(state, mostSteps: 3) is not { } next)
                    return null;
                state = next;
                if (Math.Abs(scale - before) < 1e-4 * scale)
                    break;
            }
        }
        else
        {
            int sightings = views.Sum(v => v.Sightings.Count);
            int spare = sightings - _free.Count - views.Sum(v => 6 + (v.Sightings.Any(s => s.IsEdge) ? 1 : 0));
            scale = Math.Sqrt(Cost(state) / Math.Max(1, spare));
        }

        return Finish(state, scale);
    }

    private CalibrationState? Descend(CalibrationState state, int mostSteps = MostSteps)
    {
        double cost = Cost(state);
        double damping = 1e-3;
        for (int step = 0; step < mostSteps && double.IsFinite(cost); step++)
        {
            BundleEquations equations = Equations(state);
            CalibrationState? better = null;
            double next = cost;
            while (better is null && damping < 1e10)
            {
                if (equations.Solve(damping) is { } move)
                {
                    CalibrationState tried = Moved(state, move.Shared, move.Own);
                    next = Cost(tried);
                    if (next <= cost)
                        better = tried;
                }

                damping = better is null ? damping * 10 : Math.Max(1e-12, damping / 10);
            }

            if (better is null)
                return state;
            bool settled = cost - next <= 1e-8 * cost;
            (state, cost) = (better, next);
            if (settled)
                break;
        }

        return double.IsFinite(cost) ? state : null;
    }

    private BundleEquations Equations(CalibrationState state)
    {
        BundleEquations equations = new(_free.Count, views.Count);
        double[] all = new double[Globals.Count], shared = new double[_free.Count], own = new double[SightingRow.OfView];
        for (int i = 0; i < views.Count; i++)
        {
            IReadOnlyList<BoardSighting> sightings = views[i].Sightings;
            for (int k = 0; k < sightings.Count; k++)
            {
                double weight = _weights[i][k];
                if (weight <= 0)
                    continue;
                double residual = SightingRow.Fill(sightings[k], state.Shared, state.Poses[i], state.Growths[i], all, own);
                Gather(all, shared);
                equations.Add(i, shared, own, residual, weight);
            }

            equations.BelieveOwn(i, 6, -state.Growths[i], 1 / (Beliefs.Growth * Beliefs.Growth));
        }

        double[] values = state.Shared.Values();
        for (int f = 0; f < _free.Count; f++)
        {
            if (_free[f] is [int element] && Beliefs.PrecisionOf(element) is > 0 and double precision)
                equations.Believe(f, -values[element], precision);
        }

        return equations;
    }

    private void Gather(double[] all, double[] shared)
    {
        for (int f = 0; f < shared.Length; f++)
        {
            shared[f] = 0;
            foreach (int element in _free[f])
                shared[f] += all[element];
        }
    }

    private CalibrationState Moved(CalibrationState state, Vector<double> shared, Vector<double>[] own)
    {
        double[] d = new double[Globals.Count];
        for (int f = 0; f < _free.Count; f++)
        {
            foreach (int element in _free[f])
                d[element] = shared[f];
        }

        return new(
            state.Shared.Moved(d),
            [.. state.Poses.Select((p, i) => p.Moved(own[i][0], own[i][1], own[i][2], own[i][3], own[i][4], own[i][5]))],
            [.. state.Growths.Select((g, i) => g + own[i][6])]);
    }

    /// <summary>Weighted sum of squares, beliefs counted; infinite when the camera cannot be one.</summary>
    private double Cost(CalibrationState state)
    {
        if (!(state.Shared.Camera.FocalX > 0 && state.Shared.Camera.FocalY > 0))
            return double.PositiveInfinity;
        double sum = 0;
        double[][] residuals = state.Residuals(views);
        for (int i = 0; i < residuals.Length; i++)
        {
            for (int k = 0; k < residuals[i].Length; k++)
            {
                if (_weights[i][k] > 0)
                    sum += _weights[i][k] * residuals[i][k] * residuals[i][k];
            }

            sum += state.Growths[i] * state.Growths[i] / (Beliefs.Growth * Beliefs.Growth);
        }

        double[] values = state.Shared.Values();
        for (int f = 0; f < _free.Count; f++)
        {
            if (_free[f] is [int element])
                sum += Beliefs.PrecisionOf(element) * values[element] * values[element];
        }

        return double.IsFinite(sum) ? sum : double.PositiveInfinity;
    }

    /// <summary>Weights from the residuals over their spread; returns that spread in standard uncertainties.</summary>
    private double Reweight(CalibrationState state)
    {
        double[][] standard = [.. state.Residuals(views).Select((r, i) => r.Select((x, k) => Math.Abs(x) / views[i].Sightings[k].StandardUncertainty).ToArray())];
        double scale = Math.Max(1e-6, 1.4826 * standard.SelectMany(s => s).Median());
        _weights = [.. standard.Select((s, i) => s.Select((t, k) => Biweight(t / (Tukey * scale)) / Square(views[i].Sightings[k].StandardUncertainty)).ToArray())];
        return scale;
    }

    private FittedCalibration? Finish(CalibrationState state, double scale)
    {
        BundleEquations equations = Equations(state);
        if (equations.Covariance() is not { } reduced)
            return null;
        double[][] residuals = state.Residuals(views);
        double[] inflation = Inflation(state, residuals, reduced.Inverse, reduced.Carry, scale);
        double unit = scale * scale;
        Matrix<double> covariance = Matrix<double>.Build.Dense(Globals.Count, Globals.Count);
        for (int f = 0; f < _free.Count; f++)
        {
            for (int g = 0; g < _free.Count; g++)
            {
                foreach (int i in _free[f])
                {
                    foreach (int j in _free[g])
                        covariance[i, j] = reduced.Inverse[f, g] * unit * inflation[f] * inflation[g];
                }
            }
        }

        return new(state, terms, covariance, residuals, _weights);
    }

    /// <summary>For each free parameter the ratio of the clustered to the model's standard uncertainty, the larger of two ways to cluster; never below 1.</summary>
    /// <remarks>By printed edge: faults of the print are the same in all photos. By place in the photo: what light and lens do to edges is, too.</remarks>
    private double[] Inflation(CalibrationState state, double[][] residuals, Matrix<double> inverse, Matrix<double>[] carry, double scale)
    {
        Dictionary<int, double[]> byEdge = [], byPlace = [];
        double[] all = new double[Globals.Count], shared = new double[_free.Count], own = new double[SightingRow.OfView];
        for (int i = 0; i < views.Count; i++)
        {
            for (int k = 0; k < residuals[i].Length; k++)
            {
                if (_weights[i][k] <= 0)
                    continue;
                BoardSighting s = views[i].Sightings[k];
                SightingRow.Fill(s, state.Shared, state.Poses[i], state.Growths[i], all, own);
                Gather(all, shared);
                for (int f = 0; f < shared.Length; f++)
                {
                    for (int j = 0; j < own.Length; j++)
                        shared[f] -= carry[i][f, j] * own[j];
                }

                double factor = _weights[i][k] * residuals[i][k];
                AddTo(byEdge, s.Group, factor, shared);
                AddTo(byPlace, PlaceOf(s.Seen, views[i].Photo), factor, shared);
            }
        }

        double[] edge = Ratios(byEdge), place = Ratios(byPlace);
        return [.. edge.Select((r, f) => Math.Sqrt(Math.Max(1, Math.Max(r, place[f]))))];

        double[] Ratios(Dictionary<int, double[]> scores)
        {
            int n = _free.Count;
            Matrix<double> meat = Matrix<double>.Build.Dense(n, n);
            foreach (double[] score in scores.Values)
                meat += Vector<double>.Build.Dense(score).OuterProduct(Vector<double>.Build.Dense(score));
            meat *= scores.Count / Math.Max(1.0, scores.Count - n);
            Matrix<double> clustered = inverse * meat * inverse;
            return [.. Enumerable.Range(0, n).Select(f => clustered[f, f] / (inverse[f, f] * scale * scale))];
        }
    }

    private static void AddTo(Dictionary<int, double[]> scores, int group, double factor, double[] row)
    {
        if (!scores.TryGetValue(group, out double[]? score))
            scores[group] = score = new double[row.Length];
        for (int f = 0; f < row.Length; f++)
            score[f] += factor * row[f];
    }

    /// <summary>Which of eight by six fields of the photo.</summary>
    private static int PlaceOf(PixelPoint p, PhotoSize photo) => (8 * (int)(6 * p.Y / photo.Height)) + (int)(8 * p.X / photo.Width);

    private static double Biweight(double t) => t < 1 ? Square(1 - (t * t)) : 0;

    private static double Square(double x) => x * x;
}
