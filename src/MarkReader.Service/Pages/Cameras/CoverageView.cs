using MarkReader.Application.Cameras;
using MarkReader.Cameras.Boards;

namespace MarkReader.Service.Pages.Cameras;

/// <summary>Which views of the board there are, as they are drawn.</summary>
/// <param name="Standings">From above, seen in the drawing: where the camera stood, right and down from the board's middle, 1 for the outer circle.</param>
/// <param name="Corners">Whether the board reached the picture's corners: upper left, upper right, lower left, lower right.</param>
/// <param name="Upright">Whether the board stood upright in a picture of the sensor.</param>
/// <param name="Lying">Whether it lay in one.</param>
/// <param name="Distances">Of the photos, nearest 1.</param>
/// <param name="Used">Photos that are used.</param>
public sealed record CoverageView(
    IReadOnlyList<(double Right, double Down)> Standings,
    IReadOnlyList<bool> Corners,
    bool Upright,
    bool Lying,
    IReadOnlyList<double> Distances,
    int Used,
    IReadOnlyList<ViewNeed> Missing)
{
    /// <summary>Degrees of tilt on the outer circle.</summary>
    private const double Outer = 50;

    /// <summary>The directions from which the board is to be seen.</summary>
    public static IReadOnlyList<ViewNeed> Directions { get; } = [ViewNeed.FromAbove, ViewNeed.FromRight, ViewNeed.FromBelow, ViewNeed.FromLeft];

    /// <summary>Where the word of a direction stands, right and down: beyond the outer circle, so that it covers no place of a camera.</summary>
    public static (int Right, int Down) Outwards(int direction) => direction switch { 0 => (0, -1), 1 => (1, 0), 2 => (0, 1), _ => (-1, 0) };

    /// <summary>What is to be taken next; null when nothing is missing.</summary>
    public ViewNeed? Next => Missing.Count == 0 ? null : Missing[0];

    /// <summary>How a kind of view is drawn: there, missing, or missing and next.</summary>
    public string State(params IReadOnlyList<ViewNeed> needs) => !needs.Any(Missing.Contains) ? "there" : Next is { } next && needs.Contains(next) ? "missing wanted" : "missing";

    internal static CoverageView Of(CalibrationStanding standing)
    {
        ViewPlace[] places = [.. standing.Photos.Select(p => p.Place).OfType<ViewPlace>()];
        double nearest = places.Length == 0 ? 1 : places.Min(p => p.Distance.Millimetres);
        return new(
            [.. places.Select(p => Place(p.Tilt.Degrees / Outer, p.TowardsU, -p.TowardsV))],
            [.. Enumerable.Range(0, 4).Select(c => places.Any(p => p.Corners[c]))],
            places.Any(p => Math.Cos(2 * p.Turn.Radians) > 0.5),
            places.Any(p => Math.Cos(2 * p.Turn.Radians) < -0.5),
            [.. places.Select(p => p.Distance.Millimetres / nearest)],
            standing.Used,
            standing.Missing);
    }

    private static (double Right, double Down) Place(double far, double right, double down)
    {
        double shown = Math.Min(1, far);
        return (shown * right, shown * down);
    }
}
