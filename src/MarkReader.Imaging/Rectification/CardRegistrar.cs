using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>
/// Fourth stage: fits the view of the card to its printed edges, by robust maximum likelihood over the distances of all edge sections.
/// </summary>
/// <remarks>
/// Tukey's biweight by iterated reweighting (Holland and Welsch, Commun. Stat. A6, 1977). The radial distortion has a normal prior of zero
/// mean: where the photo does not show it, it stays as uncertainty. The covariance is the larger of the model's and of the one
/// clustered by printed edge (Liang and Zeger, Biometrika 73, 1986), since the sections of one edge share print and paper faults.
/// </remarks>
internal static class CardRegistrar
{
    /// <summary>Standard deviation of k1 before the photo is seen: phones correct to about 0.01, wide lenses reach 0.1.</summary>
    private const double PriorK1 = 0.04;

    /// <summary>Standard deviation of the growth of black before the photo is seen, px.</summary>
    private const double PriorGrowth = 1;

    /// <summary>What no profile's noise shows: print, paper and interpolation, px.</summary>
    private const double Floor = 0.02;

    private const double Tukey = 4.685;

    private const int LeastSections = 30;

    public static Outcome<RegisteredCard> Register(GreyPhoto photo, FoundCard card)
    {
        EdgeSampler sampler = new(photo, card.Kind);
        CardView view = CardView.FromHomography(card.Rough, card.Kind.OuterSide / 2, photo.Size);
        List<EdgeMeasurement> edges = [];
        double[] weights = [];
        double[] residuals = [];
        foreach (double reach in (double[])[0.8, 0.8, 0.65])
        {
            edges = sampler.Measure(view, reach);
            if (edges.Count < LeastSections)
                return TooFew();
            (view, weights, residuals) = Fit(view, edges);
        }

        EdgeMeasurement[] used = [.. edges.Where((_, i) => weights[i] > 0)];
        if (used.Length < LeastSections)
            return TooFew();
        double residual = Math.Sqrt(residuals.Where((_, i) => weights[i] > 0).Average(Square));
        double misfit = Math.Sqrt(Math.Max(0, Square(residual) - used.Average(e => e.Variance + Square(Floor))));
        return new RegisteredCard(card.Kind, view, used, residual, misfit);
    }

    private static Failure TooFew() => new(
        CardFailures.Unsharp, "the card's printed edges cannot be located", "hold the phone still and nearer, let it focus on the card, and take the photo again");

    private static (CardView View, double[] Weights, double[] Residuals) Fit(CardView start, List<EdgeMeasurement> edges)
    {
        int n = edges.Count;
        double[][] rows = [.. edges.Select(e => Row(start, e))];
        double[] target = [.. edges.Select(e => e.Offset - start.GrowthPx)];
        double[] residuals = new double[n];
        double[] precision = [.. edges.Select(e => 1 / (e.Variance + (Floor * Floor)))];
        double[] weights = [.. precision];
        Vector<double> prior = Vector<double>.Build.Dense(CardView.ParameterCount);
        prior[CardView.K1] = 1 / (PriorK1 * PriorK1);
        prior[CardView.Growth] = 1 / (PriorGrowth * PriorGrowth);
        Vector<double> current = Vector<double>.Build.Dense(CardView.ParameterCount);
        current[CardView.K1] = start.RadialDistortion;
        current[CardView.Growth] = start.GrowthPx;
        Vector<double> step = Vector<double>.Build.Dense(CardView.ParameterCount);
        Matrix<double> normal = Matrix<double>.Build.Dense(CardView.ParameterCount, CardView.ParameterCount);
        double scale = 1;
        for (int iteration = 0; iteration < 15; iteration++)
        {
            normal.Clear();
            Vector<double> right = -prior.PointwiseMultiply(current);
            for (int i = 0; i < n; i++)
                Add(normal, right, rows[i], target[i], weights[i]);
            normal.SetDiagonal(normal.Diagonal() + prior);
            step = normal.Cholesky().Solve(right);
            for (int i = 0; i < n; i++)
                residuals[i] = target[i] - Dot(rows[i], step);
            double[] standard = [.. residuals.Select((r, i) => Math.Abs(r) * Math.Sqrt(precision[i]))];
            scale = Math.Max(1, 1.4826 * Median(standard));
            for (int i = 0; i < n; i++)
            {
                double t = standard[i] / (Tukey * scale);
                weights[i] = t < 1 ? precision[i] * Square(1 - (t * t)) : 0;
            }
        }

        Matrix<double> covariance = Covariance(normal, rows, residuals, weights, edges, scale);
        return (start.Moved(step).WithCovariance(covariance), weights, residuals);
    }

    private static Matrix<double> Covariance(
        Matrix<double> normal, double[][] rows, double[] residuals, double[] weights, List<EdgeMeasurement> edges, double scale)
    {
        Matrix<double> inverse = normal.Inverse();
        int size = normal.RowCount;
        Dictionary<int, double[]> scores = [];
        int used = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            if (weights[i] <= 0)
                continue;
            used++;
            double[] score = scores.TryGetValue(edges[i].EdgeIndex, out double[]? s) ? s : scores[edges[i].EdgeIndex] = new double[size];
            double f = weights[i] * residuals[i];
            for (int k = 0; k < size; k++)
                score[k] += f * rows[i][k];
        }

        Matrix<double> meat = Matrix<double>.Build.Dense(size, size);
        foreach (double[] score in scores.Values)
        {
            Vector<double> v = Vector<double>.Build.Dense(score);
            meat += v.OuterProduct(v);
        }

        meat *= scores.Count / Math.Max(1.0, scores.Count - size);
        Matrix<double> clustered = inverse * meat * inverse;
        Matrix<double> model = inverse * (scale * scale);
        // One factor for all: the ratio of the two on the homography's eight elements, never below 1.
        double factor = Enumerable.Range(0, 8).Average(k => clustered[k, k] / model[k, k]);
        return model * Math.Max(1, factor);
    }

    private static double[] Row(CardView view, EdgeMeasurement e)
    {
        (double[] x, double[] y) = view.ParameterJacobian(e.Card);
        double[] row = new double[CardView.ParameterCount];
        for (int i = 0; i < row.Length; i++)
            row[i] = (e.Normal.X * x[i]) + (e.Normal.Y * y[i]);
        // Black that has grown shows its edges shifted towards white.
        row[CardView.Growth] = 1;
        return row;
    }

    private static void Add(Matrix<double> normal, Vector<double> right, double[] row, double target, double weight)
    {
        if (weight <= 0)
            return;
        for (int r = 0; r < row.Length; r++)
        {
            double wr = weight * row[r];
            right[r] += wr * target;
            for (int c = 0; c < row.Length; c++)
                normal[r, c] += wr * row[c];
        }
    }

    private static double Dot(double[] row, Vector<double> v)
    {
        double sum = 0;
        for (int i = 0; i < row.Length; i++)
            sum += row[i] * v[i];
        return sum;
    }

    private static double Square(double x) => x * x;

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : sorted[sorted.Length / 2];
    }
}
