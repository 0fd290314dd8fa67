using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>What a <see cref="SymmetricFit"/> found, in the card frame.</summary>
/// <param name="Centre">Centre of symmetry (mm).</param>
/// <param name="Covariance">Its covariance from what the profile does not explain (mm²).</param>
/// <param name="Influence">What each pixel does to the centre.</param>
/// <param name="Diameter">At half depth, mm.</param>
/// <param name="EdgeRadius">Radius of the steepest edge, mm.</param>
/// <param name="Shape">Of its rings.</param>
/// <param name="Depth">Darkening above its surroundings.</param>
/// <param name="EdgeWidth">Standard deviation of the edge's blur, mm.</param>
/// <param name="Roughness">Residual in the mark over its depth; a spot that is not symmetric is rough.</param>
/// <param name="Sides">Part of the directions in which the mark ends in an edge, 0 to 1.</param>
/// <param name="Model">The symmetric part, to be divided out.</param>
internal sealed record SymmetricMark(
    CardPoint Centre, Covariance2 Covariance, CentreInfluence Influence, double Diameter, double EdgeRadius, EllipticShape Shape, double Depth, double EdgeWidth, double Roughness, double Sides, MarkModel Model);

/// <summary>The symmetric part of a mark: transmission as a function of the elliptic radius.</summary>
internal sealed class MarkModel(CardPoint centre, EllipticShape shape, double[] profile, double binWidth, double floor)
{
    /// <summary>Light left by the mark at a point, as part of the light around it.</summary>
    public double Transmission(CardPoint p)
    {
        double r = shape.Radius(p.U - centre.U, p.V - centre.V);
        double x = (r / binWidth) - 0.5;
        if (x >= profile.Length - 1)
            return 1;
        int i = Math.Clamp((int)Math.Floor(x), 0, profile.Length - 2);
        double d = profile[i] + (Math.Clamp(x - i, 0, 1) * (profile[i + 1] - profile[i]));
        return Math.Clamp((1 - d) / (1 - floor), 0.02, 1.5);
    }
}
