using CsCheck;
using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;
using Plane = MarkReader.Practice.Geometry.Plane;

namespace MarkReader.Practice.Tests.Machines;

/// <summary>The whole trace against the method of images: the tape is mirrored back through the mirrors, and the tube's own line drawn straight to it.</summary>
public sealed class UnfoldedPathTests
{
    [Fact]
    public void A_mark_lies_where_the_straight_line_from_the_tube_meets_the_tape_s_image() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[0, 500], Gen.Double[0, 400]).Sample((seed, x, y) =>
        {
            PracticeMachine machine = Drawn(seed, MisalignmentRanges.WithTwist);
            MachinePoses poses = MachinePoses.Of(machine, x, y);
            Plane one = machine.MirrorOne.Face(Vector3.Zero, Folds.One);
            Axes body = poses.Carriage.Axes;
            Plane two = machine.MirrorTwo.Face(poses.Carriage.Origin, new(body.Out(Folds.Two.X), body.Out(Folds.Two.Y), body.Out(Folds.Two.Z)));

            CardPoint first = Unfolded(machine, poses.Carriage, PracticeLeg.One, machine.Stated.LegOne.Incidence, p => Image(one, p));
            CardPoint second = Unfolded(machine, poses.Head, PracticeLeg.Two, machine.Stated.LegTwo.Incidence, p => Image(one, Image(two, p)));
            return machine.TrueMark(Some.One(y)).ValueOrThrow().Place.DistanceTo(first) < 1e-9
                && machine.TrueMark(Some.Two(x, y)).ValueOrThrow().Place.DistanceTo(second) < 1e-9;
        }, iter: 300);

    [Fact]
    public void Near_and_far_and_all_between_lie_on_a_line_as_far_apart_as_their_paths_when_rail_and_bed_are_straight() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[0.05, 0.95]).Sample((seed, part) =>
        {
            PracticeMachine machine = Drawn(seed, new());
            return Proportional(machine, machine.LegOnePaths, t => Some.One(400 * t), Angle.FromDegrees(45), part)
                && Proportional(machine, machine.LegTwoPaths, t => Some.Two(500 * t, 123), Angle.Zero, part);
        }, iter: 300);

    private static PracticeMachine Drawn(int seed, MisalignmentRanges ranges) =>
        RandomMachines.Draw(StatedMachine.Desktop, ranges, new(seed)) with { TapeRadius = Some.Mm(60) };

    private static bool Proportional(PracticeMachine machine, TruePaths paths, Func<double, PracticeStation> station, Angle incidence, double part)
    {
        // On tilted tape the path grows by u·sin t; along the beam the offsets are proportional to that path.
        (double sin, double cos) = Math.SinCos(incidence.Radians);
        (double X, double Y, double Z) At(double t)
        {
            CardPoint mark = machine.TrueMark(station(t)).ValueOrThrow().Place;
            return (mark.U * cos, mark.V, paths.At(t) + (mark.U * sin));
        }

        var (near, between, far) = (At(0), At(part), At(1));
        double s = (between.Z - near.Z) / (far.Z - near.Z);
        return Math.Abs(near.X + (s * (far.X - near.X)) - between.X) < 1e-9 && Math.Abs(near.Y + (s * (far.Y - near.Y)) - between.Y) < 1e-9;
    }

    private static Vector3 Image(Plane mirror, Vector3 p) => p - (2 * (p - mirror.Point).Dot(mirror.Normal) * mirror.Normal);

    private static CardPoint Unfolded(PracticeMachine machine, Pose carrier, PracticeLeg leg, Angle incidence, Func<Vector3, Vector3> image)
    {
        (Vector3 u, Vector3 v) = MachinePoses.TapeAxes(leg, incidence);
        Vector3 origin = image(carrier.Origin);
        Vector3 eu = image(carrier.Point(u)) - origin, ev = image(carrier.Point(v)) - origin;
        Ray beam = machine.Tube.Beam(Vector3.Zero);
        // origin + a·eu + b·ev = beam.Origin + c·beam.Direction, by Cramer's rule.
        Vector3 d = beam.Direction, w = beam.Origin - origin;
        double determinant = eu.Cross(ev).Dot(d);
        return new(w.Cross(ev).Dot(d) / determinant, eu.Cross(w).Dot(d) / determinant);
    }
}
