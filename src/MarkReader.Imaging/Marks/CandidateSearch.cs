using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Marks;

/// <summary>Finds the darkest spot that is left in the zone and describes the region around it that is at least half as dark.</summary>
internal sealed class CandidateSearch : IDisposable
{
    /// <summary>Smoothing before the search, mm: below the smallest mark, above the tape's grain.</summary>
    private const double Smoothing = 0.2;

    private readonly ZoneGrid _grid;
    private readonly double _zoneHalf;
    private readonly Mat _dark;
    private readonly Mat _open;

    public CandidateSearch(ZoneMap darkening, double zoneSide)
    {
        _grid = darkening.Grid;
        _zoneHalf = zoneSide / 2;
        using Mat raw = new(_grid.Size, _grid.Size, MatType.CV_32FC1);
        raw.SetArray([.. darkening.Values.Select(v => float.IsNaN(v) ? 0 : v)]);
        _dark = new();
        double sigma = Smoothing * _grid.PixelsPerMm;
        Cv2.GaussianBlur(raw, _dark, new Size(), sigma, sigma, BorderTypes.Replicate);
        _open = Mat.Ones(_grid.Size, _grid.Size, MatType.CV_8UC1);
        Noise = RobustSpread(_dark);
    }

    /// <summary>Robust standard deviation of the smoothed darkening of the bare target.</summary>
    public double Noise { get; }

    /// <summary>The next spot, or null when none is left that stands out; its region is closed to later calls.</summary>
    public MarkCandidate? Next(double leastDepth)
    {
        Cv2.MinMaxLoc(_dark, out _, out double depth, out _, out Point peak, _open);
        if (depth < leastDepth)
            return null;
        using Mat region = new();
        Cv2.Threshold(_dark, region, depth / 2, 255, ThresholdTypes.Binary);
        using Mat bytes = new();
        region.ConvertTo(bytes, MatType.CV_8UC1);
        Cv2.BitwiseAnd(bytes, bytes, bytes, _open);
        Point[] outline = OutlineAround(bytes, peak);
        MarkCandidate candidate = Describe(outline, depth);
        Close(outline);
        return candidate;
    }

    /// <summary>Closes a disc to later calls.</summary>
    public void Close(CardPoint centre, double radius)
    {
        (double x, double y) = _grid.ToPixel(centre);
        Cv2.Circle(_open, new Point(x, y), (int)Math.Ceiling(radius * _grid.PixelsPerMm), Scalar.Black, -1);
    }

    public void Dispose()
    {
        _dark.Dispose();
        _open.Dispose();
    }

    private void Close(Point[] outline)
    {
        Cv2.DrawContours(_open, [outline], 0, Scalar.Black, -1);
        Cv2.DrawContours(_open, [outline], 0, Scalar.Black, 3);
    }

    private static Point[] OutlineAround(Mat region, Point peak)
    {
        Cv2.FindContours(region, out Point[][] contours, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        return contours.Where(c => Cv2.PointPolygonTest(c, new Point2f(peak.X, peak.Y), false) >= 0).MaxBy(c => c.Length) ?? [peak];
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
