using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Last stage: finds the marks in the free zone, the darkest first; each is measured and divided out before the next is sought.</summary>
internal sealed class MarkFinder
{
    /// <summary>Marks and spots that are looked at, at most.</summary>
    private const int MaxCandidates = 50;

    /// <summary>Pixels of the search map per pixel of the background map.</summary>
    private const int BackgroundReduction = 2;

    /// <summary>Least darkening of a mark, and least darkening over the noise of the bare target.</summary>
    private const double LeastDepth = 0.10;
    private const double LeastSignal = 6;

    /// <summary>A mark with such a clean outline needs no other area of its spot to be looked at.</summary>
    private const double GoodScore = 0.8;

    /// <summary>Diameters that are tried at a place named by the user, mm, and how far off its centre a finger may be.</summary>
    private static readonly double[] s_tapDiameters = [1, 1.5, 2.2, 3.2, 4.5, 6.5];
    private const double TapReach = 1.5;

    /// <summary>A place this close to a small mark's centre means it, mm.</summary>
    private const double NearEnough = 0.7;

    private readonly MarkLayers _layers;
    private readonly MarkJudge _judge;
    private readonly int _multiple;
    private readonly List<FittedMark> _marks = [];
    private readonly List<MarkCandidate> _candidates = [];

    private MarkFinder(MarkLayers layers, int multiple, double zoneSide)
    {
        _layers = layers;
        _multiple = multiple;
        _judge = new(zoneSide, LeastDepth);
    }

    /// <summary>The marks of the zone, in the printed card's frame.</summary>
    public static FoundMarks Find(ZoneMap light, RegisteredCard card, StageTrace trace)
    {
        MarkFinder finder = Prepare(light, card, trace);
        finder.Search();
        finder.Refit();
        trace.Candidates(light, finder._candidates);
        return new(finder._marks, [.. finder._candidates.Where(finder.IsDoubtful)]);
    }

    /// <summary>Measures at the places that the user names, in the printed card's frame; a place without anything to fit is left out.</summary>
    public static FoundMarks At(ZoneMap light, RegisteredCard card, IReadOnlyList<CardPoint> places, StageTrace trace)
    {
        MarkFinder finder = Prepare(light, card, trace);
        finder.Search();
        int found = finder._marks.Count;
        int[] named = [.. places.Select(finder.Take).Where(i => i >= 0).Distinct()];
        finder.Refit();
        trace.Candidates(light, finder._candidates);
        return new([.. named.Select(i => finder._marks[i])], [])
        {
            Doubts = [.. named.Where(i => i >= found).Select(i => MarkJudge.Doubt(finder._marks[i])).OfType<MarkObjection>().Distinct()],
        };
    }

    private static MarkFinder Prepare(ZoneMap light, RegisteredCard card, StageTrace trace)
    {
        int multiple = (int)Math.Round(light.Grid.PixelsPerMm / ZoneRectifier.SearchPixelsPerMm);
        ZoneMap darkening = ZoneBackground.Darkening(light, BackgroundReduction * multiple);
        trace.Map("zone", light, 0, 1);
        trace.Map("darkening", darkening, -0.2, 1);
        return new(new(light, darkening), multiple, card.Kind.ZoneSide);
    }

    private void Search()
    {
        MarkLayers left = _layers;
        using CandidateSearch search = new(left.Darkening.Reduce(_multiple));
        double least = Math.Max(LeastDepth, LeastSignal * search.Noise);
        while (_candidates.Count < MaxCandidates && search.Darkest(least) is { } spot)
        {
            Verdict verdict = At(spot, search, left);
            _candidates.Add(verdict.Candidate);
            if (verdict.Marks.Count == 0)
            {
                search.Close(spot);
                continue;
            }

            _marks.AddRange(verdict.Marks);
            search.Close(verdict.Outline);
            left = _layers.Without(_marks, null);
            search.Look(left.Darkening.Reduce(_multiple));
        }
    }

    /// <summary>The best of a spot's areas that is a mark or two; else what speaks against its first area.</summary>
    private Verdict At(DarkSpot spot, CandidateSearch search, MarkLayers left)
    {
        Verdict? best = null, first = null;
        foreach (MarkArea area in search.Areas(spot))
        {
            Verdict verdict = _judge.Judge(area, left, _marks);
            first ??= verdict;
            if (verdict.Marks.Count > 0 && (best is null || verdict.Score > best.Score))
                best = verdict;
            if (best?.Score > GoodScore)
                break;
        }

        return best ?? first ?? new(search.Thin(spot), [], []);
    }

    /// <summary>The number of the mark at a place: one that was found anyway, else what can be fitted there; -1 when nothing can.</summary>
    private int Take(CardPoint place)
    {
        if (_marks.MinBy(m => m.Centre.DistanceTo(place)) is { } nearest && nearest.Centre.DistanceTo(place) < Math.Max(nearest.Diameter / 2, NearEnough))
            return _marks.IndexOf(nearest);
        MarkLayers left = _layers.Without(_marks, null);
        FittedMark? best = s_tapDiameters
            .Select(d => SymmetricFit.Fit(left.Coarse, place, d))
            .OfType<SymmetricMark>()
            .Select(s => MarkFit.Of(left, s))
            .OfType<FittedMark>()
            .Where(m => m.Centre.DistanceTo(place) < Math.Max(TapReach, m.Diameter / 2))
            .MaxBy(m => Verdict.ScoreOf(m));
        _candidates.Add(new(place, best?.Diameter ?? 0, best?.Symmetric.Depth ?? 0, best?.Symmetric.Shape.AxisRatio ?? 0, 1, 0, best is null ? MarkObjection.NothingToFit : null));
        if (best is null)
            return -1;
        _marks.Add(best);
        return _marks.Count - 1;
    }

    /// <summary>Measures every mark again with the others taken away, twice: neighbours settle together.</summary>
    private void Refit()
    {
        for (int round = 0; round < 2; round++)
        {
            for (int i = 0; i < _marks.Count; i++)
            {
                FittedMark mark = _marks[i];
                // A pair was measured together with one shape.
                if (_marks.Any(o => Overlap(o, mark)))
                    continue;
                if (_marks.Any(o => o != mark && o.Centre.DistanceTo(mark.Centre) < SymmetricFit.HaloReach(o.Diameter) + mark.EdgeReach))
                {
                    MarkLayers alone = _layers.Without(_marks, mark).Hiding(mark.Strokes);
                    _marks[i] = SymmetricFit.Fit(alone.Coarse, mark.Centre, mark.Diameter) is { } s && MarkFit.Of(alone, s) is { } again ? again with { Strokes = mark.Strokes } : mark;
                }
            }
        }
    }

    private static bool Overlap(FittedMark a, FittedMark b) => a != b && a.Centre.DistanceTo(b.Centre) < (a.Diameter + b.Diameter) / 2;

    private bool IsDoubtful(MarkCandidate c) => c.IsDoubtful && !_marks.Any(m => m.Centre.DistanceTo(c.Centre) < (m.Diameter + c.Diameter) / 2);
}

/// <summary>What was found in a zone, in the printed card's frame (mm).</summary>
internal sealed record FoundMarks(IReadOnlyList<FittedMark> Marks, IReadOnlyList<MarkCandidate> Doubtful)
{
    /// <summary>What speaks against the marks that only the user named.</summary>
    public IReadOnlyList<MarkObjection> Doubts { get; init; } = [];
}
