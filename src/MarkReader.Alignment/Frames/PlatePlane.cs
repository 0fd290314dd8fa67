namespace MarkReader.Alignment.Frames;

/// <summary>The plane h = H0 + GX·x + GY·y of a plate, h towards the mirror's face (mm), x to the right and y up as seen facing the knobs.</summary>
internal readonly record struct PlatePlane(double H0, double GX, double GY)
{
    /// <summary>The plane through three contacts at these heights.</summary>
    public static PlatePlane Through(IReadOnlyList<FrameContact> c, IReadOnlyList<double> heights)
    {
        double ax = c[1].X - c[0].X, ay = c[1].Y - c[0].Y, bx = c[2].X - c[0].X, by = c[2].Y - c[0].Y;
        double ah = heights[1] - heights[0], bh = heights[2] - heights[0], area = (ax * by) - (ay * bx);
        double gx = ((ah * by) - (bh * ay)) / area, gy = ((ax * bh) - (bx * ah)) / area;
        return new(heights[0] - (gx * c[0].X) - (gy * c[0].Y), gx, gy);
    }

    public double At(double x, double y) => H0 + (GX * x) + (GY * y);
}
