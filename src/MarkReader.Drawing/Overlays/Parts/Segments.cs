using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>Straight pieces in the photo.</summary>
internal static class Segments
{
    /// <summary>Distance of a point from a piece, px.</summary>
    public static double Distance(PixelPoint point, PixelPoint from, PixelPoint to)
    {
        PixelVector along = to - from;
        double squared = (along.X * along.X) + (along.Y * along.Y);
        PixelVector offset = point - from;
        double t = squared == 0 ? 0 : Math.Clamp(((offset.X * along.X) + (offset.Y * along.Y)) / squared, 0, 1);
        return point.DistanceTo(from + (t * along));
    }

    /// <summary>Whether a piece has a point in a box (Liang and Barsky's clipping, ACM Trans. Graphics 3 (1984) 1–22).</summary>
    public static bool Meet(PixelPoint from, PixelPoint to, PixelBox box)
    {
        (double enter, double leave) = (0, 1);
        PixelVector d = to - from;
        return Cut(-d.X, from.X - box.Left, ref enter, ref leave) && Cut(d.X, box.Right - from.X, ref enter, ref leave)
            && Cut(-d.Y, from.Y - box.Top, ref enter, ref leave) && Cut(d.Y, box.Bottom - from.Y, ref enter, ref leave);
    }

    private static bool Cut(double p, double q, ref double enter, ref double leave)
    {
        if (p == 0)
            return q >= 0;
        double t = q / p;
        if (p < 0)
            enter = Math.Max(enter, t);
        else
            leave = Math.Min(leave, t);
        return enter <= leave;
    }
}
