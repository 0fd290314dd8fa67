namespace MarkReader.Practice.Geometry;

/// <summary>A straight piece of the beam's centre line: where it starts, and its unit direction.</summary>
internal readonly record struct Ray(Vector3 Origin, Vector3 Direction)
{
    public Vector3 At(double distance) => Origin + (distance * Direction);

    /// <summary>Distance along the ray to the plane; null when the plane lies behind the ray or along it.</summary>
    public double? DistanceTo(Plane plane)
    {
        double across = Direction.Dot(plane.Normal);
        double distance = (plane.Point - Origin).Dot(plane.Normal) / across;
        return double.IsFinite(distance) && distance > 0 ? distance : null;
    }

    /// <summary>The direction after a mirror with unit normal n: r = k − 2(k·n)n, the vector law of reflection.</summary>
    public static Vector3 Reflected(Vector3 k, Vector3 n) => k - (2 * k.Dot(n) * n);
}
