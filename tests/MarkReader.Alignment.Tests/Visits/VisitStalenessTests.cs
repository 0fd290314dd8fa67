using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>What a change makes stale.</summary>
public sealed class VisitStalenessTests
{
    [Fact]
    public void A_whole_visit_is_done_before_the_change()
    {
        VisitAdvice advice = Advise();
        Assert.IsType<VisitAction.Done>(advice.Action);
        Assert.Equal((Verdict.Within, 4), (advice.State.Machine.Verdict, advice.State.Survey!.Marks));
    }

    [Fact]
    public void A_turn_on_mirror_one_makes_leg_2_and_the_survey_stale()
    {
        VisitAdvice advice = Advise(SomeVisit.Turn("1", "A", 1.0 / 64));
        Assert.IsType<VisitAction.Fire>(advice.Action);
        Assert.Equal("1", ((VisitAction.Fire)advice.Action).Leg);
        Assert.Equal(0, advice.State.Survey!.Marks);
        Assert.Equal((Verdict.Undecided, Verdict.Undecided), (Leg(advice, "1"), Leg(advice, "2")));
        Assert.NotEqual(Verdict.Within, advice.State.Machine.Verdict);

        VisitAction[] then = Rest(SomeVisit.Turn("1", "A", 1.0 / 64), SomeVisit.Mark("1", 80, 1, -0.5), SomeVisit.Mark("1", 480, 1, -0.5));
        Assert.Equal([60, 560], then[..2].Cast<VisitAction.Fire>().Select(f => f.Path).Order());
        Assert.All(then[..2].Cast<VisitAction.Fire>(), f => Assert.Equal(("2", Length.Zero), (f.Leg, f.Gantry!.Value)));
        Assert.Equal(4, then.OfType<VisitAction.Survey>().Distinct().Count());
    }

    [Fact]
    public void A_step_that_was_left_behind_and_is_worked_on_again_is_reopened()
    {
        static VisitState State(params VisitEvent[] events) => VisitAdviser.Advise(SomeVisit.Machine, events).ValueOrThrow().State;
        VisitEvent[] fresh = [SomeVisit.Mark("1", 80, 1, -0.5), SomeVisit.Mark("1", 480, 1, -0.5)];
        // For the first time, and when the visit is done, nothing is.
        for (int i = 0; i <= SomeVisit.Surveyed.Length; i++)
            Assert.False(State(SomeVisit.Surveyed[..i]).IsReopened, $"after {i}");

        VisitState turned = State([.. SomeVisit.Surveyed, SomeVisit.Turn("1", "A", 1.0 / 64)]);
        Assert.Equal((VisitStep.LegOne, true), (turned.Current!.Value, turned.IsReopened));
        VisitState next = State([.. SomeVisit.Surveyed, SomeVisit.Turn("1", "A", 1.0 / 64), .. fresh]);
        Assert.Equal((VisitStep.LegTwo, true), (next.Current!.Value, next.IsReopened));
        VisitState redone = State([.. SomeVisit.Aligned[..2], new VisitEvent.Again(VisitStep.LegOne)]);
        Assert.Equal((VisitStep.LegOne, true), (redone.Current!.Value, redone.IsReopened));
    }

    [Fact]
    public void A_turn_on_mirror_two_makes_the_survey_stale_and_leaves_leg_1()
    {
        VisitEvent turn = SomeVisit.Turn("2", "A", 1.0 / 64);
        VisitAdvice advice = Advise(turn);
        Assert.Equal("2", Assert.IsType<VisitAction.Fire>(advice.Action).Leg);
        Assert.Equal(0, advice.State.Survey!.Marks);
        Assert.Equal((Verdict.Within, Verdict.Undecided), (Leg(advice, "1"), Leg(advice, "2")));
        VisitAction[] then = Rest(turn);
        Assert.DoesNotContain(then, a => a is VisitAction.Fire { Leg: "1" });
        Assert.Equal(4, then.OfType<VisitAction.Survey>().Distinct().Count());
    }

    [Fact]
    public void A_raised_tube_makes_everything_stale()
    {
        VisitEvent raised = new VisitEvent.RaiseTube(Some.Mm(1));
        VisitAdvice advice = Advise(raised);
        Assert.Equal((Verdict.Undecided, Verdict.Undecided, 0), (Leg(advice, "1"), Leg(advice, "2"), advice.State.Survey!.Marks));
        VisitAction[] then = Rest(raised);
        Assert.Equal(9, then.Length);
        Assert.All(then[..2], a => Assert.Equal("1", ((VisitAction.Fire)a).Leg));
        Assert.Equal(2, then.OfType<VisitAction.Fire>().Count(f => f.Leg == "1"));
        Assert.Equal(2, then.OfType<VisitAction.Fire>().Count(f => f.Leg == "2"));
        Assert.Equal(4, then.OfType<VisitAction.Survey>().Distinct().Count());
        Assert.IsType<VisitAction.Done>(then[^1]);
    }

    [Fact]
    public void A_moved_target_asks_for_one_fresh_mark_and_leaves_legs_and_survey()
    {
        VisitEvent moved = new VisitEvent.MoveTarget(new(0.5, 0));
        VisitAdvice advice = Advise(moved);
        Assert.IsType<VisitAction.Survey>(advice.Action);
        Assert.Contains("clean tape", advice.Reason, StringComparison.Ordinal);
        Assert.Equal((Verdict.Within, Verdict.Within), (Leg(advice, "1"), Leg(advice, "2")));
        Assert.Equal((4, Verdict.Within, Verdict.Undecided), (advice.State.Survey!.Marks, advice.State.Survey.Spread.Verdict, advice.State.Centring!.Verdict.Verdict));

        VisitAction[] then = Rest(moved);
        Assert.Equal(2, then.Length);
        Assert.IsType<VisitAction.Done>(then[1]);
    }

    [Fact]
    public void A_target_moved_while_the_survey_is_open_begins_the_survey_anew()
    {
        VisitEvent[] open = [.. SomeVisit.Aligned, .. SomeVisit.Survey()[..3], new VisitEvent.MoveTarget(new(2, 0))];
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, open);
        Assert.Equal((SomeVisit.Ask(BedCorner.NearLeft), 0), (advice.Action, advice.State.Survey!.Marks));
        IReadOnlyList<VisitAdvice> rest = SomeVisit.Play(SomeVisit.Machine, open, action => SomeVisit.Faultless(action, -2, 0));
        Assert.Equal(5, rest.Count);
        Assert.IsType<VisitAction.Done>(rest[^1].Action);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("2")]
    public void A_leg_begun_anew_asks_for_fresh_marks_of_it_only(string leg)
    {
        VisitAdvice advice = Advise(new VisitEvent.Realign(leg, GantryEnd.Near));
        Assert.Equal(leg, Assert.IsType<VisitAction.Fire>(advice.Action).Leg);
        Assert.Equal((Verdict.Undecided, Verdict.Within, 4), (Leg(advice, leg), Leg(advice, leg == "1" ? "2" : "1"), advice.State.Survey!.Marks));
    }

    [Fact]
    public void A_shim_at_a_right_corner_makes_only_the_marks_at_its_end_stale()
    {
        VisitEvent shim = new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(0.5));
        VisitAdvice advice = Advise(shim);
        Assert.Equal((Verdict.Within, Verdict.Within, 2), (Leg(advice, "1"), Leg(advice, "2"), advice.State.Survey!.Marks));
        VisitAction[] then = Rest(shim);
        Assert.Equal(3, then.Length);
        Assert.Equal([SomeVisit.Ask(BedCorner.FarLeft), SomeVisit.Ask(BedCorner.FarRight)], then[..2].Cast<VisitAction.Survey>().OrderBy(s => s.X));
    }

    [Fact]
    public void A_shim_where_leg_2_is_aligned_opens_leg_2_as_well()
    {
        VisitAdvice advice = Advise(new VisitEvent.Shim(BedCorner.NearRight, Some.Mm(0.5)));
        Assert.Equal((Verdict.Within, Verdict.Undecided, 2), (Leg(advice, "1"), Leg(advice, "2"), advice.State.Survey!.Marks));
        Assert.Equal("2", Assert.IsType<VisitAction.Fire>(advice.Action).Leg);
    }

    [Theory]
    [InlineData(BedCorner.NearLeft)]
    [InlineData(BedCorner.FarLeft)]
    public void A_shim_at_a_left_corner_opens_leg_1_as_well(BedCorner corner)
    {
        VisitAdvice advice = Advise(new VisitEvent.Shim(corner, Some.Mm(0.5)));
        Assert.Equal((Verdict.Undecided, Verdict.Undecided, 0), (Leg(advice, "1"), Leg(advice, "2"), advice.State.Survey!.Marks));
        Assert.Equal("1", Assert.IsType<VisitAction.Fire>(advice.Action).Leg);
    }

    [Theory]
    [InlineData("1", Verdict.Undecided, 0)]
    [InlineData("2", Verdict.Within, 0)]
    public void A_disturbed_leg_and_what_comes_after_it_are_open(string leg, Verdict legOne, int marks)
    {
        VisitAdvice advice = Advise(new VisitEvent.Disturbed(leg));
        Assert.Equal(leg, Assert.IsType<VisitAction.Fire>(advice.Action).Leg);
        Assert.Equal((legOne, Verdict.Undecided, marks), (Leg(advice, "1"), Leg(advice, "2"), advice.State.Survey!.Marks));
    }

    private static Verdict Leg(VisitAdvice advice, string leg) => advice.State.Legs[leg].State.Verdict;

    private static VisitAdvice Advise(params VisitEvent[] later) => SomeVisit.Advise(SomeVisit.WithAperture, [.. SomeVisit.Surveyed, .. later]);

    private static VisitAction[] Rest(params VisitEvent[] later) =>
        [.. SomeVisit.Play(SomeVisit.WithAperture, [.. SomeVisit.Surveyed, .. later], action => SomeVisit.Faultless(action)).Select(g => g.Action)];
}
