using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>What is to be seen on a leg's target: its marks, where they are going, and how far they have come.</summary>
/// <param name="Marks">Those worth showing, in the order of time.</param>
/// <param name="Aim">The aim point; null while it is not known.</param>
/// <param name="Expected">Where the next mark should lie; more than one place while the sense of a screw is open, none when it belongs elsewhere.</param>
/// <param name="Moving">The mark that is to move; null without one.</param>
/// <param name="IsFirstRound">Whether the leg was not disturbed since its first mark.</param>
internal sealed record LegSight(VisitLeg Leg, IReadOnlyList<LegMark> Marks, MeasuredPoint? Aim, IReadOnlyList<MeasuredPoint> Expected, LegMark? Moving, bool IsFirstRound)
{
    // Of marks before a change, besides the leg's first far one.
    private const int MostEarlier = 5;

    /// <summary>Distance of the last far mark from the aim point.</summary>
    public Length? ToGo => Distance(Far.LastOrDefault());

    /// <summary>The same of the leg's first far mark, when it is another one; null after the leg was disturbed, since those before lie on another line.</summary>
    public Length? AtFirst => IsFirstRound && Far.Count() > 1 ? Distance(Far.First()) : null;

    private IEnumerable<LegMark> Far => Marks.Where(m => m.IsOfThisRound && Role(m) == MarkRole.Far);

    public static LegSight Of(PictureSource source, VisitLeg leg)
    {
        LegMark[] all = [.. source.Marks.Legs[leg.Name]];
        LegMark[] round = [.. all.Where(m => m.IsOfThisRound)];
        // Marks before the leg was disturbed lie on another line; they are shown while there are no others.
        LegMark[] shown = round.Length > 0 ? round : all;
        LegMark[] earlier = [.. shown.Where(m => !m.Counts)];
        LegMark? first = earlier.FirstOrDefault(m => RoleOf(leg, m) == MarkRole.Far);
        LegMark[] marks = [.. shown.Where(m => m.Counts || m == first || earlier.TakeLast(MostEarlier).Contains(m))];

        bool acts = !source.IsBefore && source.Advice.Action switch
        {
            VisitAction.Fire fire => fire.Leg == leg.Name,
            VisitAction.Turn turn => turn.Leg == leg.Name,
            _ => false,
        };
        ExpectedPlace? expected = acts ? source.Advice.Expected : null;
        MeasuredPoint[] places = expected is null ? [] : expected.Branches.Count > 0 ? [.. expected.Branches.Select(b => b.Mark)] : [expected.Mark];
        MarkRole role = expected?.Path is { } path ? RoleOf(leg, path) : MarkRole.Far;
        VisitLegState? state = source.Advice.State.Legs.GetValueOrDefault(leg.Name);
        bool rests = source.IsBefore || (places.Length == 0 && state?.State.Verdict == Verdict.Within);
        LegMark? moving = rests ? null : marks.LastOrDefault(m => m.IsOfThisRound && RoleOf(leg, m) == role);
        return new(leg, marks, state?.State.Aim, places, moving, round.Length == all.Length);
    }

    public MarkRole Role(LegMark mark) => RoleOf(Leg, mark);

    private static MarkRole RoleOf(VisitLeg leg, LegMark mark) => RoleOf(leg, mark.Path);

    private static MarkRole RoleOf(VisitLeg leg, double path) =>
        Math.Abs(path - leg.Setup.Near.Path.Millimetres) <= Math.Abs(path - leg.Setup.Far.Path.Millimetres) ? MarkRole.Near : MarkRole.Far;

    private Length? Distance(LegMark? mark) => mark is not null && Aim is { } aim ? Length.FromMillimetres(mark.At.Point.DistanceTo(aim.Point)) : null;
}
