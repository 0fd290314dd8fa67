using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>
/// Measures one mark in up to three ways and keeps the one that is surest by its own account: by its outline, which light and smoke do not
/// disturb; by its symmetry, for burns without a sharp edge; and a scorch by its contrast against the tape's texture.
/// </summary>
internal static class MarkFit
{
    /// <summary>Marks less deep than this are also fitted against the tape's texture.</summary>
    private const double FaintDepth = 0.5;

    /// <summary>Below this depth, or above this roughness, the texture and not the burn makes the outline.</summary>
    private const double VeryFaintDepth = 0.25;
    private const double CleanRoughness = 0.03;

    /// <summary>Texture is not quite what its covariance says: creases cluster. Factor of variance, from rendered scorches on crepe.</summary>
    private const double TextureInflation = 4.5;

    /// <summary>Amplitude over its uncertainty that a scorch needs.</summary>
    private const double LeastSignificance = 12;

    /// <summary>
    /// Part of the radius by which uneven surroundings pull the centre of symmetry, for a first harmonic of 1. A Gaussian burn in light that is added on
    /// one side (glare) moves by s² times its relative gradient, 0.42 of the radius; lit unevenly it does not move at all: between the two.
    /// </summary>
    private const double SharpPull = 0.06;
    private const double SoftPull = 0.25;

    /// <summary>Edge width over radius at which the variance of an outline's centre is doubled; from rendered soft burns.</summary>
    private const double SoftEdge = 0.2;

    /// <summary>Edge width over radius at half depth of a Gaussian burn.</summary>
    private const double GaussianEdge = 0.56;

    /// <summary>A profile free in all but symmetry takes up some of the texture that it should show as noise. Factor of variance, from rendered marks.</summary>
    private const double SymmetryInflation = 2;

    /// <summary>A mark that has a centre of symmetry must be so smooth.</summary>
    private const double SymmetricRoughness = 0.12;
    private const double SymmetricSides = 0.85;

    /// <param name="layers">The zone without the other marks.</param>
    /// <param name="s">The mark's profile in these layers.</param>
    public static FittedMark? Of(MarkLayers layers, SymmetricMark s)
    {
        FittedOutline? outline = OutlineFit.Fit(layers.Light, new Disc(s.Centre, s.EdgeRadius, s.Shape), s.EdgeWidth);
        bool doubted = outline is null || outline.Roughness > CleanRoughness || s.Depth < VeryFaintDepth;
        if (s.Depth < FaintDepth
            && doubted
            && TextureFit.Fit(layers.Darkening, s.Centre, s.Diameter / 2, s.EdgeWidth, s.Depth) is { } texture
            && texture.Significance > LeastSignificance)
            return new(texture.Centre, TextureInflation * texture.Covariance, SymmetryDoubt(layers, s) ?? Covariance2.Isotropic(s.Diameter / 20), outline, s, MarkMethod.Texture);
        FittedMark? byOutline = outline is null ? null : new(outline.Centre, Softened(outline), outline.LevelDoubt, outline, s, MarkMethod.Outline);
        if (s.Roughness > SymmetricRoughness || s.Sides < SymmetricSides || SymmetryDoubt(layers, s) is not { } doubt)
            return byOutline;
        FittedMark bySymmetry = new(s.Centre, SymmetryInflation * s.Covariance, doubt, outline, s, MarkMethod.Symmetry);
        if (byOutline?.Variance <= bySymmetry.Variance)
            return byOutline;
        // The texture's share takes longer to work out, so it comes last.
        if (TextureNoise.Around(layers.Coarse, s.Centre, (s.Diameter / 2) + (2 * s.EdgeWidth), s.Influence.Extent) is { } bare)
            bySymmetry = bySymmetry with { Noise = bySymmetry.Noise + s.Influence.Under(bare) };
        return byOutline?.Variance <= bySymmetry.Variance ? byOutline : bySymmetry;
    }

    /// <summary>The wider an edge beside its radius, the more of the profile's curvature passes for a displaced edge.</summary>
    private static Covariance2 Softened(FittedOutline o) => (1 + Math.Pow(o.Sigma / (SoftEdge * o.Radius), 4)) * o.Covariance;

    private static Covariance2? SymmetryDoubt(MarkLayers layers, SymmetricMark s)
    {
        double radius = s.Diameter / 2;
        if (Surroundings.Unevenness(layers.Light, s.Centre, radius + (2 * Math.Min(s.EdgeWidth, radius / 2))) is not { } uneven)
            return null;
        double softness = Math.Min(1, s.EdgeWidth / (GaussianEdge * radius));
        CardVector pull = (SharpPull + (softness * SoftPull)) * radius * uneven;
        return Covariance2.Along(pull) + Covariance2.Isotropic(0.3 * pull.Magnitude);
    }
}
