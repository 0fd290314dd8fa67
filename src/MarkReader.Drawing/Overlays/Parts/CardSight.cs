using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>Sees the card's plane in a frame of the photo. Points beyond the plane's horizon are known as such.</summary>
/// <remarks>
/// A homography maps every point to somewhere, points behind the camera too. Along a straight line from a point a in front, the image runs
/// P(t) − P(0) = t·c/w(t), c a constant vector, w the depth's sign: it leaves P(0) in the direction of c, and lies against it
/// once w &lt; 0. So the direction tells the side of the horizon.
/// </remarks>
internal sealed class CardSight
{
    private const double Small = 0.05; // mm, for differences
    private const double Reach = 3; // how many frames beyond the frame lines are drawn to

    private readonly ICardProjection _projection;
    private readonly PixelBox _reach;

    public CardSight(ICardProjection projection, PixelFrame frame)
    {
        (_projection, Frame) = (projection, frame.Box);
        _reach = Frame.Grown(Reach * Math.Max(frame.Width, frame.Height));
    }

    public PixelBox Frame { get; }

    /// <summary>The image of a point, or null when it lies beyond the horizon or far outside the frame.</summary>
    public PixelPoint? Find(CardPoint point)
    {
        PixelPoint image = _projection.ToPhoto(point);
        return IsInFront(point, image) && _reach.Holds(image) ? image : null;
    }

    /// <summary>The image of a point if it lies in the frame, else null.</summary>
    public PixelPoint? FindInFrame(CardPoint point) => Find(point) is { } image && Frame.Holds(image) ? image : null;

    /// <summary>The images of points; one that cannot be seen is drawn in towards <paramref name="inside"/>, which can, until it is far outside the frame.</summary>
    public IReadOnlyList<PixelPoint> Trace(CardPoint inside, IEnumerable<CardPoint> points) => [.. points.Select(p => Find(p) ?? Last(inside, p, Find).Image)];

    /// <summary>Where the way from a point in the frame to one outside leaves the frame, and the point of the card there.</summary>
    public (PixelPoint Image, CardPoint Point) Leaves(CardPoint inside, CardPoint outside) => Last(inside, outside, FindInFrame);

    /// <summary>Pixels per millimetre at a point: the geometric mean of both directions.</summary>
    public double Scale(CardPoint point)
    {
        PixelPoint at = _projection.ToPhoto(point);
        PixelVector u = _projection.ToPhoto(new(point.U + Small, point.V)) - at;
        PixelVector v = _projection.ToPhoto(new(point.U, point.V + Small)) - at;
        return Math.Sqrt(Math.Abs((u.X * v.Y) - (u.Y * v.X))) / Small;
    }

    private bool IsInFront(CardPoint point, PixelPoint image)
    {
        double distance = point.DistanceTo(CardPoint.Origin);
        if (distance < Small)
            return true;
        PixelPoint start = _projection.ToPhoto(CardPoint.Origin);
        PixelVector leaving = _projection.ToPhoto(CardPoint.Origin + ((Small / distance) * (point - CardPoint.Origin))) - start;
        PixelVector whole = image - start;
        return (leaving.X * whole.X) + (leaving.Y * whole.Y) > 0; // false for NaN
    }

    private static (PixelPoint Image, CardPoint Point) Last(CardPoint inside, CardPoint outside, Func<CardPoint, PixelPoint?> find)
    {
        (double seen, double unseen) = (0, 1);
        for (int i = 0; i < 60; i++)
        {
            double middle = (seen + unseen) / 2;
            if (find(inside + (middle * (outside - inside))) is null)
                unseen = middle;
            else
                seen = middle;
        }

        CardPoint last = inside + (seen * (outside - inside));
        return (find(last) ?? default, last);
    }
}
