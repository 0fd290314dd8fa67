using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;
using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>Where the beam's middle meets something.</summary>
/// <param name="Place">What it meets.</param>
/// <param name="At">Where, from its middle, mm; null when the beam does not reach its plane.</param>
/// <param name="Radius">How far out it is still met, mm.</param>
/// <param name="Path">Length of the beam's path from the tube's front, mm.</param>
/// <param name="Cosine">Cosine of the angle between the beam and the normal.</param>
internal sealed record Crossing(BeamPlace Place, CardPoint? At, double Radius, double Path, double Cosine)
{
    public bool Lost => At is not { } at || at.DistanceTo(CardPoint.Origin) > Radius;
}

/// <summary>Follows the beam's middle through a machine: plane by plane, r = k − 2(k·n)n at each mirror.</summary>
internal static class BeamTrace
{
    /// <summary>Everything that the beam meets up to the tape, in order; it ends early where the beam does not reach a plane.</summary>
    public static IReadOnlyList<Crossing> Follow(PracticeMachine machine, PracticeStation station, Ray tube, Angle? incidence = null)
    {
        MachinePoses poses = MachinePoses.Of(machine, station.X.Millimetres, station.Y.Millimetres);
        Walk walk = new(tube);
        walk.Reflect(BeamPlace.MirrorOne, machine.MirrorOne, Vector3.Zero, Folds.One);
        if (station.Leg == PracticeLeg.One)
        {
            walk.Tape(poses.Carriage, PracticeLeg.One, incidence ?? machine.Stated.LegOne.Incidence, machine.TapeRadius);
            return walk.Crossings;
        }

        walk.Reflect(BeamPlace.MirrorTwo, machine.MirrorTwo, poses.Carriage.Origin, Turned(Folds.Two, poses.Carriage.Axes));
        if (station.Leg == PracticeLeg.Two)
        {
            walk.Tape(poses.Head, PracticeLeg.Two, incidence ?? machine.Stated.LegTwo.Incidence, machine.TapeRadius);
            return walk.Crossings;
        }

        walk.Pass(BeamPlace.HeadEntry, Rest(machine.Head.Entry, poses.Head, PracticeLeg.Two), machine.Head.Entry.Radius);
        Vector3 middle = new(machine.Head.MirrorBehindEntry.Millimetres, 0, 0);
        walk.Reflect(BeamPlace.MirrorThree, machine.MirrorThree, poses.Head.Point(middle), Turned(Folds.Three, poses.Head.Axes));
        Pose Below(Length distance) => poses.Head with { Origin = poses.Head.Point(middle + new Vector3(0, 0, -distance.Millimetres)) };
        walk.Pass(BeamPlace.Lens, Rest(machine.Head.Lens, Below(machine.Head.LensBelow), PracticeLeg.Three), machine.Head.Lens.Radius);
        walk.Pass(BeamPlace.Nozzle, Rest(machine.Head.Nozzle, Below(machine.Head.NozzleBelow), PracticeLeg.Three), machine.Head.Nozzle.Radius);
        Pose tape = station.Below == TapeBelow.Tube
            ? Below(machine.Head.NozzleBelow + station.Drop)
            : new(Below(machine.Head.NozzleBelow).Origin + new Vector3(0, 0, -station.Drop.Millimetres), Axes.Machine);
        walk.Tape(tape, PracticeLeg.Three, Angle.Zero, machine.TapeRadius);
        return walk.Crossings;
    }

    private static Axes Turned(Axes fold, Axes body) => new(body.Out(fold.X), body.Out(fold.Y), body.Out(fold.Z));

    private static (Vector3 Middle, Vector3 U, Vector3 V) Rest(Aperture aperture, Pose pose, PracticeLeg leg)
    {
        (Vector3 u, Vector3 v) = MachinePoses.TapeAxes(leg, Angle.Zero);
        return (pose.Point((aperture.Offset.U * u) + (aperture.Offset.V * v)), pose.Direction(u), pose.Direction(v));
    }

    /// <summary>The beam so far: its last straight piece and what it has met.</summary>
    private sealed class Walk(Ray ray)
    {
        private readonly List<Crossing> _crossings = [];
        private Ray? _ray = ray;
        private double _path;

        public IReadOnlyList<Crossing> Crossings => _crossings;

        public void Reflect(BeamPlace place, MountedMirror mirror, Vector3 middle, Axes fold)
        {
            Plane face = mirror.Face(middle, fold);
            if (Meet(place, face, (fold.X, fold.Y), mirror.Radius) is { } hit && _ray is { } ray)
                _ray = new(hit, Ray.Reflected(ray.Direction, face.Normal).Normalised());
        }

        public void Pass(BeamPlace place, (Vector3 Middle, Vector3 U, Vector3 V) hole, Length radius) =>
            Meet(place, new(hole.Middle, hole.U.Cross(hole.V)), (hole.U, hole.V), radius);

        public void Tape(Pose carrier, PracticeLeg leg, Angle incidence, Length radius)
        {
            (Vector3 u, Vector3 v) = MachinePoses.TapeAxes(leg, incidence);
            Pass(BeamPlace.Tape, (carrier.Origin, carrier.Direction(u), carrier.Direction(v)), radius);
        }

        /// <summary>Notes where the beam meets the plane; once it has missed one altogether, nothing behind is noted.</summary>
        private Vector3? Meet(BeamPlace place, Plane plane, (Vector3 U, Vector3 V) axes, Length radius)
        {
            if (_ray is not { } ray)
                return null;
            if (ray.DistanceTo(plane) is not { } distance)
            {
                _crossings.Add(new(place, null, radius.Millimetres, _path, 0));
                _ray = null;
                return null;
            }

            Vector3 hit = ray.At(distance), offset = hit - plane.Point;
            _path += distance;
            _crossings.Add(new(place, new(offset.Dot(axes.U), offset.Dot(axes.V)), radius.Millimetres, _path, Math.Abs(ray.Direction.Dot(plane.Normal))));
            // Distances are counted from the last place met, so that a plane behind it is never met.
            _ray = ray with { Origin = hit };
            return hit;
        }
    }
}
