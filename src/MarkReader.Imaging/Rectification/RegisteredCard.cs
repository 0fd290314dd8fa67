using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>A print whose place in the photo is known to a fraction of a pixel; other parameters as of <see cref="RegisteredCard"/>.</summary>
/// <param name="Seen">Where each edge section was seen, with the growth of black; only its place across the edge counts.</param>
internal sealed record RegisteredPrint(CardView View, IReadOnlyList<EdgeMeasurement> Edges, IReadOnlyList<PixelPoint> Seen, double Residual, double Misfit)
{
    /// <summary>Whether the photo shows another lens than the camera's profile says.</summary>
    public bool LensDiffers { get; init; }
}

/// <summary>A card whose place in the photo is known to a fraction of a pixel.</summary>
/// <param name="View">Card to photo with its covariance.</param>
/// <param name="Edges">The edge sections used.</param>
/// <param name="Residual">Root mean square of the used sections' distances, px.</param>
/// <param name="Misfit">The part of the residual that the profiles' noise does not explain, px: a card that is not flat, a lens, a poor print.</param>
internal sealed record RegisteredCard(CardKind Kind, CardView View, IReadOnlyList<EdgeMeasurement> Edges, double Residual, double Misfit)
{
    /// <summary>Whether the photo shows another lens than the camera's profile says.</summary>
    public bool LensDiffers { get; init; }

    /// <summary>Scale at the card's centre, px per mm: root of the area ratio.</summary>
    public double PixelsPerMm
    {
        get
        {
            (double xu, double xv, double yu, double yv) = View.Jacobian(CardPoint.Origin);
            return Math.Sqrt(Math.Abs((xu * yv) - (xv * yu)));
        }
    }
}
