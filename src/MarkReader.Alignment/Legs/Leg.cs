using MarkReader.Quantities;

namespace MarkReader.Alignment.Legs;

/// <summary>A straight run of the beam from a source mirror to a target that travels along a rail.</summary>
/// <param name="Incidence">
/// Angle between the beam and the target's normal, in the plane of u: positive when the +u side of the target lies
/// farther along the beam. Range: less than 80° either way. Default: zero, the target square to the beam.
/// </param>
/// <param name="PivotOffset">
/// Distance k along the path between the source mirror's reflecting point and the point about which the beam swings;
/// positive when that point lies behind the reflecting point, away from the target.
/// </param>
/// <param name="PivotUncertainty">Standard uncertainty of k.</param>
public sealed record Leg(Angle Incidence, Length PivotOffset, Length PivotUncertainty)
{
    /// <summary>A target square to the beam and a beam that swings about the reflecting point.</summary>
    public static Leg Square { get; } = new(Angle.Zero, Length.Zero, Length.Zero);
}
