using MarkReader.Cameras.Boards;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Statistics;

namespace MarkReader.Cameras.Calibration;

/// <summary>Fits camera, lens, board and poses to the sightings of all views at once.</summary>
/// <remarks>
/// Levenberg–Marquardt on the reduced normal equations; Tukey's biweight by iterated reweighting (Holland and Welsch, Commun. Stat. A6,
/// 1977), the faults of the printed edges as random effects. The covariance is the model's, raised by what the sightings' errors have in common.
/// </remarks>
internal sealed class CalibrationFit(IReadOnlyList<BoardView> views, CameraTerms terms, bool robust, Beliefs? before = null)
{
    private const int MostSteps = 60;

    private readonly IReadOnlyList<int[]> _free = Globals.Free(terms);
    private readonly Beliefs _beliefs = before ?? Beliefs.OfBoard;
    private readonly PrintFaults _print = new(views);
    private readonly int _sightings = views.Sum(v => v.Sightings.Count);

    /// <summary>1/σ² of a printed edge's fault, in units of the sightings' weights; null while the print is taken as drawn.</summary>
    private double? _faultPrecision;

    /// <summary>Variance of a sighting of unit weight; beliefs are stated in its units.</summary>
    private double _unit = 1;

    private double[][] _weights = [.. views.Select(v => v.Sightings.Select(s => 1 / (s.StandardUncertainty * s.StandardUncertainty)).ToArray())];

    /// <summary>Null when the views do not determine the camera.</summary>
    public FittedCalibration? Run(CalibrationState start)
    {
        if (Descend(start) is not { } state)
            return null;
        if (!robust)
            return Finish(state, new(Cost(state) / Math.Max(1, _sightings - Fitted), 1));
        double scale = 1;
        Biweight spread = default;
        for (int round = 0; round < 8; round++)
        {
            double before = scale;
            (scale, spread) = Reweight(state);
            _unit = spread.Unit;
            LearnFaults(state, spread);
            if (Descend(state, mostSteps: 3) is not { } next)
                return null;
            state = next;
            if (Math.Abs(scale - before) < 1e-4 * scale)
                break;
        }

        return Finish(state, spread);
    }

    private int Fitted => _free.Count + views.Sum(v => v.Sightings.Any(s => s.IsEdge) ? SightingRow.OfView : SightingRow.Growth);

    private int Faults => _faultPrecision is null ? 0 : _print.Count;

    private void LearnFaults(CalibrationState state, Biweight spread)
    {
        if (_print.Count == 0 || Equations(state, _print.Count).Last(_free.Count) is not { } last)
            return;
        Vector<double> now = Vector<double>.Build.Dense([.. _print.Groups.Select(g => state.Faults.GetValueOrDefault(g))]);
        double variance = PrintFaults.Variance(last.Matrix, (last.Right / spread.Response) + (last.Matrix * now), spread.Unit);
        _faultPrecision = variance > 0 ? spread.Unit / variance : null;
    }

    private CalibrationState? Descend(CalibrationState state, int mostSteps = MostSteps)
    {
        double cost = Cost(state);
        double damping = 1e-3;
        for (int step = 0; step < mostSteps && double.IsFinite(cost); step++)
        {
            BundleEquations equations = Equations(state, Faults);
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

    /// <param name="faults">How many printed edges' faults are among the shared parameters, after the free ones: all or none.</param>
    private BundleEquations Equations(CalibrationState state, int faults)
    {
        BundleEquations equations = new(_free.Count + faults, views.Count);
        double[] all = new double[Globals.Count], shared = new double[_free.Count], own = new double[SightingRow.OfView];
        for (int i = 0; i < views.Count; i++)
        {
            IReadOnlyList<BoardSighting> sightings = views[i].Sightings;
            for (int k = 0; k < sightings.Count; k++)
            {
                double weight = _weights[i][k];
                if (weight <= 0)
                    continue;
                double residual = SightingRow.Fill(sightings[k], state.Shared, state.Poses[i], state.Growths[i], state.FaultOf(sightings[k]), all, own);
                Gather(all, shared);
                equations.Add(i, shared, own, residual, weight, faults > 0 && sightings[k].IsEdge ? _free.Count + _print.NumberOf(sightings[k]) : -1, all[Globals.Spread]);
            }

            for (int t = 0; t < GrowthField.Count; t++)
                equations.BelieveOwn(i, SightingRow.Growth + t, -state.Growths[i][t], Beliefs.PrecisionOfGrowth(t));
        }

        double[] values = state.Shared.Values();
        for (int f = 0; f < _free.Count; f++)
        {
            int element = _free[f][0];
            if (_beliefs.PrecisionOf(element) is > 0 and double precision)
                equations.Believe(f, _beliefs.Expected(element) - values[element], precision * _unit);
        }

        if (faults > 0 && _faultPrecision is { } believed)
        {
            foreach ((int group, int number) in _print.Groups.Select((g, n) => (g, n)))
                equations.Believe(_free.Count + number, -state.Faults.GetValueOrDefault(group), believed);
        }

        return equations;
    }

    private void Gather(double[] all, Span<double> shared)
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
            [.. state.Growths.Select((g, i) => g.Moved(own[i].AsArray().AsSpan(SightingRow.Growth)))],
            shared.Count > _free.Count ? _print.Groups.Select((g, n) => (g, n)).ToDictionary(x => x.g, x => state.Faults.GetValueOrDefault(x.g) + shared[_free.Count + x.n]) : state.Faults);
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

            for (int t = 0; t < GrowthField.Count; t++)
                sum += Beliefs.PrecisionOfGrowth(t) * Square(state.Growths[i][t]);
        }

        double[] values = state.Shared.Values();
        for (int f = 0; f < _free.Count; f++)
        {
            int element = _free[f][0];
            sum += _unit * _beliefs.PrecisionOf(element) * Square(values[element] - _beliefs.Expected(element));
        }

        if (_faultPrecision is { } believed)
            sum += believed * state.Faults.Values.Sum(Square);
        return double.IsFinite(sum) ? sum : double.PositiveInfinity;
    }

    /// <summary>Weights from the residuals over their spread; returns that spread in standard uncertainties, and what the weights cost.</summary>
    private (double Scale, Biweight Spread) Reweight(CalibrationState state)
    {
        double[][] standard = [.. state.Residuals(views).Select((r, i) => r.Select((x, k) => Math.Abs(x) / views[i].Sightings[k].StandardUncertainty).ToArray())];
        double[] all = [.. standard.SelectMany(s => s)];
        double scale = Math.Max(1e-6, 1.4826 * all.Median());
        _weights = [.. standard.Select((s, i) => s.Select((t, k) => Biweight.Weight(t, scale) / Square(views[i].Sightings[k].StandardUncertainty)).ToArray())];
        return (scale, Biweight.Of(all, scale, Fitted));
    }

    private FittedCalibration? Finish(CalibrationState state, Biweight spread)
    {
        BundleEquations equations = Equations(state, Faults);
        if (equations.Covariance() is not { } reduced)
            return null;
        double[][] residuals = state.Residuals(views);
        FitRows rows = new(state, residuals, reduced.Inverse, reduced.Carry, spread);
        return new(state, terms, residuals, _weights, new(() => Covariances(rows)), (elements, own) => Agreement(rows, elements, own));
    }

    private FitCovariances Covariances(FitRows fit)
    {
        double[] inflation = Inflation(fit);
        Matrix<double> covariance = Matrix<double>.Build.Dense(Globals.Count, Globals.Count);
        for (int f = 0; f < _free.Count; f++)
        {
            for (int g = 0; g < _free.Count; g++)
            {
                foreach (int i in _free[f])
                {
                    foreach (int j in _free[g])
                        covariance[i, j] = fit.Inverse[f, g] * fit.Spread.Unit * inflation[f] * inflation[g];
                }
            }
        }

        int n = fit.Inverse.RowCount;
        Matrix<double> joint = Matrix<double>.Build.Dense(n, n, (i, j) => fit.Inverse[i, j] * fit.Spread.Unit * Factor(i) * Factor(j));
        return new(covariance, new(_free, [.. Faults > 0 ? _print.Groups : []], joint, _faultPrecision is { } p ? Math.Sqrt(fit.Spread.Unit / p) : 0));

        double Factor(int i) => i < inflation.Length ? inflation[i] : 1;
    }

    /// <summary>For each free parameter the ratio by which errors that sightings share raise its standard uncertainty; never below 1.</summary>
    private double[] Inflation(FitRows fit)
    {
        SharedErrors shared = new(fit.Inverse, _free.Count, fit.Spread.Unit);
        ForEachRow(fit, (i, s, row, weight, residual) => shared.Add(i, PlaceOf(s.Seen, views[i].Photo), row, weight, residual));
        return shared.Inflation();
    }

    private IReadOnlyList<double> Agreement(FitRows fit, IReadOnlyList<int> elements, IReadOnlyList<(int Element, double Sigma)> own)
    {
        ViewAgreement agreement = new(fit.Inverse, [.. elements.Select(e => Globals.Among(_free, e))], [.. own.Select(o => (Globals.Among(_free, o.Element), o.Sigma))]);
        ForEachRow(fit, (i, s, row, weight, residual) => agreement.Add(i, s.Group, row, weight, residual));
        return agreement.Probabilities();
    }

    /// <summary>Tells the derivatives of each used sighting by the shared parameters, its view's own eliminated, its weight and its residual without the weights' shrinking.</summary>
    private void ForEachRow(FitRows fit, RowUse use)
    {
        double[] all = new double[Globals.Count], own = new double[SightingRow.OfView], row = new double[fit.Inverse.RowCount];
        for (int i = 0; i < views.Count; i++)
        {
            double[] carry = fit.Carry[i].ToColumnMajorArray();
            for (int k = 0; k < fit.Residuals[i].Length; k++)
            {
                if (_weights[i][k] <= 0)
                    continue;
                BoardSighting s = views[i].Sightings[k];
                SightingRow.Fill(s, fit.State.Shared, fit.State.Poses[i], fit.State.Growths[i], fit.State.FaultOf(s), all, own);
                Array.Clear(row);
                Gather(all, row.AsSpan(0, _free.Count));
                if (Faults > 0 && s.IsEdge)
                    row[_free.Count + _print.NumberOf(s)] = all[Globals.Spread];
                for (int j = 0; j < own.Length; j++)
                    RowSums.AddScaled(carry.AsSpan(j * row.Length, row.Length), -own[j], row);

                use(i, s, row, _weights[i][k], fit.Residuals[i][k] / fit.Spread.Response);
            }
        }
    }

    /// <summary>Which of eight by six fields of the photo.</summary>
    private static int PlaceOf(PixelPoint p, PhotoSize photo) => (8 * (int)(6 * p.Y / photo.Height)) + (int)(8 * p.X / photo.Width);

    private static double Square(double x) => x * x;

    private delegate void RowUse(int view, BoardSighting sighting, ReadOnlySpan<double> row, double weight, double residual);

    /// <summary>What the rows of a finished fit are made of.</summary>
    private sealed record FitRows(CalibrationState State, double[][] Residuals, Matrix<double> Inverse, Matrix<double>[] Carry, Biweight Spread);
}
