namespace MarkReader.Metrology.MonteCarlo;

/// <summary>The outputs of a Monte Carlo run.</summary>
public sealed class Sample
{
    private readonly double[][] _trials;
    private readonly double[][] _sorted;

    internal Sample(double[][] trials)
    {
        _trials = trials;
        Dimension = trials[0].Length;
        _sorted = [.. Enumerable.Range(0, Dimension).Select(i => trials.Select(t => t[i]).Order().ToArray())];
        Mean = [.. _sorted.Select(s => s.Average())];
        Covariance = CovarianceOf(trials, Mean);
    }

    /// <summary>How many outputs.</summary>
    public int Dimension { get; }

    /// <summary>Averages of the outputs (JCGM 101, 7.6).</summary>
    public IReadOnlyList<double> Mean { get; }

    /// <summary>Covariance of the outputs.</summary>
    public double[,] Covariance { get; }

    /// <summary>Standard uncertainty of an output.</summary>
    public double StandardUncertainty(int output = 0) => Math.Sqrt(Covariance[output, output]);

    /// <summary>The probabilistically symmetric coverage interval (JCGM 101, 7.7.2).</summary>
    public Interval Symmetric(double probability = 0.95, int output = 0)
    {
        double[] y = _sorted[output];
        int inside = Inside(probability);
        int below = (y.Length - inside + 1) / 2;
        return new(y[below], y[below + inside - 1]);
    }

    /// <summary>The shortest coverage interval (JCGM 101, 5.3.4 and 7.7.2).</summary>
    public Interval Shortest(double probability = 0.95, int output = 0)
    {
        double[] y = _sorted[output];
        int inside = Inside(probability);
        int best = Enumerable.Range(0, y.Length - inside + 1).MinBy(r => y[r + inside - 1] - y[r]);
        return new(y[best], y[best + inside - 1]);
    }

    /// <summary>
    /// The factor kp of the ellipsoid (y − mean)ᵀ·C⁻¹·(y − mean) = kp² that holds this part of the trials of the first two
    /// outputs, with their own mean and covariance (JCGM 102, 7.7.2).
    /// </summary>
    public double EllipseFactor(double probability = 0.95)
    {
        double[] distances = [.. _trials.Select(t => Squared(t[0] - Mean[0], t[1] - Mean[1])).Order()];
        return Math.Sqrt(distances[Inside(probability) - 1]);
    }

    /// <summary>The half-side, in standard uncertainties, of the rectangle about the mean that holds this part of the trials of the first two outputs (JCGM 102, 7.7.3).</summary>
    public double RectangleFactor(double probability = 0.95)
    {
        double[] distances =
        [
            .. _trials.Select(t => Math.Max(Math.Abs(t[0] - Mean[0]) / StandardUncertainty(0), Math.Abs(t[1] - Mean[1]) / StandardUncertainty(1))).Order(),
        ];
        return distances[Inside(probability) - 1];
    }

    /// <summary>The part of the trials for which a statement about the outputs holds.</summary>
    public double Fraction(Func<IReadOnlyList<double>, bool> holds) => _trials.Count(holds) / (double)_trials.Length;

    private int Inside(double probability) => probability is > 0 and < 1
        ? (int)Math.Round(probability * _trials.Length)
        : throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability between 0 and 1 is needed.");

    private double Squared(double a, double b)
    {
        (double aa, double ab, double bb) = (Covariance[0, 0], Covariance[0, 1], Covariance[1, 1]);
        return ((bb * a * a) - (2 * ab * a * b) + (aa * b * b)) / ((aa * bb) - (ab * ab));
    }

    private static double[,] CovarianceOf(double[][] trials, IReadOnlyList<double> mean)
    {
        int n = mean.Count;
        double[,] covariance = new double[n, n];
        foreach (double[] trial in trials)
        {
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                    covariance[i, j] += (trial[i] - mean[i]) * (trial[j] - mean[j]) / (trials.Length - 1);
            }
        }

        return covariance;
    }
}

/// <summary>A coverage interval.</summary>
public readonly record struct Interval(double Low, double High)
{
    public double Width => High - Low;
}
