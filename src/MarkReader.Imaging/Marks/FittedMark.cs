using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A measured mark, in the printed card's frame.</summary>
/// <param name="Centre">Its centre (mm).</param>
/// <param name="Noise">The centre's covariance from noise, texture and the roughness of the outline (mm²).</param>
/// <param name="ShapeDoubt">What uneven light and smoke add to it (mm²).</param>
/// <param name="Outline">Its outline; null when only the texture fit holds it.</param>
/// <param name="Symmetric">Its profile and shape.</param>
/// <param name="IsByOutline">Whether the centre is the outline's, and not of a fit against the texture.</param>
internal sealed record FittedMark(CardPoint Centre, Covariance2 Noise, Covariance2 ShapeDoubt, FittedOutline? Outline, SymmetricMark Symmetric, bool IsByOutline)
{
    /// <summary>At half depth, mm.</summary>
    public double Diameter => Outline is { } o ? 2 * o.Radius : Symmetric.Diameter;

    /// <summary>How far from the centre the mark's edge reaches, mm.</summary>
    public double EdgeReach => (Diameter / 2) + (2.2 * Symmetric.EdgeWidth);
}
