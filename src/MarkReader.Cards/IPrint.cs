using MarkReader.Quantities;

namespace MarkReader.Cards;

/// <summary>A printed pattern with markers by which a photo can be located: a card or a calibration board. Origin in its middle, u right, v up, mm.</summary>
public interface IPrint
{
    string Name { get; }

    double Width { get; }

    double Height { get; }

    IReadOnlyList<CardMarker> Markers { get; }

    IReadOnlyList<ChessPatch> Patches { get; }

    IReadOnlyList<CardLabel> Labels { get; }

    /// <summary>Polygons to be filled black, counter-clockwise; labels are not among them.</summary>
    IReadOnlyList<IReadOnlyList<CardPoint>> Ink { get; }
}
