using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>Chooses the part of a photo worth showing: the free zone, the marks and the aim point with a margin.</summary>
internal static class CropChooser
{
    private const double Margin = 0.12; // of the longer side, on every side
    private const double WidestShape = 1.5; // width to height
    private const double TallestShape = 0.8;
    private const double WholeFrom = 0.8; // a crop nearly as wide and high as the photo is the photo

    public static PixelFrame Choose(OverlayScene scene)
    {
        PixelFrame whole = PixelFrame.Whole(scene.Photo);
        CardSight sight = new(scene.Projection, whole);
        double half = scene.ZoneSide.Millimetres / 2;
        CardPoint[] zone = [new(-half, -half), new(half, -half), new(half, half), new(-half, half)];
        PixelPoint[] points = [.. zone.Select(sight.Find).OfType<PixelPoint>().Select(whole.Box.Nearest), .. Points(scene.Content).Select(sight.FindInFrame).OfType<PixelPoint>()];
        if (points.Length == 0)
            return whole;
        PixelBox box = PixelBox.Around(points);
        box = box.Grown(Margin * Math.Max(box.Width, box.Height));
        double width = Math.Max(box.Width, box.Height * TallestShape);
        double height = Math.Max(box.Height, width / WidestShape);
        if (width >= WholeFrom * scene.Photo.Width && height >= WholeFrom * scene.Photo.Height)
            return whole;
        (int left, int columns) = Fit(box.Middle.X, width, scene.Photo.Width);
        (int top, int rows) = Fit(box.Middle.Y, height, scene.Photo.Height);
        return new(left, top, columns, rows);
    }

    private static IEnumerable<CardPoint> Points(OverlayContent content) => content switch
    {
        OverlayContent.Aiming a => [a.Near.Centre.Point, a.Far.Centre.Point, a.Aim.Point],
        OverlayContent.Marks m => m.Items.Select(i => i.Centre.Point),
        OverlayContent.Leg l => [.. l.Made.Where(m => m.Counts).Select(m => m.Mark.Centre.Point), .. l.Expected.Select(e => e.Point.Point), .. l.Aim is { } aim ? new[] { aim.Point.Point } : []],
        _ => [],
    };

    /// <summary>First pixel and count of a span about a middle, moved into the photo and cut to its length.</summary>
    private static (int First, int Count) Fit(double middle, double length, int limit)
    {
        int count = Math.Clamp((int)Math.Ceiling(length), 1, limit);
        int first = Math.Clamp((int)Math.Round(middle - (count / 2.0)), 0, limit - count);
        return (first, count);
    }
}
