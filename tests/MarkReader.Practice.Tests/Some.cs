using MarkReader.Practice.Frames;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests;

/// <summary>Short ways to write machines, frames and stations.</summary>
internal static class Some
{
    public static Length Mm(double value) => Length.FromMillimetres(value);

    public static Angle Mrad(double value) => Angle.FromMilliradians(value);

    public static Screw Screw(string name, double pitch = 0.7, ScrewSense sense = ScrewSense.ClockwisePushes, double backlashDegrees = 0) =>
        new(name, Mm(pitch), sense, Angle.FromDegrees(backlashDegrees));

    public static FrameContact Contact(double right, double up, Screw? screw = null) => new(Mm(right), Mm(up), screw);

    /// <summary>A pivot in the middle of the mirror's face, screw A to the right of it, screw B above.</summary>
    public static ThreeContactFrame CentreFrame(double arm = 40, double pitch = 0.7, double backlashDegrees = 0) =>
        new(Contact(0, 0), Contact(arm, 0, Screw("A", pitch, backlashDegrees: backlashDegrees)), Contact(0, arm, Screw("B", pitch, backlashDegrees: backlashDegrees)), Length.Zero);

    /// <summary>A straight machine of the desktop kind: no misalignment, no scatter.</summary>
    public static PracticeMachine Straight(double incidenceOne = 0, double incidenceTwo = 0, double farOne = 480, double farTwo = 560)
    {
        StatedMachine desktop = StatedMachine.Desktop;
        StatedMachine stated = desktop with
        {
            LegOne = desktop.LegOne with { Incidence = Angle.FromDegrees(incidenceOne), FarPath = Mm(farOne) },
            LegTwo = desktop.LegTwo with { Incidence = Angle.FromDegrees(incidenceTwo), FarPath = Mm(farTwo) },
        };
        return RandomMachines.Draw(stated, MisalignmentRanges.None, new(1)) with { TapeRadius = Mm(60) };
    }

    public static PracticeMachine WithFrame(this PracticeMachine machine, PracticeLeg leg, ThreeContactFrame frame) => leg switch
    {
        PracticeLeg.One => machine with { MirrorOne = machine.MirrorOne with { Frame = frame } },
        PracticeLeg.Two => machine with { MirrorTwo = machine.MirrorTwo with { Frame = frame } },
        _ => machine with { MirrorThree = machine.MirrorThree with { Frame = frame } },
    };

    public static PracticeStation One(double y) => PracticeStation.LegOne(Mm(y));

    public static PracticeStation Two(double x, double y = 0) => PracticeStation.LegTwo(Mm(x), Mm(y));

    public static PracticeStation Three(double drop, TapeBelow below = TapeBelow.Lift, double x = 0, double y = 0) => PracticeStation.LegThree(Mm(x), Mm(y), Mm(drop), below);
}
