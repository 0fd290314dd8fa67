using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>What the odd harmonics of an outline's residuals say about its centre.</summary>
/// <remarks>
/// A displaced centre is the first harmonic, which the fit takes up, so that its power is not seen. Even harmonics are alike on opposite sides and do not
/// move the centre. The odd ones next to it are its nearest likeness: noise that neighbouring directions share, and a burn's own irregularity, weaken
/// slowly with their order.
/// </remarks>
internal static class OutlineHarmonics
{
    private const int First = 3;
    private const int Last = 9;

    /// <summary>Power of the first harmonic over the mean of the odd ones from 3 to 9; from rendered marks (1.3 to 1.4 found, single values aside 1.2).</summary>
    private const double Steepness = 1.2;

    /// <summary>Covariance of the centre, mm².</summary>
    /// <param name="residuals">Angle (rad) and residual (mm) of every direction used, nearly all around.</param>
    public static Covariance2 OfCentre(IReadOnlyList<(double Angle, double Residual)> residuals)
    {
        double power = 0;
        for (int order = First; order <= Last; order += 2)
        {
            double c = residuals.Average(r => r.Residual * Math.Cos(order * r.Angle)), s = residuals.Average(r => r.Residual * Math.Sin(order * r.Angle));
            power += 4 * ((c * c) + (s * s));
        }

        int orders = ((Last - First) / 2) + 1;
        return Covariance2.Isotropic(Math.Sqrt(Steepness * power / orders / 2));
    }
}
