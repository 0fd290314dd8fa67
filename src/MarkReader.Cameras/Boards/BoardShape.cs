using MarkReader.Quantities;

namespace MarkReader.Cameras.Boards;

/// <summary>How a print differs from its drawing: stretched along u against v, skewed, bent, its ink spread.</summary>
/// <remarks>Paper bends without stretching, so that a bent print's points come nearer to each other: for a cylinder z = b·t², lengths t along it become t − 2b²t³/3.</remarks>
/// <param name="Stretch">Relative excess of the print's scale along u over that along v.</param>
/// <param name="BendUu">Height z = Uu·U² + Uv·U·V + Vv·V² over the plane, mm towards the camera, with U, V in units of <see cref="Reach"/>.</param>
/// <param name="Spread">How far black areas reach beyond their outlines, mm.</param>
public sealed record BoardShape(double Stretch, double BendUu, double BendUv, double BendVv, double Spread)
{
    /// <summary>Distance from the board's middle to which the bend's coefficients refer, mm.</summary>
    public const double Reach = 100;

    /// <summary>As drawn.</summary>
    public static BoardShape Flat { get; } = new(0, 0, 0, 0, 0);

    /// <summary>By how much less than a right angle u and v enclose, rad; half of it is a turn of each.</summary>
    public double Skew { get; init; }

    /// <summary>The point in space, mm: x = u, y = v, z towards the camera.</summary>
    /// <param name="across">Unit vector on the board from black to white, for a point of an edge; zero for others.</param>
    public (double X, double Y, double Z) InSpace(CardPoint at, CardVector across) => Bent(OnPaper(at + (Spread * across)));

    /// <summary>Where the print has the point on its paper, laid flat, mm.</summary>
    public CardPoint OnPaper(CardPoint at) =>
        new((at.U * (1 + (Stretch / 2))) + (at.V * Skew / 2), (at.V * (1 - (Stretch / 2))) + (at.U * Skew / 2));

    /// <summary>Where the bend takes a point of the paper, mm.</summary>
    public (double X, double Y, double Z) Bent(CardPoint paper)
    {
        (double su, double sv) = Slope(paper);
        double z = ((su * paper.U) + (sv * paper.V)) / 2;
        // With the slope 2Bp and z = pᵀBp, what is lost along the paper is ⅔·z·Bp.
        return (paper.U - (z * su / 3), paper.V - (z * sv / 3), z);
    }

    /// <summary>Slope of the height over the plane by u and v.</summary>
    private (double U, double V) Slope(CardPoint paper)
    {
        double uv = BendUv / (Reach * Reach);
        return ((2 * BendUu / (Reach * Reach) * paper.U) + (uv * paper.V), (uv * paper.U) + (2 * BendVv / (Reach * Reach) * paper.V));
    }

    /// <summary>A gradient by the place in space, carried to the place on the paper.</summary>
    internal (double U, double V) ToPaper(CardPoint paper, double byX, double byY, double byZ)
    {
        (double su, double sv) = Slope(paper);
        double z = ((su * paper.U) + (sv * paper.V)) / 2;
        (double uu, double uv, double vv) = (2 * BendUu / (Reach * Reach), BendUv / (Reach * Reach), 2 * BendVv / (Reach * Reach));
        double along = ((byX * su) + (byY * sv)) / 3;
        return (
            byX + (su * (byZ - along)) - (z * ((byX * uu) + (byY * uv)) / 3),
            byY + (sv * (byZ - along)) - (z * ((byX * uv) + (byY * vv)) / 3));
    }

    /// <summary>A gradient by the place in space, carried to the three coefficients of the bend.</summary>
    internal (double Uu, double Uv, double Vv) ToBend(CardPoint paper, double byX, double byY, double byZ)
    {
        (double u, double v) = (paper.U / Reach, paper.V / Reach);
        (double su, double sv) = Slope(paper);
        double z = ((su * paper.U) + (sv * paper.V)) / 2;
        double height = byZ - (((byX * su) + (byY * sv)) / 3);
        double less = z / (3 * Reach);
        return (
            (height * u * u) - (less * 2 * byX * u),
            (height * u * v) - (less * ((byX * v) + (byY * u))),
            (height * v * v) - (less * 2 * byY * v));
    }
}
