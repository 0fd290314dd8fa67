using MarkReader.Imaging.Photos;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Rectification;

/// <summary>Where the camera stood: the foot of its perpendicular on the card's plane, and its height above it, mm.</summary>
/// <param name="Foot">In the card frame, mm; may lie far outside the card.</param>
/// <param name="Height">Greater than 0, mm.</param>
internal sealed record CameraPlace(CardPoint Foot, double Height)
{
    /// <summary>Focal length of a phone's main camera, 28 mm on 36 mm of the longer side (common practice, no source).</summary>
    private const double UsualFocal = 28.0 / 36;

    /// <summary>Focal length in half diagonals, from EXIF or the usual one of a phone.</summary>
    public static double FocalOf(PhotoHeader header, PhotoSize size)
    {
        // EXIF's 35 mm equivalent refers to the diagonal of 24 mm × 36 mm, 43.27 mm.
        if (header.Exif.FocalLength35 is { } equivalent)
            return equivalent / (43.267 / 2);
        double diagonal = Math.Sqrt(((double)size.Width * size.Width) + ((double)size.Height * size.Height));
        return UsualFocal * Math.Max(size.Width, size.Height) / (diagonal / 2);
    }

    /// <summary>From a homography's eight elements in normalised coordinates (Zhang, IEEE PAMI 22, 2000, section 3.1), principal point in the middle.</summary>
    /// <param name="h">Card / half side to photo / half diagonal.</param>
    /// <param name="half">Half side, mm.</param>
    /// <param name="focal">In half diagonals.</param>
    public static CameraPlace Of(ReadOnlySpan<double> h, double half, double focal)
    {
        // H ~ K·[r1 r2 t] with K = diag(f, f, 1); columns per mm.
        Vector<double> a = Vector<double>.Build.Dense([h[0] / focal / half, h[3] / focal / half, h[6] / half]);
        Vector<double> b = Vector<double>.Build.Dense([h[1] / focal / half, h[4] / focal / half, h[7] / half]);
        Vector<double> t = Vector<double>.Build.Dense([h[2] / focal, h[5] / focal, 1]);
        t *= 2 / (a.L2Norm() + b.L2Norm());
        Vector<double> r1 = a / a.L2Norm();
        Vector<double> r2 = b - (b.DotProduct(r1) * r1);
        r2 /= r2.L2Norm();
        Vector<double> r3 = Vector<double>.Build.Dense([(r1[1] * r2[2]) - (r1[2] * r2[1]), (r1[2] * r2[0]) - (r1[0] * r2[2]), (r1[0] * r2[1]) - (r1[1] * r2[0])]);
        return new(new(-r1.DotProduct(t), -r2.DotProduct(t)), Math.Abs(r3.DotProduct(t)));
    }

    /// <summary>Where a point at a height above the card's plane is seen on that plane.</summary>
    public CardPoint OnPlane(CardPoint p, double height) => Foot + (Height / (Height - height) * (p - Foot));

    /// <summary>The point at a height above the card's plane that is seen at a point of the plane.</summary>
    public CardPoint AtHeight(CardPoint seen, double height) => Foot + ((Height - height) / Height * (seen - Foot));

    /// <summary>Displacement on the plane for one mm of height; its magnitude is the tangent of the angle of sight.</summary>
    public CardVector ByHeight(CardPoint p) => 1 / Height * (p - Foot);

    /// <summary>Angle between the card's normal and the line of sight to a point.</summary>
    public Angle SightAt(CardPoint p) => Angle.FromRadians(Math.Atan(ByHeight(p).Magnitude));
}
