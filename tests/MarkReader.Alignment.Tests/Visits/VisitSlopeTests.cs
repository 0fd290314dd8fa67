using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>Slopes that the legs' own marks left and the survey sees.</summary>
public sealed class VisitSlopeTests
{
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

    private const double Walk = 0.7;

    private static VisitEvent[] Rows(double overHead) => [At(0, 0), SomeVisit.At(BedCorner.NearRight, overHead), At(0, 0), SomeVisit.At(BedCorner.NearRight, overHead), SomeVisit.At(BedCorner.FarLeft), SomeVisit.At(BedCorner.FarRight, overHead)];

    // 0.65 mrad in each leg.
    private static VisitEvent.Survey At(double x, double y) => new(new(Some.Mm(x), Some.Mm(y), Some.Point(0.65e-3 * (x + y), 0, SomeVisit.Sigma)));
}
