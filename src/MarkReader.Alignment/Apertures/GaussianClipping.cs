using MarkReader.Alignment.Estimates;

namespace MarkReader.Alignment.Apertures;

/// <summary>Power of a Gaussian beam, I = (2P/πw²)·exp(−2r²/w²), through a round aperture.</summary>
public static class GaussianClipping
{
    /// <summary>
    /// The part transmitted: the noncentral χ² distribution function with 2 degrees of freedom at 4a²/w², noncentrality 4d²/w²
    /// (the intensity is a round normal density with σ = w/2). Centred: 1 − exp(−2a²/w²).
    /// </summary>
    /// <param name="aperture">Radius a of the opening; the unit is the same for all three.</param>
    /// <param name="beam">1/e² intensity radius w of the beam, above zero.</param>
    /// <param name="offset">Distance d of the beam's axis from the opening's centre.</param>
    public static double Transmitted(double aperture, double beam, double offset)
    {
        if (!(aperture >= 0 && beam > 0 && offset >= 0))
            throw new ArgumentOutOfRangeException(nameof(beam), beam, "Radii and offset must not be negative, and the beam's radius must be above zero.");
        double a = 2 * aperture / beam, d = 2 * offset / beam;
        return NoncentralChiSquare.Below(a * a, d * d);
    }
}
