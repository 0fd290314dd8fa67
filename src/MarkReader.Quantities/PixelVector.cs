namespace MarkReader.Quantities;

/// <summary>A displacement in the photo, in pixels (x right, y down).</summary>
public readonly record struct PixelVector(double X, double Y)
{
    /// <summary>Length of the displacement in pixels.</summary>
    public double Magnitude => Math.Sqrt((X * X) + (Y * Y));

    public static PixelVector operator +(PixelVector left, PixelVector right) => new(left.X + right.X, left.Y + right.Y);

    public static PixelVector operator *(double factor, PixelVector vector) => new(factor * vector.X, factor * vector.Y);
}
