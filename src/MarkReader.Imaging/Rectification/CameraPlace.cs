using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Where the camera stood: the foot of its perpendicular on the card's plane, and its height above it, mm.</summary>
/// <param name="Foot">In the card frame, mm; may lie far outside the card.</param>
/// <param name="Height">Greater than 0, mm.</param>
internal sealed record CameraPlace(CardPoint Foot, double Height)
{
    /// <summary>From the view's homography and the focal length of EXIF, or the usual one of a phone (Zhang, IEEE PAMI 22, 2000, section 3.1).</summary>
    public static CameraPlace Of(CardView view, PhotoHeader header)
    {
        // In units of half the diagonal; EXIF's 35 mm equivalent refers to the diagonal of 24 mm × 36 mm, 43.27 mm.
        double focal = header.FocalLength35 is { } equivalent ? equivalent / (43.267 / 2) : view.UsualFocal;
        return view.CameraAt(focal);
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
