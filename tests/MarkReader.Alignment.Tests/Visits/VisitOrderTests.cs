using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

public sealed class VisitOrderTests
{
    private static readonly VisitAction[] s_legs =
    [
        new VisitAction.Fire("1", 80, null), new VisitAction.Fire("1", 480, null),
        new VisitAction.Fire("2", 60, Length.Zero), new VisitAction.Fire("2", 560, Length.Zero),
    ];

    [Fact]
    public void Leg_1_comes_first_then_leg_2_then_the_corners_then_the_aperture_then_leg_3()
    {
        IReadOnlyList<VisitAdvice> given = SomeVisit.Play(SomeVisit.Whole, [], action => SomeVisit.Faultless(action));
        VisitAction[] actions = [.. given.Select(g => g.Action)];
        Assert.Equal(11, actions.Length);
        Assert.Equal(s_legs, actions[..4]);
        Assert.Equal(SomeVisit.Ask(BedCorner.NearLeft), actions[4]);
        Assert.Equal(BedCorners.All.Select(SomeVisit.Ask).ToHashSet(), actions[4..8].Cast<VisitAction.Survey>().ToHashSet());
        Assert.Equal([new VisitAction.Fire("3", 50, null), new VisitAction.Fire("3", 150, null), new VisitAction.Done()], actions[8..]);
        Assert.Equal(Verdict.Within, given[^1].State.Machine.Verdict);
    }

    [Fact]
    public void The_aperture_is_served_before_leg_3()
    {
        VisitEvent[] aside = [.. SomeVisit.Aligned, .. BedCorners.All.Select(c => SomeVisit.At(c, u: 2))];
        Assert.IsType<VisitAction.MoveTarget>(SomeVisit.Advise(SomeVisit.Whole, aside).Action);
    }

    [Fact]
    public void Without_a_bed_the_visit_is_done_after_the_legs()
    {
        IReadOnlyList<VisitAdvice> given = SomeVisit.Play(SomeVisit.Legs, [], action => SomeVisit.Faultless(action));
        Assert.Equal([new VisitAction.Fire("1", 80, null), new VisitAction.Fire("1", 480, null), new VisitAction.Fire("2", 60, null), new VisitAction.Fire("2", 560, null), new VisitAction.Done()], given.Select(g => g.Action));
        Assert.Null(given[^1].State.Survey);
        Assert.Null(given[^1].State.Centring);
    }
}
