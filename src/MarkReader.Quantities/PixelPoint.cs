namespace MarkReader.Quantities;

/// <summary>A point in the photo, in pixels: x right, y down, (0, 0) the centre of the top-left pixel as displayed, after EXIF orientation.</summary>
public readonly record struct PixelPoint(double X, double Y)
{
    public static PixelPoint operator +(PixelPoint point, PixelVector vector) => new(point.X + vector.X, point.Y + vector.Y);

    public static PixelVector operator -(PixelPoint to, PixelPoint from) => new(to.X - from.X, to.Y - from.Y);

    /// <summary>Distance to <paramref name="other"/> in pixels.</summary>
    public double DistanceTo(PixelPoint other) => (this - other).Magnitude;
}
