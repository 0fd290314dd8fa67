using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Advice;

/// <summary>How one leg went.</summary>
internal sealed record LegRun(int Pulses, int Turns, double Spread, double Farthest, LegAction End, IReadOnlyList<LegEvent> Events, IReadOnlyList<LegAdvice> Advice)
{
    public bool Said => End is LegAction.Done;
}

/// <summary>The adviser against true legs, until it is done or stops.</summary>
internal static class ClosedLoop
{
    public const int Most = 60;

    public static LegSetup Setup(LegRanges ranges, double tolerance = 0.5)
    {
        ScrewCorner[] screws = [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft)];
        MirrorFrame frame = (ranges.ThreeScrews
            ? MirrorFrame.AtCorners(null, [new("C", FrameCorner.LowerLeft), .. screws], ranges.Arm, ranges.Pitch)
            : MirrorFrame.AtCorners(FrameCorner.LowerLeft, screws, ranges.Arm, ranges.Pitch)).ValueOrThrow();
        return new(Some.Leg(ranges.IncidenceDegrees), Some.Station(ranges.Near, 2), Some.Station(ranges.Far, 2), Some.Mm(tolerance), frame);
    }

    /// <param name="leg">The true leg.</param>
    /// <param name="setup">What the adviser is told of it.</param>
    /// <param name="mishap">Called after each turn with the number of turns so far.</param>
    public static LegRun Play(TrueLeg leg, LegSetup setup, Action<int>? mishap = null)
    {
        List<LegEvent> events = [];
        List<LegAdvice> given = [];
        double farthest = 0;
        while (true)
        {
            LegAdvice advice = LegAdviser.Advise(setup, events).ValueOrThrow();
            given.Add(advice);
            switch (advice.Action)
            {
                case LegAction.Fire fire:
                    MeasuredPoint mark = leg.Fire(fire.Path);
                    farthest = Math.Max(farthest, mark.Point.DistanceTo(CardPoint.Origin));
                    events.Add(new LegEvent.Mark(fire.Path, mark));
                    break;
                case LegAction.Turn turn:
                    leg.Turn(turn.Screw, turn.Turns);
                    events.Add(new LegEvent.Turn(turn.Screw, turn.Turns));
                    mishap?.Invoke(events.OfType<LegEvent.Turn>().Count());
                    break;
                default:
                    return Run(advice.Action);
            }

            if (events.Count == Most)
                return Run(advice.Action);
        }

        LegRun Run(LegAction end) => new(
            events.OfType<LegEvent.Mark>().Count(), events.OfType<LegEvent.Turn>().Count(), leg.Spread(), farthest, end, events, given);
    }
}
