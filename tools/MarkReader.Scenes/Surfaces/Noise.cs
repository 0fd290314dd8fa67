namespace MarkReader.Scenes.Surfaces;

/// <summary>Value noise on a lattice, smooth, deterministic, about −1 to 1.</summary>
internal static class Noise
{
    public static float At(double x, double y, int seed)
    {
        double fx = Math.Floor(x);
        double fy = Math.Floor(y);
        int ix = (int)fx;
        int iy = (int)fy;
        float tx = Smooth((float)(x - fx));
        float ty = Smooth((float)(y - fy));
        float top = Lerp(Lattice(ix, iy, seed), Lattice(ix + 1, iy, seed), tx);
        float bottom = Lerp(Lattice(ix, iy + 1, seed), Lattice(ix + 1, iy + 1, seed), tx);
        return Lerp(top, bottom, ty);
    }

    /// <summary>Octaves of noise, each at twice the frequency and half the height.</summary>
    public static float Fractal(double x, double y, int octaves, int seed)
    {
        float sum = 0;
        float weight = 1;
        float total = 0;
        for (int i = 0; i < octaves; i++)
        {
            sum += weight * At(x, y, seed + (i * 101));
            total += weight;
            weight *= 0.5f;
            x *= 2.03;
            y *= 1.97;
        }

        return sum / total;
    }

    /// <summary>A lattice value, −1 to 1.</summary>
    public static float Lattice(int x, int y, int seed)
    {
        unchecked
        {
            uint h = ((uint)x * 0x8da6b343u) ^ ((uint)y * 0xd8163841u) ^ ((uint)seed * 0xcb1ab31fu);
            h ^= h >> 15;
            h *= 0x2c1b3c6du;
            h ^= h >> 12;
            h *= 0x297a2d39u;
            h ^= h >> 15;
            return (h * (2f / uint.MaxValue)) - 1;
        }
    }

    private static float Smooth(float t) => t * t * (3 - (2 * t));

    private static float Lerp(float a, float b, float t) => a + (t * (b - a));
}
