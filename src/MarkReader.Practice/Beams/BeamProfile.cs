using MarkReader.Quantities;

namespace MarkReader.Practice.Beams;

/// <summary>How the power is spread over the beam.</summary>
public enum BeamMode
{
    /// <summary>F = 2E/(πw²)·exp(−2r²/w²).</summary>
    Gaussian,

    /// <summary>The lowest ring mode: F = 2E/(πw²)·(2r²/w²)·exp(−2r²/w²).</summary>
    Ring,
}

/// <summary>The beam's width, and the marks that it leaves.</summary>
/// <param name="Mode">How the power is spread.</param>
/// <param name="Radius">w at the tube's front; for a Gaussian beam the radius at 1/e² of the peak.</param>
/// <param name="Divergence">Half-angle θ at which it widens: w(z)² = w² + (θ·z)².</param>
public sealed record BeamProfile(BeamMode Mode, Length Radius, Angle Divergence)
{
    /// <summary>w after a path of <paramref name="path"/> from the tube's front.</summary>
    public Length RadiusAfter(Length path) => Length.FromMillimetres(RadiusAfter(path.Millimetres));

    internal double RadiusAfter(double path) => Math.Sqrt((Radius.Millimetres * Radius.Millimetres) + (Divergence.Radians * path * Divergence.Radians * path));

    /// <summary>Outer diameter of a mark, mm, across the beam; zero when no part of the beam reaches the threshold.</summary>
    /// <remarks>
    /// The edge lies where the fluence falls to the threshold (Liu, Opt. Lett. 7, 196 (1982): D² = 2w²·ln(F/Fth) for a Gaussian beam).
    /// With x = 2r²/w² and q = Fth·πw²/(2E): exp(−x) = q, or x·exp(−x) = q on the branch beyond the ring's crest at x = 1.
    /// </remarks>
    /// <param name="w">The radius w at the tape, mm.</param>
    /// <param name="energy">Energy of the pulse over the area it is spread on, mJ (reduced by the cosine of the incidence).</param>
    /// <param name="threshold">Fluence at which the tape takes a mark, mJ/mm².</param>
    internal double MarkDiameter(double w, double energy, double threshold)
    {
        double q = threshold * Math.PI * w * w / (2 * energy);
        double x = Mode == BeamMode.Gaussian ? -Math.Log(q) : BeyondTheCrest(q);
        return x > 0 ? w * Math.Sqrt(2 * x) : 0;
    }

    /// <summary>The larger solution of x·exp(−x) = q by Newton's method on ln x − x; 0 when q is more than 1/e.</summary>
    private static double BeyondTheCrest(double q)
    {
        double log = Math.Log(q);
        if (!(log <= -1))
            return 0;
        double x = 1 + Math.Sqrt(2 * (-1 - log)) + (-1 - log);
        for (int i = 0; i < 50; i++)
        {
            double step = (Math.Log(x) - x - log) / ((1 / x) - 1);
            if (!double.IsFinite(step) || Math.Abs(step) < 1e-14 * x)
                break;
            x = Math.Max(1, x - step);
        }

        return x;
    }
}
