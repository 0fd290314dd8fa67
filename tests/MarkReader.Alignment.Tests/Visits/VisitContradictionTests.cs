using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;

namespace MarkReader.Alignment.Tests.Visits;

public sealed class VisitContradictionTests
{
    // A turn of screw A that moved nothing.
    private static readonly VisitEvent[] s_stuck = [SomeVisit.Mark("1", 80, 0.4), SomeVisit.Mark("1", 480, 2.8), SomeVisit.Turn("1", "A", 0.125), SomeVisit.Mark("1", 480, 2.82)];

    [Fact]
    public void A_mark_that_contradicts_stops_the_visit_and_says_why()
    {
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, s_stuck);
        Assert.IsType<VisitAction.Stop>(advice.Action);
        Assert.Contains("Leg 1.", advice.Reason, StringComparison.Ordinal);
        Assert.Contains("screw A", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_mark_goes_on_with_the_visit()
    {
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, [.. s_stuck, SomeVisit.Mark("1", 480, 2.8)]);
        Assert.Equal("1", Assert.IsType<VisitAction.Fire>(advice.Action).Leg);
        Assert.NotEqual(Verdict.Within, advice.State.Legs["1"].State.Verdict);
        VisitEvent[] mended = [.. s_stuck, SomeVisit.Mark("1", 480, 0.5), SomeVisit.Mark("1", 80, 0.5), SomeVisit.Mark("1", 480, 0.5)];
        Assert.Equal("2", Assert.IsType<VisitAction.Fire>(SomeVisit.Advise(SomeVisit.Machine, mended).Action).Leg);
    }

    [Fact]
    public void A_mark_on_leg_2_that_contradicts_stops_it_too_and_leaves_leg_1()
    {
        VisitEvent[] events =
        [
            .. SomeVisit.Aligned[..2], SomeVisit.Mark("2", 60, 0.4), SomeVisit.Mark("2", 560, 2.8), SomeVisit.Turn("2", "A", 0.125), SomeVisit.Mark("2", 560, 2.82),
        ];
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, events);
        Assert.IsType<VisitAction.Stop>(advice.Action);
        Assert.Contains("Leg 2.", advice.Reason, StringComparison.Ordinal);
        Assert.Equal(Verdict.Within, advice.State.Legs["1"].State.Verdict);
    }

    [Fact]
    public void A_mark_that_moved_although_nothing_was_turned_is_asked_for_once_more_before_the_visit_stops()
    {
        VisitEvent[] moved = [SomeVisit.Mark("1", 80, 0.4), SomeVisit.Mark("1", 480, 2.8), SomeVisit.Mark("1", 480, 5.6)];
        Assert.Equal(new VisitAction.Fire("1", 480, null), SomeVisit.Advise(SomeVisit.Machine, moved).Action);
        Assert.IsType<VisitAction.Stop>(SomeVisit.Advise(SomeVisit.Machine, [.. moved, SomeVisit.Mark("1", 480, 5.6)]).Action);
    }

    [Fact]
    public void A_survey_mark_that_leg_2_s_own_marks_contradict_is_repeated_once_and_then_stops_the_visit()
    {
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, SomeVisit.At(BedCorner.NearLeft, 3)]);
        Assert.Equal(60, Assert.IsType<VisitAction.Fire>(advice.Action).Path);
        Assert.IsType<VisitAction.Stop>(SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, SomeVisit.At(BedCorner.NearLeft, 3), SomeVisit.Mark("2", 60, 3)]).Action);
    }
}
