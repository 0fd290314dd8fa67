namespace MarkReader.Practice.Geometry;

/// <summary>Where a body stands and how it is turned.</summary>
internal readonly record struct Pose(Vector3 Origin, Axes Axes)
{
    /// <summary>A point given in the body's axes (mm), in the machine's.</summary>
    public Vector3 Point(Vector3 local) => Origin + Axes.Out(local);

    /// <summary>A direction given in the body's axes, in the machine's.</summary>
    public Vector3 Direction(Vector3 local) => Axes.Out(local);
}
