using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>What is believed of lens and card before the photo is seen: standard deviations about zero.</summary>
/// <param name="K1">Radial distortion, at the picture's corner.</param>
/// <param name="K2">Its next term.</param>
/// <param name="Centre">Centre of the distortion, in half diagonals.</param>
/// <param name="Bend">Bend of the card at its half side, mm.</param>
/// <param name="Focal">Logarithm of the focal length. A flat card does not show it; for a bent one EXIF may be rounded, or missing and the lens a phone's second one.</param>
internal sealed record ViewPrior(double K1, double K2, double Centre, double Bend, double Focal)
{
    /// <summary>Growth of black, px.</summary>
    private const double Growth = 1;

    /// <summary>Remaining distortion of a phone that corrects its lens, and the flatness of paper taped down (common practice, no source).</summary>
    public static ViewPrior Usual { get; } = new(0.006, 0.002, 0.01, 0.02, 0.01);

    /// <summary>A lens of known profile.</summary>
    /// <param name="k1">What the profile leaves open, at the picture's corner.</param>
    public static ViewPrior Profiled(double k1) => Usual with { K1 = k1, K2 = k1 / 3 };

    /// <summary>A wide lens that nothing corrected.</summary>
    public ViewPrior AnyLens => this with { K1 = 0.1, K2 = 0.03, Centre = 0.02 };

    /// <summary>A card that lifts or bulges.</summary>
    public ViewPrior AnyCard => this with { Bend = 0.7, Focal = 0.35 };

    /// <summary>1/σ² for every parameter; 0 for the homography's.</summary>
    public Vector<double> Precision()
    {
        Vector<double> precision = Vector<double>.Build.Dense(ViewParameters.Count);
        precision[ViewParameters.K1] = 1 / (K1 * K1);
        precision[ViewParameters.K2] = 1 / (K2 * K2);
        precision[ViewParameters.CentreX] = precision[ViewParameters.CentreY] = 1 / (Centre * Centre);
        for (int i = 0; i < 3; i++)
            precision[ViewParameters.Bend + i] = 1 / (Bend * Bend);
        precision[ViewParameters.Growth] = 1 / (Growth * Growth);
        precision[ViewParameters.Focal] = 1 / (Focal * Focal);
        return precision;
    }
}
