namespace MarkReader.Cameras.Calibration;

/// <summary>Tukey's biweight, and what it costs: the estimate's spread and its response to an error, against plain least squares.</summary>
/// <remarks>Huber and Ronchetti, Robust Statistics, 2nd edition, 2009, section 7.6.</remarks>
/// <param name="Unit">Variance of a sighting of unit weight that, with the weighted normal equations' inverse, gives the estimate's covariance.</param>
/// <param name="Response">Mean slope of the weighted residual over the mean weight.</param>
internal readonly record struct Biweight(double Unit, double Response)
{
    private const double Tukey = 4.685;

    /// <param name="standard">Residuals over their stated standard uncertainties.</param>
    /// <param name="scale">Their spread.</param>
    /// <param name="fitted">Parameters fitted to them.</param>
    public static Biweight Of(IReadOnlyCollection<double> standard, double scale, double fitted)
    {
        (double weight, double slope, double square) = (0, 0, 0);
        foreach (double r in standard)
        {
            double t = r / (Tukey * scale), w = Weight(r, scale);
            weight += w;
            slope += Math.Abs(t) < 1 ? (1 - (t * t)) * (1 - (5 * t * t)) : 0;
            square += w * w * r * r;
        }

        double response = slope / weight;
        return new(square / weight / (response * response) * standard.Count / Math.Max(1, standard.Count - fitted), response);
    }

    /// <summary>Weight of a residual, 0 to 1.</summary>
    public static double Weight(double standard, double scale)
    {
        double t = standard / (Tukey * scale);
        return Math.Abs(t) < 1 ? (1 - (t * t)) * (1 - (t * t)) : 0;
    }
}
