using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;

namespace MarkReader.Cameras.CardChecks;

/// <summary>A camera as its profile knows it, for photos of one size.</summary>
/// <param name="Name">The profile's.</param>
/// <param name="Model">In the sensor's frame.</param>
/// <param name="StandardUncertainties">Of fx, fy, cx, cy (px), k1, k2, k3, p1, p2. The terms of the lens depend on each other; what they leave open together stands with k1.</param>
public sealed record KnownCamera(string Name, CameraModel Model, IReadOnlyList<double> StandardUncertainties)
{
    /// <summary>Relative change of the focal length between the board's distance and the card's, as lenses focus (common practice, no source).</summary>
    private const double Focusing = 0.01;

    /// <summary>Move of the axis by a steadied lens, px for a photo 4000 px wide (common practice, no source).</summary>
    private const double Steadying = 2.0 / 4000;

    /// <summary>Distortion at the picture's corner that no profile excludes, of half the diagonal.</summary>
    private const double LeastDistortion = 0.0002;

    /// <summary>Standard deviation of the axis' place from photo to photo, px.</summary>
    internal double Move => Steadying * Model.Photo.Width;

    /// <param name="model">The profile's camera for the size of the photos.</param>
    public static KnownCamera Of(CameraProfile profile, CameraModel model)
    {
        double scale = model.FocalX / profile.Camera.FocalX;
        double corner = Math.Sqrt(((double)model.Photo.Width * model.Photo.Width) + ((double)model.Photo.Height * model.Photo.Height)) / 2;
        double focal = Math.Max(profile.StandardUncertainties[0], profile.StandardUncertainties[1]) * scale;
        // A distortion of d px at the corner is k1·f·(corner/f)³.
        double perPx = model.FocalX * model.FocalX / (corner * corner * corner);
        double lens = Root(profile.LensDoubtPx * scale * perPx, LeastDistortion * corner * perPx, 2 * Focusing * model.Lens.K1);
        double u = Root(focal, Focusing * model.FocalX), move = Steadying * model.Photo.Width;
        return new(
            profile.Name,
            model,
            [u, u, Root(profile.StandardUncertainties[2] * scale, move), Root(profile.StandardUncertainties[3] * scale, move), lens, .. profile.StandardUncertainties.Skip(5)]);
    }

    private static double Root(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (double part in parts)
            sum += part * part;
        return Math.Sqrt(sum);
    }
}
