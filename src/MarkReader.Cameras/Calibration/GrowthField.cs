using MarkReader.Quantities;

namespace MarkReader.Cameras.Calibration;

/// <summary>How far black seems to reach beyond its edges in one photo, px: a second-degree polynomial over the photo, and a part that turns with the edge.</summary>
/// <remarks>
/// A developed picture is no linear measure of light, so that a blurred edge seems moved towards one side, by more or less as the light is
/// more or less: across a photo as its light falls off; and as the blur is more or less: that of the ink, where the board is tilted, by the
/// edge's direction. Opposite edges tell it from distortion.
/// </remarks>
internal sealed class GrowthField(PhotoSize photo, IReadOnlyList<double> terms)
{
    public const int Count = 8;

    private readonly double _half = Math.Sqrt(((double)photo.Width * photo.Width) + ((double)photo.Height * photo.Height)) / 2;

    public double this[int term] => terms[term];

    /// <summary>As drawn.</summary>
    public static GrowthField None(PhotoSize photo) => new(photo, new double[Count]);

    /// <summary>The growth at a point of the photo.</summary>
    /// <param name="across">Unit vector across the edge.</param>
    /// <param name="slopes">Filled with its <see cref="Count"/> derivatives by the terms.</param>
    public double At(PixelPoint point, PixelVector across, Span<double> slopes)
    {
        double x = (point.X - ((photo.Width - 1) / 2.0)) / _half, y = (point.Y - ((photo.Height - 1) / 2.0)) / _half;
        (slopes[0], slopes[1], slopes[2], slopes[3], slopes[4], slopes[5]) = (1, x, y, x * x, x * y, y * y);
        (slopes[6], slopes[7]) = ((across.X * across.X) - (across.Y * across.Y), 2 * across.X * across.Y);
        double sum = 0;
        for (int i = 0; i < Count; i++)
            sum += terms[i] * slopes[i];
        return sum;
    }

    public GrowthField Moved(ReadOnlySpan<double> by)
    {
        double[] moved = [.. terms];
        for (int i = 0; i < Count; i++)
            moved[i] += by[i];
        return new(photo, moved);
    }
}
