using MarkReader.Practice.Beams;
using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Quantities;

namespace MarkReader.Practice.Misalignment;

/// <summary>Draws machines that are out of alignment.</summary>
public static class RandomMachines
{
    private const double FrontSupport = 150, RearSupport = 900, MirrorRadius = 15;

    /// <summary>A machine of the stated kind. The same generator in the same state gives the same machine.</summary>
    public static PracticeMachine Draw(StatedMachine stated, MisalignmentRanges ranges, Random random)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(ranges.Arm, 0.9, nameof(ranges));
        Chance chance = new(random);
        LaserTube tube = new(Support(FrontSupport, ranges, chance), Support(RearSupport, ranges, chance));
        Vector3 beam = tube.Beam(Vector3.Zero).Direction;
        MountedMirror Mirror(StatedFrame frame, Vector3 incoming, Func<double, double, Vector3> outgoing, Axes fold) => new(
            RandomFrames.Draw(frame, ranges, chance),
            FrameSeat.Reflecting(
                incoming, outgoing(chance.Within(ranges.Slope.Radians), chance.Within(ranges.Slope.Radians)).Normalised(), fold,
                Angle.FromRadians(chance.Within(ranges.FrameRoll.Radians))),
            Length.FromMillimetres(MirrorRadius));

        return new()
        {
            Stated = stated,
            Tube = tube,
            MirrorOne = Mirror(stated.LegOne.Frame, beam, (u, v) => new(u, 1, v), Folds.One),
            MirrorTwo = Mirror(stated.LegTwo.Frame, Vector3.AlongY, (u, v) => new(1, -u, v), Folds.Two),
            MirrorThree = Mirror(stated.MirrorThree, Vector3.AlongX, (u, v) => new(u, v, -1), Folds.Three),
            LegOnePaths = Paths(stated.LegOne, ranges, chance),
            LegTwoPaths = Paths(stated.LegTwo, ranges, chance),
            GantryRail = Bent(ranges, chance),
            HeadRail = Bent(ranges, chance),
            Bed = Twisted(ranges, chance),
            RollFactor = chance.Between(ranges.LeastRollFactor, ranges.GreatestRollFactor),
            MirrorTwoOffset = new(chance.Within(ranges.Target.Millimetres), chance.Within(ranges.Target.Millimetres)),
            HeadOffset = new(chance.Within(ranges.Target.Millimetres), chance.Within(ranges.Target.Millimetres)),
            Scatter = new(ranges.Pointing, Length.Zero, ranges.Mark, ranges.HandTurns),
        };
    }

    private static TubeSupport Support(double distance, MisalignmentRanges ranges, Chance chance) =>
        new(Length.FromMillimetres(distance), chance.Within(ranges.Tube), chance.Within(ranges.Tube));

    private static TruePaths Paths(StatedLeg leg, MisalignmentRanges ranges, Chance chance) =>
        new(leg.NearPath + chance.Normal(ranges.PathDeviation), leg.FarPath + chance.Normal(ranges.PathDeviation));

    private static Rail Bent(MisalignmentRanges ranges, Chance chance)
    {
        (double sin, double cos) = Math.SinCos(chance.Between(0, 2 * Math.PI));
        BendShape shape = chance.Heads() ? BendShape.Parabola : BendShape.HalfSine;
        return ranges.RailBend == Length.Zero ? Rail.Straight : new(new RailBend(shape, cos * ranges.RailBend, sin * ranges.RailBend));
    }

    private static BedFrame Twisted(MisalignmentRanges ranges, Chance chance) =>
        BedFrame.Flat.With((BedCorner)chance.Below(4), new(chance.Within(ranges.Twist), Length.Zero));
}
