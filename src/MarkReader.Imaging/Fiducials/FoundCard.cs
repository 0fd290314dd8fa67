using MarkReader.Cards;
using MarkReader.Imaging.Rectification;

namespace MarkReader.Imaging.Fiducials;

/// <summary>A card recognised by markers that agree on one plane.</summary>
/// <param name="Markers">The markers that agree.</param>
/// <param name="Rough">Card to photo, good to a few pixels.</param>
/// <param name="OtherCards">Further cards in view.</param>
internal sealed record FoundCard(CardKind Kind, IReadOnlyList<MarkerSighting> Markers, Homography Rough, int OtherCards);

/// <summary>Markers of one print that agree on one plane.</summary>
/// <param name="Rough">Print to photo, good to a few pixels.</param>
internal sealed record MarkerGroup<T>(T Print, IReadOnlyList<MarkerSighting> Markers, Homography Rough)
    where T : class, IPrint;

/// <summary>The cards in view that can be measured, the best seen first; at least one.</summary>
internal sealed record FoundCards(IReadOnlyList<FoundCard> InOrder);
