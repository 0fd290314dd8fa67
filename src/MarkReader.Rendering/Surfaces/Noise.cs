namespace MarkReader.Rendering.Surfaces;

/// <summary>Value noise on a lattice, smooth, deterministic, about −1 to 1; it repeats after 512 cells.</summary>
internal static class Noise
{
    private const int Mask = 511;
    private static readonly float[] s_lattice = [.. Enumerable.Range(0, (Mask + 1) * (Mask + 1)).Select(i => Hash(i & Mask, i / (Mask + 1), 1))];

    public static float At(double x, double y, int seed)
    {
        x += (seed * 37) & Mask;
        y += (seed * 91) & Mask;
        int ix = (int)x - (x < 0 ? 1 : 0);
        int iy = (int)y - (y < 0 ? 1 : 0);
        float tx = Smooth((float)(x - ix));
        float ty = Smooth((float)(y - iy));
        int left = ix & Mask;
        int right = (ix + 1) & Mask;
        float[] lattice = s_lattice;
        int above = (iy & Mask) * (Mask + 1);
        int below = ((iy + 1) & Mask) * (Mask + 1);
        float top = Lerp(lattice[above + left], lattice[above + right], tx);
        float bottom = Lerp(lattice[below + left], lattice[below + right], tx);
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

    /// <summary>A number from −1 to 1 that belongs to three integers.</summary>
    public static float Hash(int x, int y, int seed)
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
