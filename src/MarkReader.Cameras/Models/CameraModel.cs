using MarkReader.Quantities;

namespace MarkReader.Cameras.Models;

/// <summary>A pinhole with a lens: where a direction in the camera's frame (x right, y down, z ahead) appears in the photo.</summary>
/// <param name="Photo">Size of the photos it describes, as displayed.</param>
/// <param name="FocalX">Focal length in px along x; greater than 0.</param>
/// <param name="FocalY">Focal length in px along y; greater than 0.</param>
/// <param name="Principal">Where the camera's axis meets the photo.</param>
public sealed record CameraModel(PhotoSize Photo, double FocalX, double FocalY, PixelPoint Principal, LensDistortion Lens)
{
    /// <summary>Where the direction (x/z, y/z) appears.</summary>
    public PixelPoint ToPhoto(double x, double y)
    {
        (double u, double v) = Lens.Distort(x, y);
        return new(Principal.X + (FocalX * u), Principal.Y + (FocalY * v));
    }

    /// <summary>The direction (x/z, y/z) seen at a photo point; not a number where the lens shows none.</summary>
    public (double X, double Y) Direction(PixelPoint point) => Lens.Undistort((point.X - Principal.X) / FocalX, (point.Y - Principal.Y) / FocalY);

    /// <summary>Where a pinhole of the same focal length would show what is seen at <paramref name="point"/>.</summary>
    public PixelPoint Ideal(PixelPoint point)
    {
        (double x, double y) = Direction(point);
        return new(Principal.X + (FocalX * x), Principal.Y + (FocalY * y));
    }

    /// <summary>Where the lens shows what a pinhole would show at <paramref name="ideal"/>: the inverse of <see cref="Ideal"/>.</summary>
    public PixelPoint Shown(PixelPoint ideal) => ToPhoto((ideal.X - Principal.X) / FocalX, (ideal.Y - Principal.Y) / FocalY);

    /// <summary>The same camera for photos that were made smaller or larger as a whole; pixel centres are at whole numbers.</summary>
    public CameraModel Resized(PhotoSize size)
    {
        (double sx, double sy) = ((double)size.Width / Photo.Width, (double)size.Height / Photo.Height);
        return this with
        {
            Photo = size,
            FocalX = FocalX * sx,
            FocalY = FocalY * sy,
            Principal = new(((Principal.X + 0.5) * sx) - 0.5, ((Principal.Y + 0.5) * sy) - 0.5),
        };
    }

    /// <summary>The same camera for photos displayed after a quarter turn clockwise.</summary>
    public CameraModel TurnedClockwise() => new(
        new(Photo.Height, Photo.Width),
        FocalY,
        FocalX,
        new(Photo.Height - 1 - Principal.Y, Principal.X),
        Lens with { P1 = Lens.P2, P2 = -Lens.P1 });
}
