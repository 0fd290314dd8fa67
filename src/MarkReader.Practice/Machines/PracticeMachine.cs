using MarkReader.Practice.Beams;
using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;
using MarkReader.Practice.Rails;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;

namespace MarkReader.Practice.Machines;

/// <summary>A laser cutter that exists only as an exact ray trace: pulses are fired on it, screws turned, corners shimmed.</summary>
/// <remarks>
/// Seen from above; x to the right, y to the back, z up, mm, from mirror one's middle:
/// <code>
///   y
///   |  far left                                    far right
///   |    :                                            :
///   |  left rail (under mirror two)               right rail
///   |    :                                            :
///   |  mirror two  ---- leg 2: near path + x ---&gt;  head: entry hole, mirror three,
///   |    ^    \  (both on the gantry)                    then down: lens, nozzle, bed (leg 3)
///   |    |
///   |  leg 1: near path + y
///   |    |
///   +-  mirror one  &lt;------ tube (front support, rear support) ------ x
///     near left                                    near right
/// </code>
/// All mirrors fold by 90°. Tape stands on mirror two's frame or face (leg 1), on the head's entry hole (leg 2 and corner survey), or below
/// the nozzle (leg 3). Every place is worked out by the vector law of reflection and by meeting planes; nothing is linearised.
/// The machine is immutable: turning a screw gives another machine. It answers as a workshop does, with scatter; what is true can be read
/// with the methods of <see cref="Truth.MachineTruth"/>, for scoring.
/// </remarks>
public sealed record PracticeMachine
{
    /// <summary>Farthest displacement of a target on its slots, mm.</summary>
    public const double TargetReach = 20;

    /// <summary>Farthest tape below the nozzle, mm.</summary>
    public const double LongestDrop = 2000;

    /// <summary>What its owner knows of it.</summary>
    public required StatedMachine Stated { get; init; }

    public required LaserTube Tube { get; init; }

    public required MountedMirror MirrorOne { get; init; }

    public required MountedMirror MirrorTwo { get; init; }

    public required MountedMirror MirrorThree { get; init; }

    public required TruePaths LegOnePaths { get; init; }

    public required TruePaths LegTwoPaths { get; init; }

    public Rail GantryRail { get; init; } = Rail.Straight;

    public Rail HeadRail { get; init; } = Rail.Straight;

    public BedFrame Bed { get; init; } = BedFrame.Flat;

    /// <summary>The part of the gantry's roll that mirror two makes with it: 0 none, 1 all.</summary>
    public double RollFactor { get; init; } = 1;

    public Head Head { get; init; } = Head.Usual;

    /// <summary>Displacement of mirror two and its tape from their first place, along the tape's u and v.</summary>
    public CardVector MirrorTwoOffset { get; init; }

    /// <summary>Displacement of the head and its entry hole from their first place, along the tape's u and v.</summary>
    public CardVector HeadOffset { get; init; }

    /// <summary>Half the width of a piece of tape; a beam farther from its middle leaves no mark.</summary>
    public Length TapeRadius { get; init; } = Length.FromMillimetres(20);

    public BeamProfile Beam { get; init; } = new(BeamMode.Gaussian, Length.FromMillimetres(2.5), Angle.FromMilliradians(1.35));

    /// <summary>The test pulse; the default leaves marks of about 4 mm.</summary>
    public TestPulse Pulse { get; init; } = new(Energy: 500, Threshold: 15);

    public Scatter Scatter { get; init; } = Scatter.None;

    /// <summary>Fires one pulse with the machine's scatter. Always takes six normal numbers from <paramref name="random"/>, whatever happens.</summary>
    public Outcome<BurnMark> Fire(PracticeStation station, Random random)
    {
        Ray beam = Tube.Beam(Vector3.Zero);
        Vector3 side = Vector3.AlongZ.Cross(beam.Direction).Normalised(), up = beam.Direction.Cross(side);
        Vector3 Wander(double deviation) => (Normal.Sample(random, 0, deviation) * side) + (Normal.Sample(random, 0, deviation) * up);
        Vector3 turn = Wander(Scatter.Pointing.Radians), shift = Wander(Scatter.Position.Millimetres);
        double sigma = Scatter.Measurement.Millimetres;
        CardVector error = new(Normal.Sample(random, 0, sigma), Normal.Sample(random, 0, sigma));
        return Burn(station, new(beam.Origin + shift, (beam.Direction + turn).Normalised()), error);
    }

    /// <summary>Turns a screw exactly; clockwise, facing the knob, is positive.</summary>
    public Outcome<PracticeMachine> Turn(PracticeLeg leg, string screw, double turns)
    {
        MountedMirror mirror = SourceOf(leg);
        return mirror.Frame.Turn(screw, turns).TryGet(out ThreeContactFrame? frame, out Failure? failure)
            ? With(leg, mirror with { Frame = frame })
            : failure;
    }

    /// <summary>Turns a screw as a hand does, with the machine's <see cref="Scatter.HandTurns"/>.</summary>
    public Outcome<PracticeMachine> Turn(PracticeLeg leg, string screw, double turns, Random random) =>
        Turn(leg, screw, turns + Normal.Sample(random, 0, Scatter.HandTurns));

    /// <summary>Puts shims under a corner of the gantry's frame; a negative height takes them away again.</summary>
    public Outcome<PracticeMachine> Shim(BedCorner corner, Length height) =>
        Bed.Shim(corner, height).TryGet(out BedFrame? bed, out Failure? failure) ? this with { Bed = bed } : failure;

    /// <summary>
    /// Moves a leg's target along its tape: mirror two with its tape, the head with its entry hole, or (leg 3) the nozzle. Marks move the other way.
    /// </summary>
    public Outcome<PracticeMachine> MoveTarget(PracticeLeg leg, CardVector by)
    {
        CardVector moved = by + (leg switch
        {
            PracticeLeg.One => MirrorTwoOffset,
            PracticeLeg.Two => HeadOffset,
            _ => Head.Nozzle.Offset,
        });
        if (!(moved.Magnitude <= TargetReach))
            return PracticeFailures.TargetTooFar();
        return leg switch
        {
            PracticeLeg.One => this with { MirrorTwoOffset = moved },
            PracticeLeg.Two => this with { HeadOffset = moved },
            _ => this with { Head = Head with { Nozzle = Head.Nozzle with { Offset = moved } } },
        };
    }

    /// <summary>Raises one end of the tube.</summary>
    public Outcome<PracticeMachine> RaiseTube(TubeEnd end, Length height) =>
        Tube.Raise(end, height).TryGet(out LaserTube? tube, out Failure? failure) ? this with { Tube = tube } : failure;

    /// <summary>A knock that turns a leg's source frame on its seat, as a slipping frame does.</summary>
    public PracticeMachine Knock(PracticeLeg leg, Angle right, Angle up)
    {
        MountedMirror mirror = SourceOf(leg);
        return With(leg, mirror with
        {
            Seat = mirror.Seat with
            {
                TiltRight = Angle.FromRadians(mirror.Seat.TiltRight.Radians + right.Radians),
                TiltUp = Angle.FromRadians(mirror.Seat.TiltUp.Radians + up.Radians),
            },
        });
    }

    /// <summary>The station of leg 1 or 2 at a stated path length.</summary>
    /// <param name="leg">Leg 1 or 2.</param>
    /// <param name="path">The path length as the owner counts it.</param>
    /// <param name="gantry">Where the gantry stands; for leg 2.</param>
    public PracticeStation StationAt(PracticeLeg leg, Length path, Length gantry = default) => leg switch
    {
        PracticeLeg.One => PracticeStation.LegOne(Stated.LegOne.TravelAt(path)),
        PracticeLeg.Two => PracticeStation.LegTwo(Stated.LegTwo.TravelAt(path), gantry),
        _ => throw new ArgumentOutOfRangeException(nameof(leg), leg, "Leg 3 has a drop below the nozzle instead of a travel."),
    };

    /// <summary>The mirror from which a leg starts.</summary>
    public MountedMirror SourceOf(PracticeLeg leg) => leg switch
    {
        PracticeLeg.One => MirrorOne,
        PracticeLeg.Two => MirrorTwo,
        _ => MirrorThree,
    };

    internal Outcome<BurnMark> Burn(PracticeStation station, Ray tube, CardVector error, Angle? incidence = null)
    {
        if (StationChecks.Of(this, station) is { } wrong)
            return wrong;
        IReadOnlyList<Crossing> crossings = BeamTrace.Follow(this, station, tube, incidence);
        if (crossings.FirstOrDefault(c => c.Lost) is { } lost)
            return PracticeFailures.Lost(lost.Place, lost.At?.DistanceTo(CardPoint.Origin), lost.Radius);
        Crossing tape = crossings[^1];
        double diameter = Beam.MarkDiameter(Beam.RadiusAfter(tape.Path), Pulse.Energy * tape.Cosine, Pulse.Threshold);
        return diameter > 0
            ? new BurnMark(tape.At!.Value + error, Scatter.Measurement, Length.FromMillimetres(diameter))
            : PracticeFailures.TooWeak();
    }

    private PracticeMachine With(PracticeLeg leg, MountedMirror mirror) => leg switch
    {
        PracticeLeg.One => this with { MirrorOne = mirror },
        PracticeLeg.Two => this with { MirrorTwo = mirror },
        _ => this with { MirrorThree = mirror },
    };
}
