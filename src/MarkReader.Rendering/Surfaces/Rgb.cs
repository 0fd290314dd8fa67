using System.Runtime.CompilerServices;

namespace MarkReader.Rendering.Surfaces;

/// <summary>A colour in linear light: albedo, transmission or radiance by channel.</summary>
/// <remarks>Its operations are asked to be inlined: calls that hand it over in memory took a tenth of a picture's time.</remarks>
internal readonly record struct Rgb(float R, float G, float B)
{
    public static Rgb Grey(double value) => new((float)value, (float)value, (float)value);

    /// <summary>From sRGB components 0 to 255 (IEC 61966-2-1).</summary>
    public static Rgb FromDisplay(double r, double g, double b) => new(Linear(r), Linear(g), Linear(b));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Rgb operator +(Rgb a, Rgb b) => new(a.R + b.R, a.G + b.G, a.B + b.B);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Rgb operator *(Rgb a, Rgb b) => new(a.R * b.R, a.G * b.G, a.B * b.B);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Rgb operator *(float f, Rgb a) => new(f * a.R, f * a.G, f * a.B);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Rgb Mix(Rgb a, Rgb b, float t) => new(a.R + (t * (b.R - a.R)), a.G + (t * (b.G - a.G)), a.B + (t * (b.B - a.B)));

    private static float Linear(double v)
    {
        v /= 255;
        return (float)(v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4));
    }
}
