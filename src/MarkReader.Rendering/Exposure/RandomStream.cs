namespace MarkReader.Rendering.Exposure;

/// <summary>A small generator for one row of noise (SplitMix64: Steele, Lea, Flood, OOPSLA 2014).</summary>
internal struct RandomStream(ulong seed)
{
    private static readonly float[] s_normal = BuildNormal();
    private ulong _state = seed;

    public ulong Next()
    {
        unchecked
        {
            ulong z = _state += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>Standard normal numbers by inverse transform on 16384 equal cells, four from one word.</summary>
    public void Normals(Span<float> to)
    {
        for (int i = 0; i < to.Length;)
        {
            ulong word = Next();
            for (int k = 0; k < 4 && i < to.Length; k++, i++)
                to[i] = s_normal[(int)((word >> (16 * k)) & 0x3FFF)];
        }
    }

    private static float[] BuildNormal()
    {
        double[] q = [.. Enumerable.Range(0, 16384).Select(i => Surfaces.Normal.Quantile((i + 0.5) / 16384))];
        double scale = Math.Sqrt(q.Sum(x => x * x) / q.Length);
        return [.. q.Select(x => (float)(x / scale))];
    }
}
