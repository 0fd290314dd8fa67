using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A measured mark, in the printed card's frame.</summary>
/// <param name="Centre">Its centre (mm).</param>
/// <param name="Noise">The centre's covariance from noise, texture and the roughness of the outline (mm²).</param>
/// <param name="ShapeDoubt">What uneven light and smoke add to it (mm²).</param>
/// <param name="Outline">Its outline; null when none could be fitted.</param>
/// <param name="Symmetric">Its profile and shape.</param>
/// <param name="Method">What the centre was taken from.</param>
internal sealed record FittedMark(CardPoint Centre, Covariance2 Noise, Covariance2 ShapeDoubt, FittedOutline? Outline, SymmetricMark Symmetric, MarkMethod Method)
{
    /// <summary>Lines that run into it; null when there are none.</summary>
    public HiddenPlaces? Strokes { get; init; }

    /// <summary>At half depth, mm.</summary>
    public double Diameter => Symmetric.Diameter;

    /// <summary>How far from the centre the mark's edge reaches, mm.</summary>
    public double EdgeReach => (Diameter / 2) + (2.2 * Symmetric.EdgeWidth);

    /// <summary>Sum of both variances of the centre, mm².</summary>
    public double Variance => Noise.Uu + Noise.Vv + ShapeDoubt.Uu + ShapeDoubt.Vv;
}

/// <summary>What a mark's centre was taken from.</summary>
internal enum MarkMethod
{
    Outline,
    Symmetry,
    Texture,
}
