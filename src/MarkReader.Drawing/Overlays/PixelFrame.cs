using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>A rectangle of whole pixels of a photo.</summary>
/// <param name="Left">Column of its first pixel.</param>
/// <param name="Top">Row of its first pixel.</param>
public sealed record PixelFrame(int Left, int Top, int Width, int Height)
{
    public static PixelFrame Whole(PhotoSize photo) => new(0, 0, photo.Width, photo.Height);

    /// <summary>Its area. A pixel reaches half a pixel to either side of its centre.</summary>
    public PixelBox Box => new(Left - 0.5, Top - 0.5, Left + Width - 0.5, Top + Height - 0.5);
}

/// <summary>An upright rectangle in a photo, px.</summary>
public sealed record PixelBox(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public PixelPoint Middle => new((Left + Right) / 2, (Top + Bottom) / 2);

    public static PixelBox Around(IEnumerable<PixelPoint> points)
    {
        PixelPoint[] all = [.. points];
        return new(all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X), all.Max(p => p.Y));
    }

    public PixelBox Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public PixelBox Joined(PixelBox other) =>
        new(Math.Min(Left, other.Left), Math.Min(Top, other.Top), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    public bool Holds(PixelPoint point) => point.X >= Left && point.X <= Right && point.Y >= Top && point.Y <= Bottom;

    public bool Holds(PixelBox other) => other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    public bool Meets(PixelBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>The point of the rectangle nearest to a point.</summary>
    public PixelPoint Nearest(PixelPoint point) => new(Math.Clamp(point.X, Left, Right), Math.Clamp(point.Y, Top, Bottom));
}
