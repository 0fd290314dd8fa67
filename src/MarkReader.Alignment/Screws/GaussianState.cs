namespace MarkReader.Alignment.Screws;

/// <summary>A mean and a covariance that events change in place; belongs to one run through the events.</summary>
/// <remarks>Plain arrays: a state has about 20 components and an advice works through some hundred of these steps.</remarks>
internal sealed class GaussianState
{
    private readonly double[] _covariance;

    public GaussianState(int size) => (Mean, _covariance) = (new double[size], new double[size * size]);

    private GaussianState(double[] mean, double[] covariance) => (Mean, _covariance) = (mean, covariance);

    public double[] Mean { get; }

    public int Size => Mean.Length;

    public double this[int i, int j]
    {
        get => _covariance[(i * Size) + j];
        set => _covariance[(i * Size) + j] = _covariance[(j * Size) + i] = value;
    }

    public GaussianState Copy() => new([.. Mean], [.. _covariance]);

    /// <summary>A component becomes independent of all others.</summary>
    public void Forget(int i, double mean, double variance)
    {
        for (int j = 0; j < Size; j++)
            this[i, j] = 0;
        Mean[i] = mean;
        this[i, i] = variance;
    }

    /// <summary>A component's standard deviation grows by a factor, its correlations stay.</summary>
    public void Widen(int i, double factor)
    {
        double variance = this[i, i];
        for (int j = 0; j < Size; j++)
            this[i, j] *= factor;
        this[i, i] = variance * factor * factor;
    }

    /// <summary>Adds to component i the linear form <paramref name="byOld"/> of the state before the call, for several i at once; means are the caller's.</summary>
    public void AddForms(IReadOnlyList<(int Target, double[] Form)> byOld)
    {
        double[][] cross = [.. byOld.Select(f => Times(f.Form))];
        for (int a = 0; a < byOld.Count; a++)
        {
            for (int j = 0; j < Size; j++)
            {
                _covariance[(byOld[a].Target * Size) + j] += cross[a][j];
                _covariance[(j * Size) + byOld[a].Target] += cross[a][j];
            }
        }

        for (int a = 0; a < byOld.Count; a++)
        {
            for (int b = 0; b < byOld.Count; b++)
                _covariance[(byOld[a].Target * Size) + byOld[b].Target] += Dot(byOld[b].Form, cross[a]);
        }
    }

    /// <summary>Adds an independent error of standard deviation one that moves the components by <paramref name="by"/>.</summary>
    public void AddNoise(IReadOnlyList<(int Target, double Amount)> by)
    {
        foreach ((int i, double a) in by)
        {
            foreach ((int j, double b) in by)
                _covariance[(i * Size) + j] += a * b;
        }
    }

    /// <summary>C·form.</summary>
    public double[] Times(double[] form)
    {
        double[] result = new double[Size];
        for (int j = 0; j < Size; j++)
        {
            if (form[j] == 0)
                continue;
            for (int i = 0; i < Size; i++)
                result[i] += _covariance[(i * Size) + j] * form[j];
        }

        return result;
    }

    /// <summary>C −= a·aᵀ/w, for an observation whose covariance with the state is a and whose variance is w.</summary>
    public void Condition(double[] a, double w)
    {
        for (int i = 0; i < Size; i++)
        {
            double f = a[i] / w;
            if (f == 0)
                continue;
            for (int j = 0; j < Size; j++)
                _covariance[(i * Size) + j] -= f * a[j];
        }
    }

    public static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
