using OpenCvSharp;

namespace MarkReader.Imaging.Photos;

/// <summary>Pictures with an alpha channel as they are displayed: on white.</summary>
internal static class Transparency
{
    /// <summary>The picture on white in 8 bits, upright; null when it is opaque everywhere, so that the plain way of decoding does.</summary>
    /// <param name="bgra">As stored, 8 or 16 bits, alpha not multiplied in.</param>
    /// <param name="orientation">EXIF orientation.</param>
    public static Mat? OnWhite(Mat bgra, bool grey, int orientation)
    {
        double full = bgra.Depth() == MatType.CV_16U ? ushort.MaxValue : byte.MaxValue;
        using Mat alpha = bgra.ExtractChannel(3);
        alpha.MinMaxLoc(out double least, out double _);
        if (least >= full)
            return null;
        using Mat stored = grey ? bgra.CvtColor(ColorConversionCodes.BGRA2GRAY) : bgra.CvtColor(ColorConversionCodes.BGRA2BGR);
        using Mat colour = EightBit(stored, full);
        using Mat share = EightBit(alpha, full);
        using Mat shares = grey ? share.Clone() : share.CvtColor(ColorConversionCodes.GRAY2BGR);
        // White less the darkness that shows: 255 − (255 − c)·a/255.
        Cv2.BitwiseNot(colour, colour);
        Cv2.Multiply(colour, shares, colour, 1.0 / byte.MaxValue);
        Cv2.BitwiseNot(colour, colour);
        return Upright(colour, orientation);
    }

    private static Mat EightBit(Mat mat, double full)
    {
        Mat eight = new();
        mat.ConvertTo(eight, MatType.MakeType(MatType.CV_8U, mat.Channels()), byte.MaxValue / full);
        return eight;
    }

    /// <summary>Turned as EXIF orientation says (CIPA DC-008, 4.6.4, tag 274).</summary>
    private static Mat Upright(Mat stored, int orientation)
    {
        using Mat turned = orientation >= 5 ? stored.T() : stored.Clone();
        return orientation switch
        {
            2 or 6 => turned.Flip(FlipMode.Y),
            3 or 7 => turned.Flip(FlipMode.XY),
            4 or 8 => turned.Flip(FlipMode.X),
            _ => turned.Clone(),
        };
    }
}
