using MarkReader.Imaging.Rectification;
using OpenCvSharp;

namespace MarkReader.Imaging.Marks;

/// <summary>The light that the bare target would show, and how much darker each place is than that.</summary>
/// <remarks>
/// Dark areas up to the largest mark are found by an area closing, which leaves the edges of tape and of shadows alone, and bridged with a
/// margin for their halos by a membrane, which carries gradients and shadow edges across.
/// </remarks>
internal static class ZoneBackground
{
    /// <summary>Largest dark area that may be a mark, mm².</summary>
    private const double LargestArea = 180;

    /// <summary>Share of the light that must be missing for a place to be bridged.</summary>
    private const float LeastDarkening = 0.06f;

    /// <summary>Margin around a dark area that its halo may take, mm.</summary>
    private const double HaloMargin = 1.1;

    /// <summary>How much brighter than the level of its rim a dark area's ground may be: light changes by less across a mark.</summary>
    private const float MostOverFilled = 1.06f;

    /// <summary>Smoothing of the bare target, mm, which stops at steps of this share of the usual light: the edges of tape and of shadows.</summary>
    private const double Smoothing = 0.5;
    private const double EdgeContrast = 0.1;

    /// <summary>Light at which a pixel is taken as clipped: it tells nothing of how bright the place is.</summary>
    private const float Clipped = 0.985f;

    /// <summary>1 − light / background, −1 to 1, on the grid of <paramref name="light"/>; NaN where the photo is clipped.</summary>
    /// <param name="light">The zone in linear light.</param>
    /// <param name="reduction">Pixels of the zone per pixel of the background map.</param>
    public static ZoneMap Darkening(ZoneMap light, int reduction)
    {
        ZoneMap coarse = light.Reduce(reduction);
        using Mat background = Background(coarse);
        int size = light.Grid.Size;
        using Mat full = new();
        Cv2.Resize(background, full, new Size(size, size), 0, 0, InterpolationFlags.Linear);
        full.GetArray(out float[] b);
        float[] darkening = new float[b.Length];
        for (int i = 0; i < b.Length; i++)
            darkening[i] = light.Values[i] >= Clipped ? float.NaN : Math.Clamp(1 - (light.Values[i] / Math.Max(b[i], 1e-3f)), -1, 1);
        return new(light.Grid, darkening);
    }

    private static Mat Background(ZoneMap coarse)
    {
        int size = coarse.Grid.Size;
        double scale = coarse.Grid.PixelsPerMm;
        float typical = Median(coarse.Values);
        using Mat raw = new(size, size, MatType.CV_32FC1);
        raw.SetArray([.. coarse.Values.Select(v => float.IsNaN(v) ? typical : v)]);
        using Mat calm = raw.MedianBlur(3);
        calm.GetArray(out float[] values);
        float[] filled = AreaClosing.Fill(values, size, (int)(LargestArea * scale * scale));
        bool[] gap = Gaps(values, filled, size, scale);
        for (int i = 0; i < values.Length; i++)
            values[i] = gap[i] ? filled[i] : values[i];
        Membrane.Span(values, gap, size);
        // A gap at the edge of a strip of tape must not be lit by what lies beyond the edge.
        for (int i = 0; i < values.Length; i++)
            values[i] = Math.Min(values[i], MostOverFilled * filled[i]);
        using Mat bridged = new(size, size, MatType.CV_32FC1);
        bridged.SetArray(values);
        return bridged.BilateralFilter(-1, EdgeContrast * typical, Smoothing * scale, BorderTypes.Replicate);
    }

    private static bool[] Gaps(float[] values, float[] filled, int size, double scale)
    {
        using Mat dark = new(size, size, MatType.CV_8UC1);
        dark.SetArray([.. values.Zip(filled, (v, f) => (byte)(v < f * (1 - LeastDarkening) ? 255 : 0))]);
        // Specks are grain, not marks.
        using Mat spots = dark.MorphologyEx(MorphTypes.Open, Cv2.GetStructuringElement(MorphShapes.Rect, new Size(3, 3)));
        int radius = (int)Math.Ceiling(HaloMargin * scale);
        using Mat disc = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size((2 * radius) + 1, (2 * radius) + 1));
        using Mat wide = spots.Dilate(disc);
        wide.GetArray(out byte[] mask);
        return [.. mask.Select(m => m > 0)];
    }

    private static float Median(IEnumerable<float> values)
    {
        float[] sorted = [.. values.Where(v => !float.IsNaN(v)).Order()];
        return sorted.Length == 0 ? 0.5f : sorted[sorted.Length / 2];
    }
}
