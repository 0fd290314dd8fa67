using MarkReader.Cameras.Boards;
using MarkReader.Quantities;

namespace MarkReader.Cameras.CardChecks;

/// <summary>A place of a printed edge by which photos of the card are located.</summary>
/// <param name="Across">Unit vector from black to white.</param>
internal readonly record struct PrintedSection(CardPoint At, CardVector Across, int Group)
{
    private const double Same = 0.05; // mm

    /// <summary>Those that the views show, each once.</summary>
    public static PrintedSection[] Of(IReadOnlyList<BoardView> views) =>
    [
        .. views.SelectMany(v => v.Sightings).Where(s => s.IsEdge)
            .DistinctBy(s => (s.Group, Math.Round(s.At.U / Same), Math.Round(s.At.V / Same)))
            .Select(s => new PrintedSection(s.At, s.Across, s.Group)),
    ];
}
