using MarkReader.Cameras.Models;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>What is needed to make a photo's projection again without measuring the photo.</summary>
/// <param name="View">The view's parameters: homography, distortion and its centre, bend, growth, focal length.</param>
/// <param name="HalfSide">Half the card's side, mm.</param>
/// <param name="Focal">Assumed focal length in half diagonals of the photo.</param>
/// <param name="PrintU">Measured over nominal length of the print along u.</param>
/// <param name="PrintV">The same along v.</param>
/// <param name="TapeHeight">Height of the tape above the card, mm.</param>
/// <param name="Lens">The camera's profile for this photo: fx, fy, cx, cy (px), k1, k2, k3, p1, p2; null without one.</param>
public sealed record CardProjectionData(IReadOnlyList<double> View, double HalfSide, double Focal, double PrintU, double PrintV, double TapeHeight, IReadOnlyList<double>? Lens = null)
{
    /// <returns>Null for a projection that was not fitted to a photo.</returns>
    public static CardProjectionData? Of(ICardProjection projection) => (projection as TargetProjection)?.Data;

    /// <summary>The projection again.</summary>
    /// <param name="photo">The size that the photo was measured at.</param>
    /// <returns>Null when the numbers are those of another version.</returns>
    public ICardProjection? Project(PhotoSize photo)
    {
        double[] numbers = [.. View, HalfSide, Focal, PrintU, PrintV, TapeHeight, .. Lens ?? []];
        return View.Count == ViewParameters.Count && (Lens is null or { Count: 9 }) && numbers.All(double.IsFinite) && HalfSide > 0 && PrintU > 0 && PrintV > 0 && photo is { Width: > 0, Height: > 0 }
            ? new TargetProjection(CardView.FromParameters([.. View], HalfSide, photo, Focal, LensOf(photo)), new(PrintU, PrintV, 0, 0), TapeHeight)
            : null;
    }

    private CameraModel? LensOf(PhotoSize photo) =>
        Lens is { } l ? new(photo, l[0], l[1], new(l[2], l[3]), new(l[4], l[5], l[6], l[7], l[8])) : null;
}
