using MarkReader.Quantities;

namespace MarkReader.Practice.Misalignment;

/// <summary>How far random machines stray from what their owner states.</summary>
/// <remarks>Ranges are half-widths of uniform distributions about zero, unless a name or remark says otherwise.</remarks>
public sealed record MisalignmentRanges
{
    /// <summary>Slope of legs 1, 2 and 3 on each of two axes (that of leg 2 once leg 1 is aligned, that of leg 3 once both are). Default: 8 mrad.</summary>
    public Angle Slope { get; init; } = Angle.FromMilliradians(8);

    /// <summary>Part of its stated arm by which each screw's arm differs. Default: 0.2; less than 0.9.</summary>
    public double Arm { get; init; } = 0.2;

    /// <summary>Standard deviation (normal) of each path length, near and far apart. Default: 2 mm.</summary>
    public Length PathDeviation { get; init; } = Length.FromMillimetres(2);

    /// <summary>Backlash of every screw, where its knob stands in the gap being random. Default: 5°. Not a range: all have it.</summary>
    public Angle Backlash { get; init; } = Angle.FromDegrees(5);

    /// <summary>Height of one corner of the bed's frame, picked at random, high or low. Default: 0.</summary>
    public Length Twist { get; init; }

    /// <summary>Least part of the gantry's roll that mirror two makes. Default: 0.</summary>
    public double LeastRollFactor { get; init; }

    /// <summary>Greatest part of the gantry's roll that mirror two makes; uniform between the two. Default: 1.</summary>
    public double GreatestRollFactor { get; init; } = 1;

    /// <summary>Bend of both rails in the middle, in a random direction across the rail. Default: 0. Not a range: both have it.</summary>
    public Length RailBend { get; init; }

    /// <summary>Place of the target against the straight beam, on each axis of legs 1 and 2. Default: 2 mm.</summary>
    public Length Target { get; init; } = Length.FromMillimetres(2);

    /// <summary>Place of the tube's axis at each support, on each axis. Default: 1 mm.</summary>
    public Length Tube { get; init; } = Length.FromMillimetres(1);

    /// <summary>Roll of each frame in its own plane. Default: 3°.</summary>
    public Angle FrameRoll { get; init; } = Angle.FromDegrees(3);

    /// <summary>Greatest distance of a mirror's face in front of its contacts; uniform from zero. Default: 10 mm.</summary>
    public Length FaceDistance { get; init; } = Length.FromMillimetres(10);

    /// <summary>Standard deviation of a mark on each axis. Default: 0.05 mm.</summary>
    public Length Mark { get; init; } = Length.FromMillimetres(0.05);

    /// <summary>Standard deviation of the beam's direction from pulse to pulse, per axis. Default: 0.</summary>
    public Angle Pointing { get; init; }

    /// <summary>Standard deviation of a hand's setting of a knob. Default: 1/128 turn.</summary>
    public double HandTurns { get; init; } = 1.0 / 128;

    /// <summary>The default, with one corner up to 1 mm high or low.</summary>
    public static MisalignmentRanges WithTwist { get; } = new() { Twist = Length.FromMillimetres(1) };

    /// <summary>The default, with rails bent by 0.1 mm.</summary>
    public static MisalignmentRanges WithBentRails { get; } = new() { RailBend = Length.FromMillimetres(0.1) };

    /// <summary>No misalignment and no scatter: every drawn machine is straight, with its screws' senses left to chance.</summary>
    public static MisalignmentRanges None { get; } = new()
    {
        Slope = Angle.Zero,
        Arm = 0,
        PathDeviation = Length.Zero,
        Backlash = Angle.Zero,
        LeastRollFactor = 1,
        Target = Length.Zero,
        Tube = Length.Zero,
        FrameRoll = Angle.Zero,
        FaceDistance = Length.Zero,
        Mark = Length.Zero,
        HandTurns = 0,
    };
}
