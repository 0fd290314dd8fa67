using MarkReader.Quantities;

namespace MarkReader.Cameras.Boards;

/// <summary>How the printed board differs from its drawing: stretched along u against v, bent, its ink spread.</summary>
/// <param name="Stretch">Relative excess of the print's scale along u over that along v.</param>
/// <param name="BendUu">Height z = Uu·U² + Uv·U·V + Vv·V² over the plane, mm towards the camera, with U, V in units of <see cref="Reach"/>.</param>
/// <param name="Spread">How far black areas reach beyond their outlines, mm.</param>
public sealed record BoardShape(double Stretch, double BendUu, double BendUv, double BendVv, double Spread)
{
    /// <summary>Distance from the board's middle to which the bend's coefficients refer, mm.</summary>
    public const double Reach = 100;

    /// <summary>As drawn.</summary>
    public static BoardShape Flat { get; } = new(0, 0, 0, 0, 0);

    /// <summary>The point in space, mm: x = u, y = v, z towards the camera.</summary>
    /// <param name="across">Unit vector on the board from black to white, for a point of an edge; zero for others.</param>
    public (double X, double Y, double Z) InSpace(CardPoint at, CardVector across)
    {
        at += Spread * across;
        (double u, double v) = (at.U / Reach, at.V / Reach);
        return (at.U * (1 + (Stretch / 2)), at.V * (1 - (Stretch / 2)), (BendUu * u * u) + (BendUv * u * v) + (BendVv * v * v));
    }
}
