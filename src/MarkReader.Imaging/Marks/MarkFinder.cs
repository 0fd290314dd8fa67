using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Marks;

/// <summary>Last stage: finds the marks in the free zone, the darkest first; each is fitted and divided out before the next is sought.</summary>
internal sealed class MarkFinder
{
    /// <summary>Marks and spots that are looked at, at most.</summary>
    private const int MaxCandidates = 50;

    /// <summary>Pixels of the search map per pixel of the background map.</summary>
    private const int BackgroundReduction = 2;

    /// <summary>Least darkening of a mark, and least darkening over the noise of the bare target.</summary>
    private const double LeastDepth = 0.10;
    private const double LeastSignal = 6;

    /// <summary>Beside a mark, a spot paler than this part of it is smoke.</summary>
    private const double SmokeShare = 0.2;

    private const double LeastDiameter = 0.8;
    private const double MostDiameter = 15;

    /// <summary>Below this transmission a divided-out mark leaves nothing to be measured.</summary>
    private const double LeastTransmission = 0.3;

    /// <summary>Diameters that are tried at a place named by the user, mm, and how far off its centre a finger may be.</summary>
    private static readonly double[] s_tapDiameters = [1, 1.5, 2.2, 3.2, 4.5, 6.5];
    private const double TapReach = 1.5;

    private readonly ZoneMap _darkening;
    private readonly int _multiple;
    private readonly double _zoneSide;
    private readonly List<FittedMark> _marks = [];
    private readonly List<MarkCandidate> _candidates = [];

    private MarkFinder(ZoneMap darkening, int multiple, double zoneSide)
    {
        _darkening = darkening;
        _multiple = multiple;
        _zoneSide = zoneSide;
    }

    /// <summary>Fits at the places that the user names, in the printed card's frame; a place without anything to fit is left out.</summary>
    public static IReadOnlyList<FittedMark> At(ZoneMap light, RegisteredCard card, IReadOnlyList<CardPoint> places, StageTrace trace)
    {
        MarkFinder finder = Prepare(light, card, trace);
        finder.Take(places);
        trace.Candidates(light, finder._candidates);
        finder.Refit();
        return finder._marks;
    }

    /// <summary>The marks of the zone, in the printed card's frame.</summary>
    public static FoundMarks Find(ZoneMap light, RegisteredCard card, StageTrace trace)
    {
        MarkFinder finder = Prepare(light, card, trace);
        finder.Search();
        trace.Candidates(light, finder._candidates);
        finder.Refit();
        return new(finder._marks, [.. finder._candidates.Where(c => c.IsDoubtful)]);
    }

    private static MarkFinder Prepare(ZoneMap light, RegisteredCard card, StageTrace trace)
    {
        int multiple = (int)Math.Round(light.Grid.PixelsPerMm / ZoneRectifier.SearchPixelsPerMm);
        ZoneMap darkening = ZoneBackground.Darkening(light, BackgroundReduction * multiple);
        trace.Map("zone", light, 0, 1);
        trace.Map("darkening", darkening, -0.2, 1);
        return new(darkening, multiple, card.Kind.ZoneSide);
    }

    private void Take(IReadOnlyList<CardPoint> places)
    {
        foreach (CardPoint place in places)
        {
            ZoneMap left = DivideOut(null);
            FittedMark? best = s_tapDiameters
                .Select(d => SymmetricFit.Fit(left, place, d))
                .OfType<FittedMark>()
                .Where(f => f.Diameter is >= LeastDiameter and <= MostDiameter && f.Centre.DistanceTo(place) < Math.Max(TapReach, f.Diameter / 2))
                .OrderBy(f => f.Roughness)
                .FirstOrDefault();
            _candidates.Add(new(place, best?.Diameter ?? 0, best?.Depth ?? 0, best?.AxisRatio ?? 0, 1, 0, best is null ? "nothing to fit here" : null));
            if (best is not null)
                _marks.Add(best);
        }
    }

    private void Search()
    {
        ZoneMap left = _darkening;
        using CandidateSearch search = new(left.Reduce(_multiple));
        double least = Math.Max(LeastDepth, LeastSignal * search.Noise);
        while (_candidates.Count < MaxCandidates && search.Darkest(least) is { } spot)
        {
            if (MarkAt(spot, search, left) is not { } mark)
                continue;
            _marks.Add(mark);
            left = DivideOut(null);
            search.Look(left.Reduce(_multiple));
        }
    }

    /// <summary>The first of a spot's areas that is a mark; else the spot is closed with the objection to its first area.</summary>
    private FittedMark? MarkAt(DarkSpot spot, CandidateSearch search, ZoneMap left)
    {
        MarkCandidate? first = null;
        foreach ((MarkCandidate candidate, OpenCvSharp.Point[] outline) in search.Areas(spot))
        {
            (MarkCandidate verdict, FittedMark? mark) = Judge(candidate, left);
            if (mark is not null)
            {
                _candidates.Add(verdict);
                search.Close(outline);
                return mark;
            }

            first ??= verdict;
        }

        _candidates.Add(first ?? search.Thin(spot));
        search.Close(spot);
        return null;
    }

    private (MarkCandidate, FittedMark?) Judge(MarkCandidate c, ZoneMap left)
    {
        if (Objection(c) is { } objection)
            return (c with { Rejection = objection }, null);
        FittedMark? fit = SymmetricFit.Fit(left, c.Centre, c.Diameter);
        string? reason = fit switch
        {
            null => "not symmetric",
            { Roughness: > 0.35 } => "rough",
            { AxisRatio: < 0.4 } => "long",
            { Sides: < 0.75 } => "no edge all round",
            _ when _marks.Any(m => fit.Depth < SmokeShare * m.Depth && m.Centre.DistanceTo(fit.Centre) < SymmetricFit.HaloReach(m.Diameter) + (fit.Diameter / 2)) => "smoke of a mark",
            _ when fit.Depth < LeastDepth => "faint against its surroundings",
            _ when _marks.Any(m => m.Centre.DistanceTo(fit.Centre) < 0.3 * Math.Max(m.Diameter, fit.Diameter)) => "rest of a mark",
            _ when fit.Diameter is < LeastDiameter or > MostDiameter => "size",
            _ => null,
        };
        return (c with { Rejection = reason }, reason is null ? fit : null);
    }

    private string? Objection(MarkCandidate c)
    {
        if (c.Diameter < LeastDiameter)
            return "small";
        if (c.Diameter > MostDiameter)
            return "large";
        if (Math.Max(Math.Abs(c.Centre.U), Math.Abs(c.Centre.V)) > _zoneSide / 2)
            return "outside the zone";
        if (c.EdgeShare > 0.12)
            return "at the border";
        if (c.AxisRatio < 0.45)
            return "long";
        if (c.Solidity < 0.82)
            return "ragged";
        return _marks.Any(m => m.Centre.DistanceTo(c.Centre) < 0.75 * m.Diameter && c.Diameter < 0.6 * m.Diameter) ? "rest of a mark" : null;
    }

    /// <summary>Fits every mark again with the others divided out, twice: overlapping marks settle together.</summary>
    private void Refit()
    {
        for (int round = 0; round < 2; round++)
        {
            for (int i = 0; i < _marks.Count; i++)
            {
                FittedMark mark = _marks[i];
                if (!_marks.Any(o => o != mark && o.Centre.DistanceTo(mark.Centre) < 1.6 * (o.Diameter + mark.Diameter) / 2 + 1.5))
                    continue;
                _marks[i] = SymmetricFit.Fit(DivideOut(mark), mark.Centre, mark.Diameter) ?? mark;
            }
        }
    }

    /// <summary>The darkening that would be left without the marks but <paramref name="kept"/>; NaN where they leave too little light.</summary>
    private ZoneMap DivideOut(FittedMark? kept)
    {
        float[] values = [.. _darkening.Values];
        ZoneGrid grid = _darkening.Grid;
        foreach (FittedMark mark in _marks.Where(m => m != kept))
        {
            double reach = SymmetricFit.HaloReach(mark.Diameter) / Math.Sqrt(mark.AxisRatio) * grid.PixelsPerMm;
            (double cx, double cy) = grid.ToPixel(mark.Centre);
            for (int y = Math.Max(0, (int)(cy - reach)); y <= Math.Min(grid.Size - 1, (int)(cy + reach)); y++)
            {
                for (int x = Math.Max(0, (int)(cx - reach)); x <= Math.Min(grid.Size - 1, (int)(cx + reach)); x++)
                {
                    double t = mark.Model.Transmission(grid.ToCard(x, y));
                    int i = (y * grid.Size) + x;
                    values[i] = t < LeastTransmission ? float.NaN : (float)(1 - ((1 - values[i]) / t));
                }
            }
        }

        return new(grid, values);
    }
}

/// <summary>What was found in a zone, in the printed card's frame (mm).</summary>
internal sealed record FoundMarks(IReadOnlyList<FittedMark> Marks, IReadOnlyList<MarkCandidate> Doubtful);
