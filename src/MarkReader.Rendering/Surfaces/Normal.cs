namespace MarkReader.Rendering.Surfaces;

/// <summary>The normal distribution function and its inverse, to about 1e-7 and 1e-9.</summary>
internal static class Normal
{
    /// <summary>Abramowitz and Stegun (1964), 7.1.26 for erf.</summary>
    public static double Distribution(double x)
    {
        double z = Math.Abs(x) / Math.Sqrt(2);
        double t = 1 / (1 + (0.3275911 * z));
        double erf = 1 - (t * (0.254829592 + (t * (-0.284496736 + (t * (1.421413741 + (t * (-1.453152027 + (t * 1.061405429)))))))) * Math.Exp(-z * z));
        return x >= 0 ? 0.5 * (1 + erf) : 0.5 * (1 - erf);
    }

    /// <summary>By bisection and Newton steps on <see cref="Distribution"/>; for building tables.</summary>
    public static double Quantile(double p)
    {
        double low = -8;
        double high = 8;
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            if (Distribution(middle) < p)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }
}
