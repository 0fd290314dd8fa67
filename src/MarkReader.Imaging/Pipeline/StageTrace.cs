using System.Globalization;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Pipeline;

/// <summary>Writes every stage's picture to a folder, numbered in order, when a folder is given; does nothing otherwise.</summary>
internal sealed class StageTrace(string? directory)
{
    private static readonly Scalar s_good = new(178, 114, 0);   // blue, as BGR
    private static readonly Scalar s_bad = new(0, 94, 213);     // vermilion
    private static readonly Scalar s_note = new(115, 158, 0);   // green

    private int _number;

    public bool On => directory is not null;

    public void Sightings(Mat reduced, PixelScale scale, IReadOnlyList<MarkerSighting> sightings)
    {
        if (!On)
            return;
        using Mat picture = reduced.CvtColor(ColorConversionCodes.GRAY2BGR);
        foreach (MarkerSighting sighting in sightings)
        {
            Point[] quad = [.. sighting.Corners.Select(scale.ToReduced).Select(p => new Point(p.X, p.Y))];
            picture.Polylines([quad], true, s_good, 2, LineTypes.AntiAlias);
            picture.Circle(quad[0], 4, s_bad, 2);
            picture.PutText(sighting.Id.ToString(CultureInfo.InvariantCulture), quad[0], HersheyFonts.HersheySimplex, 0.8, s_bad, 2);
        }

        Write("markers", picture);
    }

    public void Edges(GreyPhoto photo, RegisteredCard card)
    {
        if (!On)
            return;
        using Mat picture = photo.Pixels.CvtColor(ColorConversionCodes.GRAY2BGR);
        foreach (EdgeMeasurement e in card.Edges)
        {
            PixelPoint p = card.View.ToPhoto(e.Card) + (e.Offset * e.Normal);
            PixelPoint from = p + (-6 * e.Normal), to = p + (6 * e.Normal);
            picture.Line(new Point(from.X, from.Y), new Point(to.X, to.Y), s_good, 1, LineTypes.AntiAlias);
            picture.Circle(new Point(p.X, p.Y), 2, s_bad, -1);
        }

        double half = card.Kind.OuterSide / 2;
        Point[] outline = [.. ((CardPoint[])[new(-half, half), new(half, half), new(half, -half), new(-half, -half)]).Select(card.View.ToPhoto).Select(p => new Point(p.X, p.Y))];
        picture.Polylines([outline], true, s_note, 2, LineTypes.AntiAlias);
        Rect box = Cv2.BoundingRect(outline);
        box.Inflate(20, 20);
        Rect inside = box.Intersect(new Rect(0, 0, picture.Width, picture.Height));
        if (inside.Width > 0 && inside.Height > 0)
        {
            using Mat crop = new(picture, inside);
            Write("edges", crop);
        }
    }

    public void Map(string name, ZoneMap map, double black, double white)
    {
        if (!On)
            return;
        using Mat picture = ToPicture(map, black, white);
        Write(name, picture);
    }

    public void Candidates(ZoneMap background, IReadOnlyList<MarkCandidate> candidates)
    {
        if (!On)
            return;
        using Mat grey = ToPicture(background, 0, 1);
        using Mat picture = grey.CvtColor(ColorConversionCodes.GRAY2BGR);
        foreach (MarkCandidate c in candidates)
        {
            Scalar colour = c.Rejection is null ? s_good : s_bad;
            (double x, double y) = background.Grid.ToPixel(c.Centre);
            picture.Circle(new Point(x, y), Math.Max(3, (int)(c.Diameter / 2 * background.Grid.PixelsPerMm)), colour, 2, LineTypes.AntiAlias);
            picture.PutText(c.Rejection?.ToString() ?? "mark", new Point(Math.Max(0, x - 60), y), HersheyFonts.HersheySimplex, 0.5, colour, 1, LineTypes.AntiAlias);
        }

        Write("candidates", picture);
    }

    private static Mat ToPicture(ZoneMap map, double black, double white)
    {
        Mat picture = new(map.Grid.Size, map.Grid.Size, MatType.CV_8UC1);
        for (int y = 0; y < map.Grid.Size; y++)
        {
            for (int x = 0; x < map.Grid.Size; x++)
                picture.Set(y, x, (byte)Math.Clamp(255 * (map[x, y] - black) / (white - black), 0, 255));
        }

        return picture;
    }

    private void Write(string name, Mat picture)
    {
        Directory.CreateDirectory(directory!);
        _number++;
        Cv2.ImEncode(".png", picture, out byte[] bytes);
        File.WriteAllBytes(Path.Combine(directory!, $"{_number:00}-{name}.png"), bytes);
    }
}
