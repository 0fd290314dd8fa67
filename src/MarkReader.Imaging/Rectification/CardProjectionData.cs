using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>What is needed to make a photo's projection again without measuring the photo.</summary>
/// <param name="View">The view's parameters: homography, distortion and its centre, bend, growth, focal length.</param>
/// <param name="HalfSide">Half the card's side, mm.</param>
/// <param name="Focal">Assumed focal length in half diagonals of the photo.</param>
/// <param name="PrintU">Measured over nominal length of the print along u.</param>
/// <param name="PrintV">The same along v.</param>
/// <param name="TapeHeight">Height of the tape above the card, mm.</param>
public sealed record CardProjectionData(IReadOnlyList<double> View, double HalfSide, double Focal, double PrintU, double PrintV, double TapeHeight)
{
    /// <returns>Null for a projection that was not fitted to a photo.</returns>
    public static CardProjectionData? Of(ICardProjection projection) => (projection as TargetProjection)?.Data;

    /// <summary>The projection again.</summary>
    /// <param name="photo">The size that the photo was measured at.</param>
    /// <returns>Null when the numbers are those of another version.</returns>
    public ICardProjection? Project(PhotoSize photo)
    {
        double[] numbers = [.. View, HalfSide, Focal, PrintU, PrintV, TapeHeight];
        return View.Count == ViewParameters.Count && numbers.All(double.IsFinite) && HalfSide > 0 && PrintU > 0 && PrintV > 0 && photo is { Width: > 0, Height: > 0 }
            ? new TargetProjection(CardView.FromParameters([.. View], HalfSide, photo, Focal), new(PrintU, PrintV, 0, 0), TapeHeight)
            : null;
    }
}
