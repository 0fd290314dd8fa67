using MarkReader.Practice.Geometry;
using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>Where mirror two's carriage and the head stand for a place of the gantry and of the head.</summary>
/// <remarks>
/// The gantry lies on the left rail, under mirror two, and on the right rail, at the head's full travel. It is stiff: its own axis is the line
/// from one to the other, and the head rides along it and rolls with it. Mirror two rolls by the part RollFactor of that: at 1 the beam rolls
/// with the gantry and the roll does not show at the head, at 0 the beam stays level and the head moves up or down past it.
/// </remarks>
internal sealed record MachinePoses(Pose Carriage, Pose Head)
{
    public static MachinePoses Of(PracticeMachine machine, double x, double y)
    {
        double across = machine.Stated.LegTwo.Travel.Millimetres, along = machine.Stated.LegOne.Travel.Millimetres;
        double s = x / across, t = y / along;
        (double right, double up) = machine.GantryRail.At(t);
        Vector3 carriage = new(right, machine.LegOnePaths.At(t), machine.Bed.Left(t) + up);
        double roll = Math.Atan2(machine.Bed.Right(t) - carriage.Z, machine.LegTwoPaths.Far.Millimetres);

        Axes gantry = Rolled(roll);
        (right, up) = machine.HeadRail.At(s);
        Vector3 head = carriage + gantry.Out(new(machine.LegTwoPaths.At(s), -right, up));

        (right, up) = machine.GantryRail.TiltAt(t, along);
        Axes mirrorTwo = Rolled(machine.RollFactor * roll).TurnedOnto(Vector3.AlongY, new Vector3(right, 1, up).Normalised());
        (right, up) = machine.HeadRail.TiltAt(s, across);
        Axes headAxes = gantry.TurnedOnto(gantry.X, gantry.Out(new Vector3(1, -right, up).Normalised()));

        return new(
            Shifted(new(carriage, mirrorTwo), machine.MirrorTwoOffset, PracticeLeg.One, machine.Stated.LegOne.Incidence),
            Shifted(new(head, headAxes), machine.HeadOffset, PracticeLeg.Two, machine.Stated.LegTwo.Incidence));
    }

    /// <summary>The axes u and v of a tape in its carrier's axes. Looking along the beam, the right hand is at +x on leg 1 and at −y on leg 2.</summary>
    public static (Vector3 U, Vector3 V) TapeAxes(PracticeLeg leg, Angle incidence)
    {
        (double sin, double cos) = Math.SinCos(incidence.Radians);
        return leg switch
        {
            PracticeLeg.One => ((cos * Vector3.AlongX) + (sin * Vector3.AlongY), Vector3.AlongZ),
            PracticeLeg.Two => ((sin * Vector3.AlongX) - (cos * Vector3.AlongY), Vector3.AlongZ),
            _ => (Vector3.AlongX, Vector3.AlongY),
        };
    }

    // About y (the gantry's direction of travel), the +x end upwards.
    private static Axes Rolled(double roll) => Axes.Machine.Turned(Vector3.AlongY, -roll);

    private static Pose Shifted(Pose pose, CardVector offset, PracticeLeg leg, Angle incidence)
    {
        (Vector3 u, Vector3 v) = TapeAxes(leg, incidence);
        return pose with { Origin = pose.Point((offset.U * u) + (offset.V * v)) };
    }
}
