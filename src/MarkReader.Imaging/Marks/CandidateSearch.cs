using MarkReader.Imaging.Rectification;
using OpenCvSharp;

namespace MarkReader.Imaging.Marks;

/// <summary>Finds the darkest spot that is left in the zone and describes the areas around it that stand out at several levels.</summary>
internal sealed class CandidateSearch : IDisposable
{
    /// <summary>Smoothing before the search, mm: below the smallest mark, above the tape's grain.</summary>
    private const double Smoothing = 0.2;

    /// <summary>Pen lines and tape edges up to twice these widths are cut off an area, mm; a small mark survives the first only.</summary>
    private static readonly double[] s_thinRadii = [1.0, 0.7, 0.4];

    /// <summary>How far a stroke stands out before it counts, and how far its blur reaches, mm; and the area it must have, mm².</summary>
    private const double StrokeMargin = 0.25;
    private const double LeastStrokeArea = 0.15;

    /// <summary>Parts of the depth at which an area is outlined: half first; higher ones part a mark from what it lies in.</summary>
    private static readonly double[] s_levels = [0.5, 0.7, 0.85];

    private readonly ZoneGrid _grid;
    private readonly Mat _dark = new();
    private readonly Mat _open;

    public CandidateSearch(ZoneMap darkening)
    {
        _grid = darkening.Grid;
        _open = Mat.Ones(_grid.Size, _grid.Size, MatType.CV_8UC1);
        Look(darkening);
        Noise = RobustSpread(_dark);
    }

    /// <summary>Robust standard deviation of the smoothed darkening of the bare target.</summary>
    public double Noise { get; }

    /// <summary>Takes a new map, such as one with a mark divided out; what was closed stays closed.</summary>
    public void Look(ZoneMap darkening)
    {
        using Mat raw = new(_grid.Size, _grid.Size, MatType.CV_32FC1);
        raw.SetArray([.. darkening.Values.Select(v => float.IsNaN(v) ? 0 : v)]);
        double sigma = Smoothing * _grid.PixelsPerMm;
        Cv2.GaussianBlur(raw, _dark, new Size(), sigma, sigma, BorderTypes.Replicate);
    }

    /// <summary>The darkest open place, or null when none is as dark as <paramref name="leastDepth"/>.</summary>
    public DarkSpot? Darkest(double leastDepth)
    {
        Cv2.MinMaxLoc(_dark, out _, out double depth, out _, out Point peak, _open);
        return depth < leastDepth ? null : new(peak, depth);
    }

    /// <summary>The areas about a spot to be judged, in the order in which to judge them.</summary>
    public IEnumerable<MarkArea> Areas(DarkSpot spot)
    {
        List<MarkCandidate> seen = [];
        foreach (double level in s_levels)
        {
            foreach (double thin in s_thinRadii)
            {
                foreach ((Point[] outline, HiddenPlaces? strokes) in Outlines(spot, level, thin))
                {
                    MarkCandidate candidate = Describe(outline, spot.Depth);
                    if (seen.Any(c => c.Centre.DistanceTo(candidate.Centre) < 0.1 && Math.Abs(c.Diameter - candidate.Diameter) < 0.1 * c.Diameter))
                        continue;
                    seen.Add(candidate);
                    yield return new(candidate, outline, strokes);
                }
            }
        }
    }

    /// <summary>What to say of a spot that has no area left once its thin parts are cut off.</summary>
    public MarkCandidate Thin(DarkSpot spot) => new(_grid.ToCard(spot.Peak.X, spot.Peak.Y), 0, spot.Depth, 0, 0, 0, MarkObjection.Thin);

    /// <summary>Closes an area to later calls.</summary>
    public void Close(Point[] outline)
    {
        Cv2.DrawContours(_open, [outline], 0, Scalar.Black, -1);
        Cv2.DrawContours(_open, [outline], 0, Scalar.Black, 3);
    }

    /// <summary>Closes all that is connected with a spot at half its depth.</summary>
    public void Close(DarkSpot spot)
    {
        if (OutlineAround(spot, s_levels[0]) is { } outline)
            Close(outline);
        Cv2.Circle(_open, spot.Peak, 2, Scalar.Black, -1);
    }

    public void Dispose()
    {
        _dark.Dispose();
        _open.Dispose();
    }

    /// <summary>
    /// Outlines of the areas at a level that belong to the spot's connected region, thin parts cut off, holes filled, largest first, each with
    /// the thin parts where they leave it.
    /// </summary>
    private IEnumerable<(Point[] Outline, HiddenPlaces? Strokes)> Outlines(DarkSpot spot, double level, double thin)
    {
        if (OutlineAround(spot, level) is not { } around)
            yield break;
        using Mat filled = Mat.Zeros(_grid.Size, _grid.Size, MatType.CV_8UC1);
        Cv2.DrawContours(filled, [around], 0, Scalar.White, -1);
        using Mat opened = filled.MorphologyEx(MorphTypes.Open, Disc(thin));
        Cv2.FindContours(opened, out Point[][] parts, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        foreach (Point[] part in parts.OrderByDescending(p => Cv2.ContourArea(p)))
            yield return (part, Strokes(filled, part));
    }

    /// <summary>What is connected with an area but not part of it, with a margin; null when that is next to nothing.</summary>
    private HiddenPlaces? Strokes(Mat filled, Point[] part)
    {
        using Mat area = Mat.Zeros(_grid.Size, _grid.Size, MatType.CV_8UC1);
        Cv2.DrawContours(area, [part], 0, Scalar.White, -1);
        using Mat grown = area.Dilate(Disc(StrokeMargin));
        using Mat outside = new();
        Cv2.BitwiseNot(grown, outside);
        using Mat rest = new();
        Cv2.BitwiseAnd(filled, outside, rest);
        using Mat strokes = rest.MorphologyEx(MorphTypes.Open, Cv2.GetStructuringElement(MorphShapes.Rect, new Size(2, 2)));
        if (Cv2.CountNonZero(strokes) < LeastStrokeArea * _grid.PixelsPerMm * _grid.PixelsPerMm)
            return null;
        using Mat wide = strokes.Dilate(Disc(StrokeMargin));
        wide.GetArray(out byte[] mask);
        return new(_grid, [.. mask.Select(m => m > 0)]);
    }

    private Mat Disc(double radius)
    {
        int r = (int)Math.Round(radius * _grid.PixelsPerMm);
        return Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size((2 * r) + 1, (2 * r) + 1));
    }

    private Point[]? OutlineAround(DarkSpot spot, double level)
    {
        using Mat region = Region(spot, level);
        Cv2.FindContours(region, out Point[][] contours, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        return contours.Where(c => Cv2.PointPolygonTest(c, new Point2f(spot.Peak.X, spot.Peak.Y), false) >= 0).MaxBy(c => c.Length);
    }

    private Mat Region(DarkSpot spot, double level)
    {
        using Mat above = new();
        Cv2.Threshold(_dark, above, spot.Depth * level, 255, ThresholdTypes.Binary);
        Mat region = new();
        above.ConvertTo(region, MatType.CV_8UC1);
        using Mat closed = new();
        Cv2.Compare(_open, Scalar.Black, closed, CmpTypes.EQ);
        region.SetTo(Scalar.Black, closed);
        return region;
    }

    private MarkCandidate Describe(Point[] outline, double depth)
    {
        using Mat filled = Mat.Zeros(_grid.Size, _grid.Size, MatType.CV_8UC1);
        Cv2.DrawContours(filled, [outline], 0, Scalar.White, -1);
        Moments m = Cv2.Moments(filled, binaryImage: true);
        double area = Math.Max(1, m.M00);
        double mean = ((m.Mu20 + m.Mu02) / area / 2) + (1.0 / 12);
        double half = Math.Sqrt(Square((m.Mu20 - m.Mu02) / area / 2) + Square(m.Mu11 / area));
        // The hull runs through pixel centres; half a pixel all round makes it comparable with the pixel count.
        Point[] hull = Cv2.ConvexHull(outline);
        double hullArea = Cv2.ContourArea(hull) + (Cv2.ArcLength(hull, true) / 2) + 1;
        double border = (_grid.Size / 2.0) - 1.5;
        double centre = (_grid.Size - 1) / 2.0;
        double atBorder = outline.Count(p => Math.Max(Math.Abs(p.X - centre), Math.Abs(p.Y - centre)) >= border) / (double)outline.Length;
        return new(
            _grid.ToCard(m.M00 > 0 ? m.M10 / m.M00 : outline[0].X, m.M00 > 0 ? m.M01 / m.M00 : outline[0].Y),
            2 * Math.Sqrt(area / Math.PI) / _grid.PixelsPerMm,
            depth,
            Math.Sqrt((mean - half) / (mean + half)),
            Math.Min(1, area / hullArea),
            atBorder,
            null);
    }

    private static double RobustSpread(Mat map)
    {
        map.GetArray(out float[] values);
        Array.Sort(values);
        float median = values[values.Length / 2];
        // The bright half only: marks darken, they do not brighten.
        float low = values[(int)(0.159 * values.Length)];
        return median - low;
    }

    private static double Square(double x) => x * x;
}

/// <summary>A dark place on the search map: its pixel and its darkening.</summary>
internal sealed record DarkSpot(Point Peak, double Depth);
