namespace MarkReader.Rendering.Optics;

/// <summary>A vector in space, mm.</summary>
internal readonly record struct Vector3(double X, double Y, double Z)
{
    public double Length => Math.Sqrt(Dot(this));

    public static Vector3 operator +(Vector3 a, Vector3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vector3 operator -(Vector3 a, Vector3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vector3 operator *(double f, Vector3 a) => new(f * a.X, f * a.Y, f * a.Z);

    public double Dot(Vector3 b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    public Vector3 Cross(Vector3 b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    public Vector3 Unit() => (1 / Length) * this;

    /// <summary>Turned by the smallest rotation that takes the unit vector <paramref name="from"/> to <paramref name="to"/> (Rodrigues; not for opposite vectors).</summary>
    public Vector3 Turned(Vector3 from, Vector3 to)
    {
        Vector3 axis = from.Cross(to);
        double cos = from.Dot(to);
        return (cos * this) + axis.Cross(this) + (axis.Dot(this) / (1 + cos) * axis);
    }
}
