namespace MarkReader.Imaging.Rectification;

/// <summary>The order of a <see cref="CardView"/>'s parameters; the first eight are the homography's.</summary>
internal static class ViewParameters
{
    public const int Homography = 8;

    public const int K1 = 8;

    public const int K2 = 9;

    /// <summary>Centre of the distortion from the photo's middle, in half diagonals.</summary>
    public const int CentreX = 10;

    public const int CentreY = 11;

    /// <summary>The first of three coefficients of the bend, mm at the card's half side.</summary>
    public const int Bend = 12;

    /// <summary>Growth of black, px.</summary>
    public const int Growth = 15;

    /// <summary>Logarithm of the focal length over the assumed one; it tells from where a bent card is seen.</summary>
    public const int Focal = 16;

    public const int Count = 17;

    /// <summary>A step that changes no point by more than a few hundredths of a pixel.</summary>
    public static double DifferenceStep(int parameter) => parameter switch
    {
        < Homography => 1e-6,
        < Bend => 1e-5,
        _ => 1e-4, // mm, px, and the focal length's logarithm
    };
}
