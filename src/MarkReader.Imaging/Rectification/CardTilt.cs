using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>The angle at which a card is seen.</summary>
internal static class CardTilt
{
    /// <summary>Focal length over the longer side when EXIF says nothing: 28 mm on 36 mm, the usual main camera of a phone (common practice, no source).</summary>
    private const double UsualFocal = 28.0 / 36;

    /// <summary>
    /// Angle between the card's normal and the line of sight to its centre, from the scale along both axes of the card with the principal point
    /// in the middle (Hartley and Zisserman 2004, section 8.1: the plane's axes seen through the focal length).
    /// </summary>
    public static Angle Of(RegisteredCard card, PhotoSize size, PhotoHeader header)
    {
        double diagonal = Math.Sqrt(((double)size.Width * size.Width) + ((double)size.Height * size.Height));
        // EXIF's 35 mm equivalent refers to the diagonal of 24 mm × 36 mm, 43.27 mm.
        double f = header.FocalLength35 is { } equivalent ? equivalent / 43.267 * diagonal : UsualFocal * Math.Max(size.Width, size.Height);
        PixelPoint centre = card.View.ToPhoto(CardPoint.Origin);
        double x = (centre.X - ((size.Width - 1) / 2.0)) / f, y = (centre.Y - ((size.Height - 1) / 2.0)) / f;
        (double xu, double xv, double yu, double yv) = card.View.Jacobian(CardPoint.Origin);
        // The affine map of the plane across the line of sight: rotate the view so that the card's centre is on the axis, then compare
        // the two singular values; seen at an angle t, one shrinks by cos t.
        double d2 = 1 + (x * x) + (y * y);
        double d = Math.Sqrt(d2);
        double r2 = (x * x) + (y * y);
        (double cx, double cy) = r2 > 0 ? (x / Math.Sqrt(r2), y / Math.Sqrt(r2)) : (1, 0);
        // Radially an angle covers d² pixels more than at the axis, tangentially d.
        (double a, double b) = ((cx * xu) + (cy * yu), (cx * xv) + (cy * yv));
        (double p, double q) = ((-cy * xu) + (cx * yu), (-cy * xv) + (cx * yv));
        (a, b, p, q) = (a / d2, b / d2, p / d, q / d);
        double sum = (a * a) + (b * b) + (p * p) + (q * q);
        double det = Math.Abs((a * q) - (b * p));
        double root = Math.Sqrt(Math.Max(0, (sum * sum / 4) - (det * det)));
        double ratio = Math.Sqrt(Math.Max(0, ((sum / 2) - root) / ((sum / 2) + root)));
        return Angle.FromRadians(Math.Acos(Math.Clamp(ratio, 0, 1)));
    }
}
