using System.Collections.Concurrent;
using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Scenes.Surfaces;

/// <summary>The card's ink as coverage on a fine raster, with soft printed edges; sampled bilinearly.</summary>
internal sealed class InkRaster
{
    private static readonly ConcurrentDictionary<(string Kind, double Spread, double Softness), InkRaster> s_cache = new();
    private readonly ushort[] _cells;
    private readonly int _side;
    private readonly double _density;
    private readonly double _half;

    private InkRaster(CardKind kind, double spread, double softness)
    {
        _half = (kind.OuterSide / 2) + 1;
        _density = Math.Min(64, 4800 / (2 * _half));
        _side = (int)Math.Ceiling(2 * _half * _density);
        float[] coverage = new float[_side * _side];
        foreach (IReadOnlyList<CardPoint> polygon in PrintedInk.Polygons(kind).Concat(kind.Labels.SelectMany(LabelStrokes.Of)))
            PolygonCoverage.Add(coverage, _side, [.. polygon.Select(p => (((p.U + _half) * _density), (_half - p.V) * _density))]);
        double sigma = Math.Max(1.5, softness * _density);
        Blur(coverage, sigma);
        _cells = Spread(coverage, spread * _density / sigma);
    }

    public static InkRaster Of(CardKind kind, double spread, double softness) =>
        s_cache.GetOrAdd((kind.Name, spread, softness), _ => new(kind, spread, softness));

    /// <summary>Share of ink at a card point, 0 to 1.</summary>
    public float At(double u, double v)
    {
        double x = ((u + _half) * _density) - 0.5;
        double y = ((_half - v) * _density) - 0.5;
        if (x < 0 || y < 0 || x >= _side - 1 || y >= _side - 1)
            return 0;
        int ix = (int)x;
        int iy = (int)y;
        float tx = (float)(x - ix);
        float ty = (float)(y - iy);
        int at = (iy * _side) + ix;
        float top = _cells[at] + (tx * (_cells[at + 1] - _cells[at]));
        float bottom = _cells[at + _side] + (tx * (_cells[at + _side + 1] - _cells[at + _side]));
        return (top + (ty * (bottom - top))) * (1f / ushort.MaxValue);
    }

    private void Blur(float[] cells, double sigma)
    {
        int reach = (int)Math.Ceiling(4 * sigma);
        float[] kernel = [.. Enumerable.Range(-reach, (2 * reach) + 1).Select(i => (float)Math.Exp(-i * i / (2 * sigma * sigma)))];
        float sum = kernel.Sum();
        kernel = [.. kernel.Select(k => k / sum)];
        float[] other = new float[cells.Length];
        Pass(cells, other, kernel, 1);
        Pass(other, cells, kernel, _side);
    }

    private void Pass(float[] from, float[] to, float[] kernel, int stride) => Parallel.For(0, _side, row =>
    {
        int reach = kernel.Length / 2;
        for (int column = 0; column < _side; column++)
        {
            int position = stride == 1 ? column : row;
            int at = (row * _side) + column;
            float sum = 0;
            int low = Math.Max(-reach, -position);
            int high = Math.Min(reach, _side - 1 - position);
            for (int i = low; i <= high; i++)
                sum += kernel[i + reach] * from[at + (i * stride)];
            to[at] = sum;
        }
    });

    /// <summary>Moves every edge outwards by <paramref name="sigmas"/> of its own width: exact for straight edges, c' = Φ(Φ⁻¹(c) + s).</summary>
    private static ushort[] Spread(float[] coverage, double sigmas)
    {
        const int Steps = 4096;
        ushort[] table = new ushort[Steps + 1];
        for (int i = 0; i <= Steps; i++)
        {
            double c = i / (double)Steps;
            double moved = i is 0 or Steps ? c : Normal.Distribution(Normal.Quantile(c) + sigmas);
            table[i] = (ushort)Math.Round(moved * ushort.MaxValue);
        }

        ushort[] cells = new ushort[coverage.Length];
        Parallel.For(0, 64, part =>
        {
            int end = (int)((part + 1L) * coverage.Length / 64);
            for (int i = (int)((long)part * coverage.Length / 64); i < end; i++)
            {
                float c = Math.Clamp(coverage[i], 0f, 1f) * Steps;
                int k = Math.Min((int)c, Steps - 1);
                cells[i] = (ushort)(table[k] + ((c - k) * (table[k + 1] - table[k])) + 0.5f);
            }
        });
        return cells;
    }
}
