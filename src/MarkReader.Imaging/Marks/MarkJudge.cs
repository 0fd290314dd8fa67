namespace MarkReader.Imaging.Marks;

/// <summary>Decides by its features whether a dark area is a mark, two that overlap, or none, and says why not.</summary>
/// <param name="zoneSide">Side of the free zone, mm.</param>
/// <param name="leastDepth">Least darkening of a mark.</param>
internal sealed class MarkJudge(double zoneSide, double leastDepth)
{
    private const double LeastDiameter = 0.9;
    private const double MostDiameter = 15;

    /// <summary>Beside a mark, a spot paler than this part of it is smoke; a soft one already below the larger part.</summary>
    private const double SmokeShare = 0.2;
    private const double SoftSmokeShare = 0.5;

    /// <summary>Part of the directions that must show an edge; fewer where another mark hides it.</summary>
    private const double LeastSeen = 0.6;
    private const double LeastSeenOfPair = 0.2;

    /// <summary>Roughness of an outline, over its radius, that a burn may have; letters have more.</summary>
    private const double MostRoughness = 0.06;

    /// <summary>Least score of a mark: letters and the corners of lines reach 0.45, marks crossed by lines have 0.55 and more.</summary>
    private const double LeastScore = 0.53;

    /// <summary>A mark's outline is closed, of one size in all directions, and ends in bare target; areas that fail only that may still be marks.</summary>
    private static readonly MarkObjection[] s_doubtful = [MarkObjection.Rough, MarkObjection.RoughOutline, MarkObjection.OpenOutline, MarkObjection.PoorOutline, MarkObjection.NoEdgeAllRound, MarkObjection.NoOutline, MarkObjection.Ragged, MarkObjection.TwoInOne];

    /// <param name="area">The area.</param>
    /// <param name="left">The layers without the marks found so far.</param>
    /// <param name="marks">The marks found so far.</param>
    public Verdict Judge(MarkArea area, MarkLayers left, IReadOnlyList<FittedMark> marks)
    {
        MarkCandidate c = area.Candidate;
        if (Objection(c, marks) is { } objection)
            return Rejected(objection);
        if (PairSplit.Of(left.Darkening, c) is { } pair)
        {
            // An outline of two discs is never measured as one mark.
            return PairFit.Of(pair.First, pair.Second, left) is { } two && two.All(IsPlausibleOfPair) ? new(c, area.Outline, two) : Rejected(MarkObjection.TwoInOne);
        }

        if (c.AxisRatio < 0.45)
            return Rejected(MarkObjection.Long);
        if (c.Solidity < 0.82)
            return Rejected(MarkObjection.Ragged);
        MarkLayers clear = left.Hiding(area.Strokes);
        if (SymmetricFit.Fit(clear.Coarse, c.Centre, c.Diameter) is not { } symmetric)
            return Rejected(MarkObjection.NotSymmetric);
        if (Objection(symmetric, marks) is { } shape)
            return Rejected(shape);
        if (MarkFit.Of(clear, symmetric) is not { } mark)
            return Rejected(MarkObjection.NoOutline);
        if (mark.Method != MarkMethod.Outline && IsBeside(symmetric, marks, SoftSmokeShare))
            return Rejected(MarkObjection.SmokeOfMark);
        return Doubt(mark) is { } doubt ? Rejected(doubt) : new(c, area.Outline, [mark with { Strokes = area.Strokes }]);

        Verdict Rejected(MarkObjection reason) => new(c with { Rejection = reason, IsDoubtful = s_doubtful.Contains(reason) && c.Depth > 2 * leastDepth }, area.Outline, []);
    }

    /// <summary>What speaks against a fitted mark by itself; null when nothing does.</summary>
    public static MarkObjection? Doubt(FittedMark mark) => mark.Outline switch
    {
        { Seen: < LeastSeen } when mark.Method == MarkMethod.Outline => MarkObjection.OpenOutline,
        { Roughness: > MostRoughness } when mark.Method != MarkMethod.Texture => MarkObjection.RoughOutline,
        _ when mark.Diameter is < LeastDiameter or > MostDiameter => MarkObjection.Size,
        _ when Verdict.ScoreOf(mark) < LeastScore => MarkObjection.PoorOutline,
        _ => null,
    };

    private static bool IsBeside(SymmetricMark s, IReadOnlyList<FittedMark> marks, double share) =>
        marks.Any(m => s.Depth < share * m.Symmetric.Depth && m.Centre.DistanceTo(s.Centre) < SymmetricFit.HaloReach(m.Diameter) + (s.Diameter / 2));

    private static bool IsPlausibleOfPair(FittedMark mark) =>
        mark is { Outline: { Seen: > LeastSeenOfPair, Roughness: < MostRoughness }, Diameter: >= LeastDiameter and <= MostDiameter };

    private MarkObjection? Objection(MarkCandidate c, IReadOnlyList<FittedMark> marks)
    {
        if (c.Diameter < LeastDiameter)
            return MarkObjection.Small;
        if (c.Diameter > MostDiameter)
            return MarkObjection.Large;
        if (Math.Max(Math.Abs(c.Centre.U), Math.Abs(c.Centre.V)) > zoneSide / 2)
            return MarkObjection.OutsideZone;
        if (c.EdgeShare > 0.12)
            return MarkObjection.AtBorder;
        return marks.Any(m => m.Centre.DistanceTo(c.Centre) < 0.75 * m.Diameter && c.Diameter < 0.6 * m.Diameter) ? MarkObjection.RestOfMark : null;
    }

    private MarkObjection? Objection(SymmetricMark s, IReadOnlyList<FittedMark> marks) => s switch
    {
        { Roughness: > 0.35 } => MarkObjection.Rough,
        { Shape.AxisRatio: < 0.4 } => MarkObjection.Long,
        { Sides: < 0.5 } => MarkObjection.NoEdgeAllRound,
        _ when IsBeside(s, marks, SmokeShare) => MarkObjection.SmokeOfMark,
        _ when s.Depth < leastDepth => MarkObjection.Faint,
        _ when marks.Any(m => m.Centre.DistanceTo(s.Centre) < 0.3 * Math.Max(m.Diameter, s.Diameter)) => MarkObjection.RestOfMark,
        _ => null,
    };
}

/// <summary>What became of an area: the marks in it (none, one, or two that overlap), with its outline on the search map.</summary>
internal sealed record Verdict(MarkCandidate Candidate, OpenCvSharp.Point[] Outline, IReadOnlyList<FittedMark> Marks)
{
    /// <summary>How well the marks' outlines fit, to choose between areas of one spot.</summary>
    public double Score => Marks.Count == 0 ? double.NegativeInfinity : Marks.Average(ScoreOf) + (0.2 * (Marks.Count - 1));

    /// <summary>Edge width over radius up to which a mark has an outline to be judged by, however it was measured.</summary>
    private const double SharpEdge = 0.15;

    public static double ScoreOf(FittedMark mark) => JudgedBy(mark) is { } outline
        ? outline.Seen - (8 * outline.Roughness) - (0.3 * mark.Symmetric.Roughness)
        : mark.Symmetric.Sides - (2 * mark.Symmetric.Roughness);

    private static FittedOutline? JudgedBy(FittedMark mark) => mark.Method switch
    {
        MarkMethod.Outline => mark.Outline,
        MarkMethod.Symmetry when mark.Outline is { } o && o.Sigma < SharpEdge * o.Radius => o,
        _ => null,
    };
}
