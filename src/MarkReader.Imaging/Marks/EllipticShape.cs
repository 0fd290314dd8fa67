namespace MarkReader.Imaging.Marks;

/// <summary>The shape of an ellipse apart from its size: r² = ((1 + e1)·du² + 2·e2·du·dv + (1 − e1)·dv²)/√(1 − e1² − e2²) is 1 on an ellipse of the unit circle's area. Default: a circle.</summary>
internal readonly record struct EllipticShape(double E1, double E2)
{
    /// <summary>0 for a circle, below 1.</summary>
    public double Elongation => Math.Sqrt((E1 * E1) + (E2 * E2));

    /// <summary>Minor over major axis.</summary>
    public double AxisRatio => Math.Sqrt((1 - Elongation) / (1 + Elongation));

    /// <summary>The elliptic radius r of a displacement from the centre.</summary>
    public double Radius(double du, double dv) =>
        Math.Sqrt((((1 + E1) * du * du) + (2 * E2 * du * dv) + ((1 - E1) * dv * dv)) / Math.Sqrt(1 - (E1 * E1) - (E2 * E2)));

    /// <summary>Distance from the centre to the ellipse with r = 1 in a direction (from u towards v, rad).</summary>
    public double At(double angle)
    {
        (double s, double c) = Math.SinCos(angle);
        return 1 / Radius(c, s);
    }
}
