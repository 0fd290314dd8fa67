namespace MarkReader.Quantities;

/// <summary>Semi-axes in millimetres; <paramref name="Direction"/> is the angle of the major axis from u towards v.</summary>
public sealed record Ellipse(double SemiMajor, double SemiMinor, Angle Direction)
{
    /// <summary>Points on the ellipse about <paramref name="centre"/>, evenly spaced in parameter, the first on the major axis.</summary>
    public IEnumerable<CardPoint> Outline(CardPoint centre, int count)
    {
        (double sin, double cos) = Math.SinCos(Direction.Radians);
        for (int i = 0; i < count; i++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * i / count);
            yield return new(
                centre.U + (SemiMajor * c * cos) - (SemiMinor * s * sin),
                centre.V + (SemiMajor * c * sin) + (SemiMinor * s * cos));
        }
    }
}
