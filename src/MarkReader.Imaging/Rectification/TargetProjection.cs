using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>The tape's surface to the photo and back: the view of the card with its print scale and the height of the tape above it.</summary>
/// <param name="view">Printed card to photo.</param>
/// <param name="print">True over nominal lengths of the print.</param>
/// <param name="height">Height of the tape above the card, mm.</param>
internal sealed class TargetProjection(CardView view, PrintScale print, double height) : ICardProjection
{
    public PixelPoint ToPhoto(CardPoint point) => view.ToPhoto(print.ToPrint(view.Camera.OnPlane(point, height)));

    public CardPoint ToCard(PixelPoint point) => FromPrint(view.ToCard(point));

    public CardProjectionData Data => new(view.Parameters, view.HalfSide, view.Focal, print.U, print.V, height, view.Lens is { } l ? [l.FocalX, l.FocalY, l.Principal.X, l.Principal.Y, l.Lens.K1, l.Lens.K2, l.Lens.K3, l.Lens.P1, l.Lens.P2] : null);

    /// <summary>The point of the tape seen at a place of the printed card's own frame.</summary>
    public CardPoint FromPrint(CardPoint printed) => view.Camera.AtHeight(print.FromPrint(printed), height);

    /// <summary>Carries a covariance from the printed card's frame to the tape.</summary>
    public Covariance2 FromPrint(Covariance2 printed)
    {
        double lift = (view.Camera.Height - height) / view.Camera.Height;
        return printed.Transform(lift * print.U, 0, 0, lift * print.V);
    }
}
