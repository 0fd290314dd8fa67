using MarkReader.Quantities;

namespace MarkReader.Practice.Rails;

/// <summary>The form of a bent rail between its ends, which stay in place.</summary>
public enum BendShape
{
    /// <summary>4·t·(1 − t) of the height, t being the part of the travel.</summary>
    Parabola,

    /// <summary>sin(π·t) of the height.</summary>
    HalfSine,
}

/// <summary>One bend of a rail.</summary>
/// <param name="Shape">Its form.</param>
/// <param name="Right">Height in the middle to the right, as one looks along the beam.</param>
/// <param name="Up">Height in the middle upwards.</param>
public sealed record RailBend(BendShape Shape, Length Right, Length Up);

/// <summary>A rail along which a carriage travels, straight or bent.</summary>
/// <param name="Bend">Its bend; null when it is straight.</param>
/// <param name="TiltFollowing">
/// The part of the rail's local slope by which the carriage turns with it: 0 (a carriage on long or separate bearings, the default) to 1.
/// At 1, a bend of 0.1 mm in 400 mm turns a carriage by 1 mrad at the ends, and the beam behind its mirror by 2 mrad.
/// </param>
public sealed record Rail(RailBend? Bend, double TiltFollowing = 0)
{
    public static Rail Straight { get; } = new((RailBend?)null);

    /// <summary>Displacement of the carriage, mm, at part <paramref name="t"/> of the travel.</summary>
    internal (double Right, double Up) At(double t) => Bend is null
        ? (0, 0)
        : (Form(t) * Bend.Right.Millimetres, Form(t) * Bend.Up.Millimetres);

    /// <summary>Slopes of the carriage, mm per mm, for a travel of <paramref name="travel"/> mm.</summary>
    internal (double Right, double Up) TiltAt(double t, double travel) => Bend is null
        ? (0, 0)
        : (TiltFollowing * Slope(t) / travel * Bend.Right.Millimetres, TiltFollowing * Slope(t) / travel * Bend.Up.Millimetres);

    private double Form(double t) => Bend!.Shape == BendShape.Parabola ? 4 * t * (1 - t) : Math.Sin(Math.PI * t);

    private double Slope(double t) => Bend!.Shape == BendShape.Parabola ? 4 - (8 * t) : Math.PI * Math.Cos(Math.PI * t);
}
