using MarkReader.Quantities;

namespace MarkReader.Cameras.Boards;

/// <summary>What one photo of a board gave.</summary>
/// <param name="Name">The photo's name, for messages.</param>
/// <param name="Photo">Size as displayed.</param>
/// <param name="Sightings">At least those of a few edges or corners in two directions.</param>
public sealed record BoardView(string Name, PhotoSize Photo, IReadOnlyList<BoardSighting> Sightings);
