namespace MarkReader.Imaging.Photos;

/// <summary>Pixel value to linear light by the sRGB curve (IEC 61966-2-1:1999). Blur and light add in linear light, so edges are located there.</summary>
internal static class LinearLight
{
    public static readonly float[] Table = [.. Enumerable.Range(0, 256).Select(i => (float)Decode(i / 255.0))];

    private static double Decode(double v) => v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
}
