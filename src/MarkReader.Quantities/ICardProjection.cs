namespace MarkReader.Quantities;

/// <summary>Where points of the card's plane appear in one photo, in both directions.</summary>
public interface ICardProjection
{
    /// <summary>The photo point of a card point.</summary>
    PixelPoint ToPhoto(CardPoint point);

    /// <summary>The card point seen at a photo point.</summary>
    CardPoint ToCard(PixelPoint point);
}
