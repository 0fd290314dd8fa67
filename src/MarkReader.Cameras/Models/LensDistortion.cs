namespace MarkReader.Cameras.Models;

/// <summary>Where a lens shows the direction (x/z, y/z): radial terms k1, k2, k3 and decentring terms p1, p2, all without unit.</summary>
/// <remarks>
/// x' = x·(1 + k1·r² + k2·r⁴ + k3·r⁶) + 2·p1·x·y + p2·(r² + 2x²), y' = y·(…) + p1·(r² + 2y²) + 2·p2·x·y
/// (Brown, Photogrammetric Engineering 32, 1966; signs and order as in OpenCV).
/// </remarks>
public sealed record LensDistortion(double K1, double K2, double K3, double P1, double P2)
{
    /// <summary>A lens that shows every direction where it is.</summary>
    public static LensDistortion None { get; } = new(0, 0, 0, 0, 0);

    /// <summary>Where the direction (x, y) is shown.</summary>
    public (double X, double Y) Distort(double x, double y)
    {
        double r2 = (x * x) + (y * y);
        double f = Factor(r2);
        return ((x * f) + (2 * P1 * x * y) + (P2 * (r2 + (2 * x * x))), (y * f) + (P1 * (r2 + (2 * y * y))) + (2 * P2 * x * y));
    }

    /// <summary>The derivatives of <see cref="Distort"/>: (∂x'/∂x, ∂x'/∂y, ∂y'/∂x, ∂y'/∂y).</summary>
    public (double Xx, double Xy, double Yx, double Yy) Slope(double x, double y)
    {
        double r2 = (x * x) + (y * y);
        double f = Factor(r2);
        double d = 2 * (K1 + (r2 * ((2 * K2) + (3 * K3 * r2)))); // df/d(r²) · 2
        double cross = (d * x * y) + (2 * P1 * x) + (2 * P2 * y);
        return (f + (d * x * x) + (2 * P1 * y) + (6 * P2 * x), cross, cross, f + (d * y * y) + (6 * P1 * y) + (2 * P2 * x));
    }

    /// <summary>The direction that is shown at (x', y'), by Newton's method; not a number where the lens shows none.</summary>
    public (double X, double Y) Undistort(double x, double y)
    {
        // From the middle outwards the first direction found is the one that is seen; a step is held within the rising part.
        (double u, double v) = Start(x, y);
        for (int i = 0; i < 40; i++)
        {
            (double dx, double dy) = Distort(u, v);
            (double ex, double ey) = (x - dx, y - dy);
            if ((ex * ex) + (ey * ey) < 1e-28)
                return (u, v);
            (double a, double b, double c, double d) = Slope(u, v);
            double det = (a * d) - (b * c);
            if (!(det > 1e-4))
                return (double.NaN, double.NaN);
            u += ((d * ex) - (b * ey)) / det;
            v += ((a * ey) - (c * ex)) / det;
        }

        (double lx, double ly) = Distort(u, v);
        return Math.Abs(lx - x) + Math.Abs(ly - y) < 1e-9 ? (u, v) : (double.NaN, double.NaN);
    }

    private double Factor(double r2) => 1 + (r2 * (K1 + (r2 * (K2 + (r2 * K3)))));

    /// <summary>A few steps of fixed-point iteration, halved where the lens turns over.</summary>
    private (double X, double Y) Start(double x, double y)
    {
        (double u, double v) = (x, y);
        for (int i = 0; i < 4; i++)
        {
            double f = Factor((u * u) + (v * v));
            if (f < 0.3)
                return (x, y);
            (u, v) = (x / f, y / f);
        }

        return double.IsFinite(u) && double.IsFinite(v) ? (u, v) : (x, y);
    }
}
