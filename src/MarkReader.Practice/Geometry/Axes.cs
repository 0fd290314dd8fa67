namespace MarkReader.Practice.Geometry;

/// <summary>Three unit vectors, square to each other, that a body carries with it.</summary>
internal readonly record struct Axes(Vector3 X, Vector3 Y, Vector3 Z)
{
    /// <summary>The machine's own axes: x the head's travel, y the gantry's travel, z up.</summary>
    public static Axes Machine => new(Vector3.AlongX, Vector3.AlongY, Vector3.AlongZ);

    /// <summary>A direction given in these axes, in the axes in which they are themselves given.</summary>
    public Vector3 Out(Vector3 v) => (v.X * X) + (v.Y * Y) + (v.Z * Z);

    /// <summary>All three turned about a unit axis by the right-hand rule.</summary>
    public Axes Turned(Vector3 axis, double radians) => new(X.Turned(axis, radians), Y.Turned(axis, radians), Z.Turned(axis, radians));

    /// <summary>Turned by the least turn that brings <paramref name="from"/> onto <paramref name="to"/> (both unit vectors).</summary>
    public Axes TurnedOnto(Vector3 from, Vector3 to)
    {
        Vector3 axis = from.Cross(to);
        double sin = axis.Magnitude;
        return sin == 0 ? this : Turned((1 / sin) * axis, Math.Atan2(sin, from.Dot(to)));
    }
}
