namespace MarkReader.Rendering.Surfaces;

/// <summary>Exact (rectangles) or finely sampled (others) area coverage of a polygon on a raster; cell (i, j) spans i..i+1, j..j+1.</summary>
internal static class PolygonCoverage
{
    private const int SubRows = 32;

    public static void Add(float[] cells, int side, (double X, double Y)[] points)
    {
        if (points.Length == 4 && points.Select(p => p.X).Distinct().Count() == 2 && points.Select(p => p.Y).Distinct().Count() == 2)
            AddRectangle(cells, side, points);
        else
            AddScan(cells, side, points);
    }

    private static void AddRectangle(float[] cells, int side, (double X, double Y)[] points)
    {
        double left = points.Min(p => p.X);
        double right = points.Max(p => p.X);
        double top = points.Min(p => p.Y);
        double bottom = points.Max(p => p.Y);
        for (int j = Math.Max(0, (int)top); j < Math.Min(side, Math.Ceiling(bottom)); j++)
            AddSpan(cells, side, j, left, right, Math.Min(j + 1, bottom) - Math.Max(j, top));
    }

    private static void AddScan(float[] cells, int side, (double X, double Y)[] points)
    {
        int first = Math.Max(0, (int)points.Min(p => p.Y));
        int last = Math.Min(side - 1, (int)points.Max(p => p.Y));
        List<double> crossings = [];
        for (int row = first * SubRows; row < (last + 1) * SubRows; row++)
        {
            double y = (row + 0.5) / SubRows;
            crossings.Clear();
            for (int i = 0; i < points.Length; i++)
            {
                (double ax, double ay) = points[i];
                (double bx, double by) = points[(i + 1) % points.Length];
                if ((ay <= y) != (by <= y))
                    crossings.Add(ax + ((y - ay) / (by - ay) * (bx - ax)));
            }

            crossings.Sort();
            for (int i = 0; i + 1 < crossings.Count; i += 2)
                AddSpan(cells, side, row / SubRows, crossings[i], crossings[i + 1], 1.0 / SubRows);
        }
    }

    private static void AddSpan(float[] cells, int side, int row, double left, double right, double weight)
    {
        for (int i = Math.Max(0, (int)left); i < Math.Min(side, Math.Ceiling(right)); i++)
            cells[(row * side) + i] += (float)(weight * (Math.Min(i + 1, right) - Math.Max(i, left)));
    }
}
