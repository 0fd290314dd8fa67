using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>Slopes that the legs' own marks left and the survey sees.</summary>
public sealed class VisitSlopeTests
{
    private const double Walk = 0.7;

    // 0.65 mrad over each travel: 0.26 mm of leg 1, 0.325 mm of leg 2, which the legs' coarse marks cannot tell from none.
    private static readonly VisitEvent[] s_legs =
    [
        SomeVisit.Mark("1", 80), SomeVisit.Mark("1", 480, 0.24 * Math.Sqrt(2)), SomeVisit.Mark("2", 60), SomeVisit.Mark("2", 560, 0.24),
    ];

    [Fact]
    public void A_slope_in_both_legs_is_cured_at_leg_1_first()
    {
        VisitEvent[] seen = [.. s_legs, At(0, 0), At(500, 0), At(0, 400), At(500, 400), At(0, 0), At(500, 0), At(0, 400), At(500, 400)];
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, seen);
        Assert.Equal(2, advice.State.Survey!.Diagnosis!.Findings.OfType<SlopeFinding>().Count());
        Assert.Equal("1", advice.Action is VisitAction.Turn turn ? turn.Leg : ((VisitAction.Fire)advice.Action).Leg);
        Assert.Contains("leg 1", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Survey_marks_where_leg_2_is_aligned_count_as_its_marks_so_that_the_turn_needs_no_pulse_before_it()
    {
        VisitEvent[] seen = [.. SomeVisit.Aligned, .. Rows(Walk), .. Rows(Walk)];
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, seen);
        VisitAction.Turn turn = Assert.IsType<VisitAction.Turn>(advice.Action);
        Assert.Equal("2", turn.Leg);
        Assert.InRange(advice.State.Legs["2"].Slope!.U, 0.7, 1.5);
        // Without them the leg has two marks without any slope.
        Assert.Equal(0, SomeVisit.Advise(SomeVisit.Machine, SomeVisit.Aligned).State.Legs["2"].Slope!.U, 0.01);
    }

    [Fact]
    public void A_machine_with_slopes_in_both_legs_is_brought_home()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            SimulatedVisit machine = new() { SlopeOne = new(4, -3), SlopeTwo = new(-5, 2), Random = new(seed) };
            IReadOnlyList<VisitAdvice> given = SomeVisit.Play(SomeVisit.Machine, [], machine.Do);
            Assert.IsType<VisitAction.Done>(given[^1].Action);
            Assert.InRange(machine.Spread(), 0, 0.55);
            Assert.InRange(given.Count, 8, 60);
        }
    }

    /// <summary>Sharp marks of leg 1 show no slope, so that it has to be leg 2's.</summary>
    [Fact]
    public void When_leg_1_s_own_marks_show_nothing_leg_2_is_looked_at()
    {
        VisitEvent[] seen =
        [
            SomeVisit.Mark("1", 80, sigma: 0.01), SomeVisit.Mark("1", 480, sigma: 0.01), SomeVisit.Mark("2", 60), SomeVisit.Mark("2", 560, 0.25),
            .. Corners(0.45, 0.25), .. Corners(0.45, 0.25),
        ];
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, seen);
        Assert.Equal([1, 2], advice.State.Survey!.Diagnosis!.Findings.OfType<SlopeFinding>().Select(f => f.Leg).Order());
        Assert.Equal("2", Assert.IsType<VisitAction.Turn>(advice.Action).Leg);
        Assert.Contains("leg 2", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_slope_that_no_leg_s_own_marks_show_has_the_corners_marked_in_turn_and_then_stops_the_visit()
    {
        VisitEvent[] seen = [SomeVisit.Mark("1", 80, sigma: 0.01), SomeVisit.Mark("1", 480, sigma: 0.01), SomeVisit.Mark("2", 60), SomeVisit.Mark("2", 560), .. Corners(0.9, 0)];
        List<VisitEvent> events = [];
        IReadOnlyList<VisitAdvice> given = SomeVisit.Play(
            SomeVisit.Machine, seen, action => SomeVisit.At(CornerOf((VisitAction.Survey)action), ((VisitAction.Survey)action).Y.Millimetres > 0 ? 0.9 : 0), events);
        Assert.IsType<VisitAction.Stop>(given[^1].Action);
        Assert.Contains("do not show it", given[^1].Reason, StringComparison.Ordinal);
        IGrouping<BedCorner, VisitEvent.Survey>[] marks = [.. events.OfType<VisitEvent.Survey>().GroupBy(e => CornerOf(new(e.Seen.X, e.Seen.Y)))];
        Assert.Equal(4, marks.Length);
        Assert.All(marks, m => Assert.Equal(6, m.Count()));
    }

    private static BedCorner CornerOf(VisitAction.Survey place) => BedCorners.All.Single(c => SomeVisit.Ask(c) == place);

    private static VisitEvent[] Corners(double overGantry, double overHead) =>
        [SomeVisit.At(BedCorner.NearLeft), SomeVisit.At(BedCorner.NearRight, overHead), SomeVisit.At(BedCorner.FarLeft, overGantry), SomeVisit.At(BedCorner.FarRight, overGantry + overHead)];

    private static VisitEvent[] Rows(double overHead) => [At(0, 0), SomeVisit.At(BedCorner.NearRight, overHead), At(0, 0), SomeVisit.At(BedCorner.NearRight, overHead), SomeVisit.At(BedCorner.FarLeft), SomeVisit.At(BedCorner.FarRight, overHead)];

    // 0.65 mrad in each leg.
    private static VisitEvent.Survey At(double x, double y) => new(new(Some.Mm(x), Some.Mm(y), Some.Point(0.65e-3 * (x + y), 0, SomeVisit.Sigma)));
}
