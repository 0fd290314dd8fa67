using MarkReader.Cards;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Fiducials;

/// <summary>Groups sighted markers into cards: markers belong together when one homography explains them.</summary>
internal static class MarkerConsensus
{
    /// <summary>A marker may lie this part of its side from where the others predict it; a single marker extrapolates coarsely over the card.</summary>
    private const double FirstTolerance = 0.5;

    /// <summary>The same after the map was refitted to the agreeing markers.</summary>
    private const double FinalTolerance = 0.15;

    /// <summary>The largest groups first, each sighting in one group only.</summary>
    public static IReadOnlyList<FoundCard> Group(IReadOnlyList<MarkerSighting> sightings)
    {
        List<MarkerSighting> left = [.. sightings.Where(s => CardKinds.OfMarker(s.Id) is not null)];
        List<FoundCard> cards = [];
        while (left.Count > 0 && LargestGroup(left) is { } card)
        {
            cards.Add(card);
            left = [.. left.Except(card.Markers)];
        }

        return cards;
    }

    private static FoundCard? LargestGroup(List<MarkerSighting> sightings)
    {
        FoundCard? best = null;
        foreach (MarkerSighting seed in sightings)
        {
            CardKind kind = CardKinds.OfMarker(seed.Id)!;
            if (Grow(kind, seed, sightings) is { } card && card.Markers.Count > (best?.Markers.Count ?? 0))
                best = card;
        }

        return best;
    }

    private static FoundCard? Grow(CardKind kind, MarkerSighting seed, List<MarkerSighting> sightings)
    {
        List<MarkerSighting> members = [seed];
        Homography? map = Fit(kind, members);
        foreach (double tolerance in (double[])[FirstTolerance, FinalTolerance, FinalTolerance])
        {
            if (map is null)
                return null;
            Homography current = map;
            members = [.. sightings
                .Where(s => CardKinds.OfMarker(s.Id) == kind)
                .Select(s => (Sighting: s, Error: RelativeError(kind, current, s)))
                .Where(t => t.Error < tolerance)
                .GroupBy(t => t.Sighting.Id)
                .Select(g => g.MinBy(t => t.Error).Sighting)];
            map = members.Count == 0 ? null : Fit(kind, members);
        }

        return map is null ? null : new(kind, members, map, 0);
    }

    private static Homography? Fit(CardKind kind, IEnumerable<MarkerSighting> members) => Homography.Fit(
        [.. members.SelectMany(s => kind.Markers.First(m => m.Id == s.Id).Corners.Zip(s.Corners, (c, p) => (c, p)))]);

    /// <summary>Largest corner error over the marker's mean side in the photo; infinite behind the vanishing line.</summary>
    private static double RelativeError(CardKind kind, Homography map, MarkerSighting sighting)
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
