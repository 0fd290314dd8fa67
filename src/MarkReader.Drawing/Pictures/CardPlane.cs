using MarkReader.Quantities;

namespace MarkReader.Drawing.Pictures;

/// <summary>Where points of the card frame lie in a picture: u to the right, v up, one scale for both.</summary>
/// <param name="Middle">The card point at <paramref name="At"/>.</param>
/// <param name="At">In the picture, px.</param>
/// <param name="PixelsPerMm">The scale.</param>
public sealed record CardPlane(CardPoint Middle, PixelPoint At, double PixelsPerMm)
{
    public PixelPoint Place(CardPoint point) => At + Move(point - Middle);

    public PixelVector Move(CardVector vector) => new(PixelsPerMm * vector.U, -PixelsPerMm * vector.V);

    internal IEnumerable<PixelPoint> Outline(Ellipse ellipse, CardPoint centre) => ellipse.Outline(centre, 72).Select(Place);
}
