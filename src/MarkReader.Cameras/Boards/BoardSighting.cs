using MarkReader.Quantities;

namespace MarkReader.Cameras.Boards;

/// <summary>One measurement in a photo of a board: along one direction, where a point of the board was seen.</summary>
/// <param name="At">The point on the board, mm.</param>
/// <param name="Seen">A photo point; only its place along <paramref name="Along"/> counts, but it lies near the point's image.</param>
/// <param name="Along">Unit vector in the photo.</param>
/// <param name="StandardUncertainty">Of the place along it, px; greater than 0.</param>
/// <param name="Group">Sightings of one printed edge or corner in all photos have the same: they share its faults.</param>
/// <param name="Across">For a printed edge, the unit vector on the board from black to white, which <paramref name="Along"/> points to, too: growth of black moves it outwards. Zero for a point.</param>
public readonly record struct BoardSighting(CardPoint At, PixelPoint Seen, PixelVector Along, double StandardUncertainty, int Group, CardVector Across)
{
    /// <summary>Whether it is a printed edge.</summary>
    public bool IsEdge => Across != default;

    /// <summary>A point that was located in both directions, as two sightings.</summary>
    public static IEnumerable<BoardSighting> OfPoint(CardPoint at, PixelPoint seen, double standardUncertainty, int group) =>
    [
        new(at, seen, new(1, 0), standardUncertainty, group, default),
        new(at, seen, new(0, 1), standardUncertainty, group, default),
    ];
}
