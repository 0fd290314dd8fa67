using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>A value for every pixel of a <see cref="ZoneGrid"/>; NaN where nothing is known.</summary>
internal sealed class ZoneMap(ZoneGrid grid, float[] values)
{
    public ZoneGrid Grid { get; } = grid;

    public float[] Values { get; } = values.Length == grid.Size * grid.Size ? values : throw new ArgumentException("The map must fill its grid.", nameof(values));

    public float this[int x, int y] => Values[(y * Grid.Size) + x];

    /// <summary>The value at a point, bilinearly; NaN beyond the grid and where a neighbour is.</summary>
    public double Between(CardPoint at)
    {
        (double x, double y) = Grid.ToPixel(at);
        int ix = (int)Math.Floor(x), iy = (int)Math.Floor(y);
        if (ix < 0 || iy < 0 || ix >= Grid.Size - 1 || iy >= Grid.Size - 1)
            return double.NaN;
        double fx = x - ix, fy = y - iy;
        double top = this[ix, iy] + (fx * (this[ix + 1, iy] - this[ix, iy]));
        double bottom = this[ix, iy + 1] + (fx * (this[ix + 1, iy + 1] - this[ix, iy + 1]));
        return top + (fy * (bottom - top));
    }

    /// <summary>Means over blocks of factor × factor pixels; NaN pixels are left out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The blocks would not fill the grid.</exception>
    public ZoneMap Reduce(int factor)
    {
        if (factor < 1 || Grid.Size % factor != 0)
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "The factor must divide the grid's size.");
        ZoneGrid small = new(Grid.HalfSide, Grid.Size / factor);
        float[] means = new float[small.Size * small.Size];
        for (int y = 0; y < small.Size; y++)
        {
            for (int x = 0; x < small.Size; x++)
            {
                double sum = 0;
                int count = 0;
                for (int dy = 0; dy < factor; dy++)
                {
                    int row = (((y * factor) + dy) * Grid.Size) + (x * factor);
                    for (int dx = 0; dx < factor; dx++)
                    {
                        float v = Values[row + dx];
                        if (float.IsNaN(v))
                            continue;
                        sum += v;
                        count++;
                    }
                }

                means[(y * small.Size) + x] = count > 0 ? (float)(sum / count) : float.NaN;
            }
        }

        return new(small, means);
    }
}
