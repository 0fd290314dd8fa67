namespace MarkReader.Rendering.Exposure;

/// <summary>Linear light to sRGB (IEC 61966-2-1), with a share of the S-curve t²(3 − 2t) that a phone's development has.</summary>
public sealed class ToneCurve
{
    private readonly ushort[] _display = new ushort[1 << 17];

    /// <param name="share">Share of the S-curve, 0 to 1.</param>
    public ToneCurve(double share)
    {
        for (int i = 0; i < _display.Length; i++)
        {
            double v = i / (double)(_display.Length - 1);
            double t = v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055;
            _display[i] = (ushort)Math.Round(65535 * (((1 - share) * t) + (share * t * t * (3 - (2 * t)))));
        }
    }

    /// <summary>The displayed value, 0 to 65535, of a linear one (0 to 1; clipped beyond).</summary>
    public ushort At(float linear) => _display[(int)((Math.Clamp(linear, 0f, 1f) * (_display.Length - 1)) + 0.5f)];

    /// <summary>A displayed value of 16 bits in 8.</summary>
    public static byte ToByte(ushort value) => (byte)(((value * 255) + 32767) / 65535);

    /// <summary>The picture as displayed: rows from the top, three bytes R, G, B to the pixel, no padding.</summary>
    public byte[] ToRgb(LinearImage image)
    {
        ArgumentNullException.ThrowIfNull(image);
        byte[] rgb = new byte[3 * image.Width * image.Height];
        for (int p = 0; p < 3; p++)
        {
            float[] plane = image.Planes[p];
            for (int i = 0; i < plane.Length; i++)
                rgb[(3 * i) + p] = ToByte(At(plane[i]));
        }

        return rgb;
    }
}
