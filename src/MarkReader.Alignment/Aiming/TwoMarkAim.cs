using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Aiming;

/// <summary>The aim point of two marks in closed form, as a function of what was measured: the model through which distributions are propagated (JCGM 101:2008, clause 5).</summary>
/// <remarks>The line through both marks in beam coordinates, x = x0 + sx·z and y = y0 + sy·z, taken at z = −k and carried to the tape. <see cref="AimSolver"/> gives the same for two marks.</remarks>
public static class TwoMarkAim
{
    /// <param name="incidence">Angle between the beam and the target's normal, as in <see cref="Leg"/>.</param>
    /// <param name="near">The near mark and its path length, mm.</param>
    /// <param name="far">The far mark and its path length, mm.</param>
    /// <param name="pivotOffset">The pivot offset k, mm.</param>
    public static CardPoint Of(Angle incidence, (CardPoint Mark, double Path) near, (CardPoint Mark, double Path) far, double pivotOffset)
    {
        BeamFrame frame = new(incidence);
        double zNear = near.Path + (near.Mark.U * frame.Sin), zFar = far.Path + (far.Mark.U * frame.Sin);
        double back = (zNear + pivotOffset) / (zFar - zNear);
        return near.Mark - (back * (far.Mark - near.Mark));
    }
}
