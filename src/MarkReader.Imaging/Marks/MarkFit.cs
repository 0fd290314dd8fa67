using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Measures one mark: its outline, or where texture hides that, its contrast against the texture.</summary>
internal static class MarkFit
{
    /// <summary>Marks less deep than this are also fitted against the tape's texture.</summary>
    private const double FaintDepth = 0.5;

    /// <summary>Texture is not quite what its covariance says: creases cluster. Factor of variance, from rendered scorches on crepe.</summary>
    private const double TextureInflation = 2;

    /// <summary>Below this depth, or above this roughness, the texture and not the burn makes the outline.</summary>
    private const double VeryFaintDepth = 0.25;
    private const double CleanRoughness = 0.03;

    /// <summary>Amplitude over its uncertainty that a scorch needs.</summary>
    private const double LeastSignificance = 12;

    /// <param name="layers">The zone without the other marks.</param>
    /// <param name="s">What is known of the mark.</param>
    public static FittedMark? Of(MarkLayers layers, SymmetricMark s)
    {
        FittedOutline? outline = OutlineFit.Fit(layers.Light, new Disc(s.Centre, s.Diameter / 2), s.EdgeWidth);
        bool doubted = outline is null || outline.Roughness > CleanRoughness || s.Depth < VeryFaintDepth;
        if (s.Depth < FaintDepth
            && doubted
            && TextureFit.Fit(layers.Darkening, s.Centre, s.Diameter / 2, s.EdgeWidth, s.Depth) is { } texture
            && texture.Significance > LeastSignificance)
            return new(texture.Centre, TextureInflation * texture.Covariance, Covariance2.Isotropic(0), outline, s, false);
        return outline is null ? null : new(outline.Centre, outline.Covariance, outline.LevelDoubt, outline, s, true);
    }
}
