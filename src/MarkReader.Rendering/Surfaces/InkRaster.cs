using System.Collections.Concurrent;
using MarkReader.Cards;
using MarkReader.Quantities;
using MarkReader.Rendering.Exposure;

namespace MarkReader.Rendering.Surfaces;

/// <summary>The card's ink as coverage on a fine raster, with soft printed edges; sampled bilinearly.</summary>
internal sealed class InkRaster
{
    private const double Border = 1;
    private static readonly ConcurrentDictionary<string, Lazy<float[]>> s_coverage = new();
    private static volatile LastPrint? s_last;
    private readonly ushort[] _cells;
    private readonly int _side;
    private readonly double _density;
    private readonly double _half;

    /// <param name="kind">The card or board.</param>
    /// <param name="spread">How far each edge stands out, mm.</param>
    /// <param name="softness">Standard deviation of an edge, mm; at least 1.5 cells.</param>
    public InkRaster(IPrint kind, double spread, double softness)
    {
        (_side, _density, _half) = Size(kind);
        double sigma = Math.Max(1.5, softness * _density);
        _cells = Cells(new(kind.Name, spread, sigma), kind);
    }

    /// <summary>Views of one print follow each other: the last one is taken again while memory allows.</summary>
    private ushort[] Cells(Print print, IPrint kind)
    {
        if (s_last is { } last && last.Print == print && last.Cells.TryGetTarget(out ushort[]? kept))
            return kept;
        float[] soft = Blurred(s_coverage.GetOrAdd(kind.Name, _ => new(() => Coverage(kind))).Value, _side, print.Sigma);
        ushort[] cells = Spread(soft, print.Spread * _density / print.Sigma);
        s_last = new(print, new(cells));
        return cells;
    }

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

    /// <summary>About 64 cells a millimetre for the small card, fewer for a larger one.</summary>
    private static (int Side, double Density, double Half) Size(IPrint kind)
    {
        double half = (Math.Max(kind.Width, kind.Height) / 2) + Border;
        double density = Math.Min(64, 4800 / (2 * half));
        return ((int)Math.Ceiling(2 * half * density), density, half);
    }

    private static float[] Coverage(IPrint kind)
    {
        (int side, double density, double half) = Size(kind);
        float[] coverage = new float[side * side];
        foreach (IReadOnlyList<CardPoint> polygon in kind.Ink.Concat(kind.Labels.SelectMany(LabelStrokes.Of)))
            PolygonCoverage.Add(coverage, side, [.. polygon.Select(p => ((p.U + half) * density, (half - p.V) * density))]);
        return coverage;
    }

    private static float[] Blurred(float[] coverage, int side, double sigma)
    {
        int reach = (int)Math.Ceiling(4 * sigma);
        float[] kernel = [.. Enumerable.Range(-reach, (2 * reach) + 1).Select(i => (float)Math.Exp(-i * i / (2 * sigma * sigma)))];
        float sum = kernel.Sum();
        kernel = [.. kernel.Select(k => k / sum)];
        // All cells are written below.
        float[] along = GC.AllocateUninitializedArray<float>(coverage.Length);
        float[] both = GC.AllocateUninitializedArray<float>(coverage.Length);
        Parallel.For(0, side, row =>
        {
            Span<float> to = along.AsSpan(row * side, side);
            ReadOnlySpan<float> from = coverage.AsSpan(row * side, side);
            if (!from.ContainsAnyExcept(0f))
            {
                to.Clear();
                return;
            }

            float[] padded = new float[side + (2 * reach)];
            from.CopyTo(padded.AsSpan(reach));
            Convolution.WeightedSum(padded, 1, kernel, to);
        });
        Parallel.For(0, side, row =>
        {
            (int first, int last) = (Math.Max(-reach, -row), Math.Min(reach, side - 1 - row));
            Convolution.WeightedSum(along.AsSpan((row + first) * side), side, kernel.AsSpan(first + reach, last - first + 1), both.AsSpan(row * side, side));
        });
        return both;
    }

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

        ushort[] cells = GC.AllocateUninitializedArray<ushort>(coverage.Length);
        Parallel.For(0, 64, part =>
        {
            int end = (int)((part + 1L) * coverage.Length / 64);
            for (int i = (int)((long)part * coverage.Length / 64); i < end; i++)
            {
                if (coverage[i] == 0)
                {
                    cells[i] = table[0];
                    continue;
                }

                float c = Math.Clamp(coverage[i], 0f, 1f) * Steps;
                int k = Math.Min((int)c, Steps - 1);
                cells[i] = (ushort)(table[k] + ((c - k) * (table[k + 1] - table[k])) + 0.5f);
            }
        });
        return cells;
    }

    private readonly record struct Print(string Kind, double Spread, double Sigma);

    private sealed record LastPrint(Print Print, WeakReference<ushort[]> Cells);
}
