using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Rectification;

/// <summary>A projective map from the card's plane (mm) to the photo (px), as a 3×3 matrix with last element 1.</summary>
/// <remarks>Hartley and Zisserman, Multiple View Geometry, 2nd ed. 2004, section 2.3.</remarks>
internal sealed class Homography
{
    private readonly double[] _m;

    private Homography(double[] m) => _m = m;

    public double this[int row, int column] => _m[(3 * row) + column];

    public static Homography FromElements(params ReadOnlySpan<double> elements) => new(elements.ToArray());

    /// <summary>Least squares of the transfer error in the photo over all pairs; null when they do not determine a map.</summary>
    public static Homography? Fit(IReadOnlyList<(CardPoint Card, PixelPoint Photo)> pairs)
    {
        if (pairs.Count < 4)
            return null;
        using Mat h = Cv2.FindHomography(pairs.Select(p => new Point2d(p.Card.U, p.Card.V)), pairs.Select(p => new Point2d(p.Photo.X, p.Photo.Y)), HomographyMethods.None);
        if (h.Empty())
            return null;
        double[] m = new double[9];
        for (int i = 0; i < 9; i++)
            m[i] = h.At<double>(i / 3, i % 3);
        return m.All(double.IsFinite) ? new(m) : null;
    }

    public PixelPoint Map(CardPoint p)
    {
        double w = (_m[6] * p.U) + (_m[7] * p.V) + _m[8];
        return new(((_m[0] * p.U) + (_m[1] * p.V) + _m[2]) / w, ((_m[3] * p.U) + (_m[4] * p.V) + _m[5]) / w);
    }

    /// <summary>The third homogeneous coordinate; it changes sign at the plane's vanishing line.</summary>
    public double Depth(CardPoint p) => (_m[6] * p.U) + (_m[7] * p.V) + _m[8];
}
