using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>Where the camera stood over the card, as far as the photo tells.</summary>
/// <param name="Foot">Foot of its perpendicular on the card's plane, in the card frame (mm); may lie far outside the card.</param>
/// <param name="Height">Its height above the card's plane; greater than zero.</param>
public sealed record CameraStand(CardPoint Foot, Length Height)
{
    /// <summary>Where a mark that was measured at <paramref name="mark"/> is moved for every mm by which the tape stands higher than was taken for it.</summary>
    public CardVector PerTapeHeight(CardPoint mark) => -1 * Place.ByHeight(mark);

    /// <summary>Where a point at a height above the card's plane is seen on that plane.</summary>
    public CardPoint OnPlane(CardPoint point, Length height) => Place.OnPlane(point, height.Millimetres);

    /// <summary>The point at a height above the card's plane that is seen at a point of the plane.</summary>
    public CardPoint AtHeight(CardPoint seen, Length height) => Place.AtHeight(seen, height.Millimetres);

    private CameraPlace Place => new(Foot, Height.Millimetres);
}
