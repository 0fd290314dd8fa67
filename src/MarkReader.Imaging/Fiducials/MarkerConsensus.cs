using MarkReader.Cards;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Fiducials;

/// <summary>Groups sighted markers into prints: markers belong together when one homography explains them.</summary>
internal static class MarkerConsensus
{
    /// <summary>A marker may lie this part of its side from where the others predict it; a single marker extrapolates coarsely over the card.</summary>
    private const double FirstTolerance = 0.5;

    /// <summary>The same after the map was refitted to the agreeing markers.</summary>
    private const double FinalTolerance = 0.15;

    /// <summary>The largest cards first, each sighting in one only.</summary>
    public static IReadOnlyList<FoundCard> Group(IReadOnlyList<MarkerSighting> sightings) =>
        [.. Group(sightings, CardKinds.OfMarker).Select(g => new FoundCard(g.Print, g.Markers, g.Rough, 0))];

    /// <summary>The largest groups first, each sighting in one group only.</summary>
    /// <param name="owner">The print to which a marker id belongs.</param>
    public static IReadOnlyList<MarkerGroup<T>> Group<T>(IReadOnlyList<MarkerSighting> sightings, Func<int, T?> owner)
        where T : class, IPrint
    {
        List<MarkerSighting> left = [.. sightings.Where(s => owner(s.Id) is not null)];
        List<MarkerGroup<T>> groups = [];
        while (left.Count > 0 && LargestGroup(left, owner) is { } group)
        {
            groups.Add(group);
            left = [.. left.Except(group.Markers)];
        }

        return groups;
    }

    private static MarkerGroup<T>? LargestGroup<T>(List<MarkerSighting> sightings, Func<int, T?> owner)
        where T : class, IPrint
    {
        MarkerGroup<T>? best = null;
        foreach (MarkerSighting seed in sightings)
        {
            T print = owner(seed.Id)!;
            if (Grow(print, seed, [.. sightings.Where(s => owner(s.Id) == print)]) is { } group && group.Markers.Count > (best?.Markers.Count ?? 0))
                best = group;
        }

        return best;
    }

    private static MarkerGroup<T>? Grow<T>(T kind, MarkerSighting seed, IReadOnlyList<MarkerSighting> sightings)
        where T : class, IPrint
    {
        List<MarkerSighting> members = [seed];
        Homography? map = Fit(kind, members);
        foreach (double tolerance in (double[])[FirstTolerance, FinalTolerance, FinalTolerance])
        {
            if (map is null)
                return null;
            Homography current = map;
            members = [.. sightings
                .Select(s => (Sighting: s, Error: RelativeError(kind, current, s)))
                .Where(t => t.Error < tolerance)
                .GroupBy(t => t.Sighting.Id)
                .Select(g => g.MinBy(t => t.Error).Sighting)];
            map = members.Count == 0 ? null : Fit(kind, members);
        }

        return map is null ? null : new(kind, members, map);
    }

    private static Homography? Fit(IPrint kind, IEnumerable<MarkerSighting> members) => Homography.Fit(
        [.. members.SelectMany(s => kind.Markers.First(m => m.Id == s.Id).Corners.Zip(s.Corners, (c, p) => (c, p)))]);

    /// <summary>Largest corner error over the marker's mean side in the photo; infinite behind the vanishing line.</summary>
    private static double RelativeError(IPrint kind, Homography map, MarkerSighting sighting)
    {
        CardMarker marker = kind.Markers.First(m => m.Id == sighting.Id);
        double sign = Math.Sign(map.Depth(CardPoint.Origin));
        double side = Enumerable.Range(0, 4).Average(i => sighting.Corners[i].DistanceTo(sighting.Corners[(i + 1) % 4]));
        double worst = 0;
        for (int i = 0; i < 4; i++)
        {
            if (Math.Sign(map.Depth(marker.Corners[i])) != sign)
                return double.PositiveInfinity;
            worst = Math.Max(worst, map.Map(marker.Corners[i]).DistanceTo(sighting.Corners[i]));
        }

        return worst / side;
    }
}
