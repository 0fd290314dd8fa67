using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>The pixels about a section of an edge by their distance from it, in narrow bins.</summary>
/// <remarks>
/// Nothing is read between the pixels: interpolation draws an edge that lies along rows or columns towards them, by the same amount all along.
/// </remarks>
internal ref struct PixelProfile
{
    /// <summary>Bins per px.</summary>
    private const int Fineness = 4;

    private readonly Span<double> _places, _values, _weights;

    /// <param name="buffer">At least <see cref="Room"/> long.</param>
    public PixelProfile(Span<double> buffer)
    {
        int third = buffer.Length / 3;
        _places = buffer[..third];
        _values = buffer[third..(2 * third)];
        _weights = buffer[(2 * third)..];
    }

    /// <summary>Bins with pixels in them.</summary>
    public int Count { get; private set; }

    public readonly ReadOnlySpan<double> Places => _places[..Count];

    public readonly ReadOnlySpan<double> Values => _values[..Count];

    public readonly ReadOnlySpan<double> Weights => _weights[..Count];

    /// <summary>Numbers that a profile of this reach needs.</summary>
    public static int Room(int reach) => 3 * ((2 * Fineness * reach) + 1);

    /// <summary>Sorts the pixels in.</summary>
    /// <param name="middle">The section's middle.</param>
    /// <param name="halfLength">From there to either end, px.</param>
    /// <param name="sagitta">How far both ends are off the straight line through the middle along the edge, px; towards white.</param>
    /// <param name="normal">Unit vector across the edge, towards white.</param>
    /// <param name="reach">Distance to either side, px.</param>
    public void Fill(PixelSampler pixels, PixelPoint middle, double halfLength, double sagitta, PixelVector normal, double reach)
    {
        _values.Clear();
        _places.Clear();
        _weights.Clear();
        double spanX = (reach * Math.Abs(normal.X)) + (halfLength * Math.Abs(normal.Y)), spanY = (reach * Math.Abs(normal.Y)) + (halfLength * Math.Abs(normal.X));
        for (int y = (int)Math.Ceiling(middle.Y - spanY); y <= middle.Y + spanY; y++)
        {
            for (int x = (int)Math.Ceiling(middle.X - spanX); x <= middle.X + spanX; x++)
            {
                double dx = x - middle.X, dy = y - middle.Y;
                double along = ((dy * normal.X) - (dx * normal.Y)) / halfLength;
                if (Math.Abs(along) > 1)
                    continue;
                double across = (dx * normal.X) + (dy * normal.Y) - (sagitta * along * along);
                if (Math.Abs(across) >= reach)
                    continue;
                int bin = (int)((across + reach) * Fineness);
                _places[bin] += across;
                _values[bin] += pixels[x, y];
                _weights[bin]++;
            }
        }

        Count = 0;
        for (int bin = 0; bin < _weights.Length; bin++)
        {
            double n = _weights[bin];
            if (n > 0)
                (_places[Count], _values[Count], _weights[Count++]) = (_places[bin] / n, _values[bin] / n, n);
        }
    }

    /// <summary>Takes a fall of the light out.</summary>
    /// <param name="slope">Its relative change per px across the edge.</param>
    public readonly void Level(double slope)
    {
        for (int i = 0; i < Count; i++)
            _values[i] /= 1 + (slope * _places[i]);
    }
}
