using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>A camera's profile as one photo's card is fitted with it.</summary>
/// <param name="Model">The camera for the photo as displayed.</param>
/// <param name="Prior">What the profile leaves open.</param>
internal sealed record KnownLens(CameraModel Model, ViewPrior Prior)
{
    /// <summary>Relative change of the focal length between the board's distance and the card's, as lenses focus (common practice, no source).</summary>
    private const double Focusing = 0.01;

    /// <summary>Distortion that no profile excludes, at the picture's corner.</summary>
    private const double Least = 0.0002;

    /// <summary>Focal length in half diagonals of the photo.</summary>
    public double Focal => (Model.FocalX + Model.FocalY) / 2 / HalfDiagonal(Model.Photo);

    /// <param name="displayed">The profile's camera for the photo as displayed.</param>
    public static KnownLens Of(CameraProfile profile, CameraModel displayed)
    {
        double radius = HalfDiagonal(displayed.Photo);
        double corner = new[] { new PixelPoint(0, 0), new PixelPoint(displayed.Photo.Width - 1, displayed.Photo.Height - 1) }
            .Max(p => p.DistanceTo(displayed.Ideal(p)) is var d && double.IsFinite(d) ? d : 0.1 * radius) / radius;
        double doubt = profile.LensDoubtPx / HalfDiagonal(profile.Camera.Photo);
        // The distortion scales with the square of the direction's tangent, so twice with the focal length.
        return new(displayed, ViewPrior.Profiled(Math.Sqrt((doubt * doubt) + (4 * Focusing * Focusing * corner * corner) + (Least * Least))));
    }

    private static double HalfDiagonal(PhotoSize size) => Math.Sqrt(((double)size.Width * size.Width) + ((double)size.Height * size.Height)) / 2;
}
