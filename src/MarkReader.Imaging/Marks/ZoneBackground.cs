using MarkReader.Imaging.Rectification;
using OpenCvSharp;

namespace MarkReader.Imaging.Marks;

/// <summary>The light that the bare target would show: a grey closing that fills dark spots and keeps shadows wider than a mark (Serra, Image Analysis and Mathematical Morphology, 1982).</summary>
internal static class ZoneBackground
{
    /// <summary>Marks up to twice this radius are filled, mm.</summary>
    private const double Radius = 6;

    /// <summary>Light at which a pixel is taken as clipped: it tells nothing of how bright the place is.</summary>
    private const float Clipped = 0.985f;

    /// <summary>1 − light / background, −1 to 1, on the grid of <paramref name="light"/>; NaN where the photo is clipped.</summary>
    /// <param name="light">The zone in linear light.</param>
    /// <param name="reduction">Pixels of the zone per pixel of the background map.</param>
    public static ZoneMap Darkening(ZoneMap light, int reduction)
    {
        using Mat background = Background(light, reduction);
        int size = light.Grid.Size;
        using Mat full = new();
        Cv2.Resize(background, full, new Size(size, size), 0, 0, InterpolationFlags.Linear);
        full.GetArray(out float[] b);
        float[] darkening = new float[b.Length];
        for (int i = 0; i < b.Length; i++)
            darkening[i] = light.Values[i] >= Clipped ? float.NaN : Math.Clamp(1 - (light.Values[i] / Math.Max(b[i], 1e-3f)), -1, 1);
        return new(light.Grid, darkening);
    }

    private static Mat Background(ZoneMap light, int reduction)
    {
        ZoneMap coarse = light.Reduce(reduction);
        float typical = Median(coarse.Values);
        using Mat map = new(coarse.Grid.Size, coarse.Grid.Size, MatType.CV_32FC1);
        map.SetArray([.. coarse.Values.Select(v => float.IsNaN(v) ? typical : v)]);
        int radius = (int)Math.Ceiling(Radius * coarse.Grid.PixelsPerMm);
        using Mat calm = map.MedianBlur(3);
        using Mat padded = calm.CopyMakeBorder(radius, radius, radius, radius, BorderTypes.Replicate);
        using Mat disc = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size((2 * radius) + 1, (2 * radius) + 1));
        using Mat closed = padded.MorphologyEx(MorphTypes.Close, disc);
        using Mat cut = new(closed, new Rect(radius, radius, map.Width, map.Height));
        Mat smooth = new();
        double sigma = 1.0 * coarse.Grid.PixelsPerMm;
        Cv2.GaussianBlur(cut, smooth, new Size(), sigma, sigma, BorderTypes.Replicate);
        return smooth;
    }

    private static float Median(IEnumerable<float> values)
    {
        float[] sorted = [.. values.Where(v => !float.IsNaN(v)).Order()];
        return sorted.Length == 0 ? 0.5f : sorted[sorted.Length / 2];
    }
}
