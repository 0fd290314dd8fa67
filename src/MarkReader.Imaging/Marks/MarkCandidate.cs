using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>A dark spot in the free zone and what speaks for or against its being a mark.</summary>
/// <param name="Centre">Rough centre (mm).</param>
/// <param name="Diameter">Diameter of the circle of equal area at half depth, mm.</param>
/// <param name="Depth">Darkening at its darkest, 0 to 1.</param>
/// <param name="AxisRatio">Minor over major axis from second moments.</param>
/// <param name="Solidity">Area over the area of the convex hull.</param>
/// <param name="EdgeShare">Part of its outline that lies at the border of what is looked at.</param>
/// <param name="Rejection">Why it is not a mark; null when it is.</param>
internal sealed record MarkCandidate(
    CardPoint Centre, double Diameter, double Depth, double AxisRatio, double Solidity, double EdgeShare, MarkObjection? Rejection)
{
    /// <summary>Whether a person might call it a mark although it was rejected.</summary>
    public bool IsDoubtful { get; init; }
}
