using MarkReader.Cameras.Calibration;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Boards;

/// <summary>What the photos of the board taken so far show, and which are missing before a calibration is worth while.</summary>
/// <param name="Places">In the order of the views.</param>
/// <param name="Missing">In the order in which they should be taken.</param>
public sealed record BoardCoverage(IReadOnlyList<ViewPlace> Places, IReadOnlyList<ViewNeed> Missing)
{
    /// <summary>Photos that a calibration should have (common practice, no source: ten to twenty).</summary>
    public const int EnoughViews = 10;

    /// <summary>Degrees: less tilt counts as straight, more than the other as tilted.</summary>
    private const double Straight = 10, Tilted = 15;

    /// <summary>Share of the picture's width and height that counts as its corner.</summary>
    private const double Corner = 0.25;

    /// <summary>Sightings in a corner that count as reaching it.</summary>
    private const int Reaching = 6;

    /// <summary>Farthest over nearest distance that tells the focal length from the distance.</summary>
    private const double DistanceRatio = 1.2;

    /// <param name="views">At least one; of one size.</param>
    /// <returns>Null when a view does not show the board's plane.</returns>
    public static BoardCoverage? Of(IReadOnlyList<BoardView> views)
    {
        if (views.Count == 0 || CalibrationStart.Of(views) is not { } start)
            return null;
        ViewPlace[] places = [.. views.Select((v, i) => PlaceOf(v, start.Poses[i]))];
        return new(places, [.. NeedsOf(places)]);
    }

    private static IEnumerable<ViewNeed> NeedsOf(ViewPlace[] places)
    {
        if (!places.Any(p => p.Tilt.Degrees < Straight))
            yield return ViewNeed.Straight;
        ViewPlace[] tilted = [.. places.Where(p => p.Tilt.Degrees > Tilted)];
        if (!tilted.Any(p => p.TowardsU < -0.5))
            yield return ViewNeed.FromLeft;
        if (!tilted.Any(p => p.TowardsU > 0.5))
            yield return ViewNeed.FromRight;
        if (!tilted.Any(p => p.TowardsV > 0.5))
            yield return ViewNeed.FromAbove;
        if (!tilted.Any(p => p.TowardsV < -0.5))
            yield return ViewNeed.FromBelow;
        // Lying or standing: the doubled angle does not tell up from down.
        if (!places.Any(p => Math.Cos(2 * p.Turn.Radians) > 0.5) || !places.Any(p => Math.Cos(2 * p.Turn.Radians) < -0.5))
            yield return ViewNeed.Turned;
        if (!Enumerable.Range(0, 4).All(c => places.Any(p => p.Corners[c])))
            yield return ViewNeed.Corners;
        if (places.Max(p => p.Distance.Millimetres) < DistanceRatio * places.Min(p => p.Distance.Millimetres))
            yield return ViewNeed.Distance;
        if (places.Length < EnoughViews)
            yield return ViewNeed.More;
    }

    internal static ViewPlace PlaceOf(BoardView view, BoardPose pose)
    {
        (double x, double y, double z) = pose.Origin;
        double distance = Math.Sqrt((x * x) + (y * y) + (z * z));
        // The camera seen from the board: −Rᵀ·t.
        double u = -((pose[0, 0] * x) + (pose[1, 0] * y) + (pose[2, 0] * z)), v = -((pose[0, 1] * x) + (pose[1, 1] * y) + (pose[2, 1] * z));
        double across = Math.Max(1e-9, Math.Sqrt((u * u) + (v * v)));
        (double left, double right) = (Corner * view.Photo.Width, (1 - Corner) * view.Photo.Width);
        (double top, double bottom) = (Corner * view.Photo.Height, (1 - Corner) * view.Photo.Height);
        bool[] corners =
        [
            Reaches(p => p.X < left && p.Y < top), Reaches(p => p.X > right && p.Y < top),
            Reaches(p => p.X < left && p.Y > bottom), Reaches(p => p.X > right && p.Y > bottom),
        ];
        return new(
            Angle.FromRadians(Math.Acos(Math.Min(1, pose.CosineOfTilt))),
            u / across,
            v / across,
            Angle.FromRadians(Math.Atan2(-pose[1, 0], pose[0, 0])),
            Length.FromMillimetres(distance),
            corners);

        bool Reaches(Func<PixelPoint, bool> inside) => view.Sightings.Count(s => inside(s.Seen)) >= Reaching;
    }
}
