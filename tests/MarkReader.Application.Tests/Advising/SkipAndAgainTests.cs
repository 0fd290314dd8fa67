using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Advising;

/// <summary>Steps that are skipped, done again, or made stale by an earlier one.</summary>
public sealed class SkipAndAgainTests
{
    [Fact]
    public void A_leg_that_is_skipped_is_passed_over_until_it_is_worked_on_again()
    {
        VisitAdvice first = Advise();
        Assert.Equal(VisitStep.LegOne, first.State.Current);
        VisitAdvice next = Advise(Skip("1"));
        Assert.Equal((VisitStep.LegTwo, "no access"), (next.State.Current, next.State.Skipped[VisitStep.LegOne]));
        VisitAdvice back = Advise(Skip("1"), """{ "kind": "again", "step": "1" }""");
        Assert.Equal(VisitStep.LegOne, back.State.Current);
        Assert.Empty(back.State.Skipped);
    }

    [Fact]
    public void When_everything_is_skipped_the_visit_is_done_and_not_within()
    {
        VisitAdvice end = Advise(Skip("1"), Skip("2"), Skip("survey"), Skip("centring"));
        Assert.IsType<VisitAction.Done>(end.Action);
        Assert.Null(end.State.Current);
        Assert.Contains("no access", end.Reason, StringComparison.Ordinal);
        Assert.Contains("but what was skipped", end.Reason, StringComparison.Ordinal);
        Assert.Equal(Alignment.Verdicts.Verdict.Undecided, end.State.Machine.Verdict);
    }

    [Fact]
    public void Leg_one_done_again_makes_every_later_step_stale_until_its_fresh_mark()
    {
        PracticeSession session = PracticeSession.Begin(new PracticeRequest(6), UsualStock.Washers, new StatedMarks()).ValueOrThrow();
        PlayPractice.Run(session).ValueOrThrow();
        VisitAdvice end = session.Advise().ValueOrThrow();
        Assert.IsType<VisitAction.Done>(end.Action);
        Assert.Empty(end.State.Stale);

        VisitAdvice again = VisitAdviser.Advise(session.Setup, [.. session.Events, new VisitEvent.Again(VisitStep.LegOne)]).ValueOrThrow();
        Assert.Equal(VisitStep.LegOne, again.State.Current);
        Assert.IsType<VisitAction.Fire>(again.Action);
        Assert.Equal([VisitStep.LegOne, VisitStep.LegTwo, VisitStep.Survey, VisitStep.Centring], again.State.Stale.Order());

        VisitEvent mark = session.Events.OfType<VisitEvent.Mark>().First(m => m.Leg == "1");
        VisitAdvice fresh = VisitAdviser.Advise(session.Setup, [.. session.Events, new VisitEvent.Again(VisitStep.LegOne), mark]).ValueOrThrow();
        Assert.Equal([VisitStep.LegTwo, VisitStep.Survey, VisitStep.Centring], fresh.State.Stale.Order());
    }

    [Fact]
    public void The_survey_done_again_keeps_the_legs_and_asks_for_a_corner()
    {
        PracticeSession session = PracticeSession.Begin(new PracticeRequest(6), UsualStock.Washers, new StatedMarks()).ValueOrThrow();
        PlayPractice.Run(session).ValueOrThrow();
        VisitAdvice again = VisitAdviser.Advise(session.Setup, [.. session.Events, new VisitEvent.Again(VisitStep.Survey)]).ValueOrThrow();
        Assert.IsType<VisitAction.Survey>(again.Action);
        Assert.Equal([VisitStep.Survey, VisitStep.Centring], again.State.Stale.Order());
        Assert.All(again.State.Legs.Values, leg => Assert.Equal(Alignment.Verdicts.Verdict.Within, leg.State.Verdict));
    }

    [Theory]
    [InlineData("""{ "kind": "skip", "step": "1", "reason": " " }""")]
    [InlineData("""{ "kind": "skip", "step": "1" }""")]
    [InlineData("""{ "kind": "skip", "step": "4", "reason": "x" }""")]
    [InlineData("""{ "kind": "skip", "step": "3", "reason": "x" }""")]
    [InlineData("""{ "kind": "again", "step": "3" }""")]
    public void A_skip_without_a_reason_or_of_a_step_that_the_machine_does_not_have_is_refused(string text)
    {
        Assert.False(AdviseVisit.Run(File(text)).TryGet(out _, out Failure? failure));
        Assert.NotEmpty(failure.Hint);
    }

    private static string Skip(string step) => $$"""{ "kind": "skip", "step": "{{step}}", "reason": "no access" }""";

    private static VisitAdvice Advise(params string[] events) => AdviseVisit.Run(File(events)).ValueOrThrow();

    private static byte[] File(params string[] events) => Encoding.UTF8.GetBytes(VisitTexts.Visit(
        """{ "legs": [ { "name": "1", "nearPath": 80, "farPath": 480 }, { "name": "2", "nearPath": 60, "farPath": 560 } ], "bed": { "x": 500, "y": 400 }, "aperture": {} }""", events));
}
