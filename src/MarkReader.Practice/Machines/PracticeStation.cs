using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>What carries the tape below the head.</summary>
public enum TapeBelow
{
    /// <summary>The bed, which the lift moves straight up and down.</summary>
    Lift,

    /// <summary>A tube on the head, square to its underside.</summary>
    Tube,
}

/// <summary>Where the tape is and where the carriages stand when a pulse is fired.</summary>
/// <remarks>X is the head's travel from its near end, Y the gantry's from its near end; the tape of leg 1 does not depend on X.</remarks>
public sealed record PracticeStation
{
    private PracticeStation(PracticeLeg leg, Length x, Length y) => (Leg, X, Y) = (leg, x, y);

    public PracticeLeg Leg { get; }

    public Length X { get; }

    public Length Y { get; }

    /// <summary>Distance of the tape below the nozzle; for leg 3 only.</summary>
    public Length Drop { get; private init; }

    public TapeBelow Below { get; private init; }

    /// <summary>Tape on mirror two's frame, the gantry at <paramref name="y"/>.</summary>
    public static PracticeStation LegOne(Length y) => new(PracticeLeg.One, Length.Zero, y);

    /// <summary>Tape on the head's entry hole: a station of leg 2, or a place of the corner survey.</summary>
    public static PracticeStation LegTwo(Length x, Length y) => new(PracticeLeg.Two, x, y);

    /// <summary>Tape below the head. The lens is out for such a pulse; its mount still has to be passed.</summary>
    public static PracticeStation LegThree(Length x, Length y, Length drop, TapeBelow below) => new(PracticeLeg.Three, x, y) { Drop = drop, Below = below };
}
