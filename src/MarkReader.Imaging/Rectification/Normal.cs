namespace MarkReader.Imaging.Rectification;

/// <summary>The standard normal distribution.</summary>
internal static class Normal
{
    public static double Density(double t) => Math.Exp(-t * t / 2) * 0.3989422804014327;

    /// <summary>Abramowitz and Stegun 7.1.26, error below 1.5e-7.</summary>
    public static double Distribution(double t)
    {
        double x = Math.Abs(t) * 0.7071067811865476;
        double k = 1 / (1 + (0.3275911 * x));
        double erf = 1 - ((((((((1.061405429 * k) - 1.453152027) * k) + 1.421413741) * k) - 0.284496736) * k) + 0.254829592) * k * Math.Exp(-x * x);
        return t >= 0 ? (1 + erf) / 2 : (1 - erf) / 2;
    }
}
