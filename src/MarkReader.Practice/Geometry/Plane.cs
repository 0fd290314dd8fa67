namespace MarkReader.Practice.Geometry;

/// <summary>A plane through a point, with its unit normal.</summary>
internal readonly record struct Plane(Vector3 Point, Vector3 Normal)
{
    /// <summary>The plane through three points, its normal on the side of <paramref name="towards"/>.</summary>
    public static Plane Through(Vector3 a, Vector3 b, Vector3 c, Vector3 towards)
    {
        Vector3 normal = (b - a).Cross(c - a).Normalised();
        return new(a, normal.Dot(towards) < 0 ? -normal : normal);
    }

    /// <summary>The plane moved along its normal by <paramref name="distance"/> mm.</summary>
    public Plane Moved(double distance) => this with { Point = Point + (distance * Normal) };
}
