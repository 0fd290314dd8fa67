using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>A twisted frame: which corner, which height, and what is learned of shims.</summary>
public sealed class VisitTwistTests
{
    private static readonly VisitSetup s_stocked = SomeVisit.Machine with { Stock = SomeVisit.Washers };

    // All sums of washers of 0.5, 0.8, 1.0 and 1.6 mm up to 4 mm.
    private static readonly double[] s_sums = [.. (from a in Enumerable.Range(0, 9) from b in Enumerable.Range(0, 6) from c in Enumerable.Range(0, 5) from d in Enumerable.Range(0, 4)
                                                   select (0.5 * a) + (0.8 * b) + c + (1.6 * d)).Where(h => h is > 0 and <= 4)];

    [Theory]
    [InlineData(0.85)]
    [InlineData(1.4)]
    [InlineData(2.1)]
    [InlineData(3.3)]
    public void A_far_right_corner_that_is_too_high_gets_a_shim_from_the_stock(double height)
    {
        VisitAdvice advice = SomeVisit.Advise(s_stocked, [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: height)]);
        VisitAction.Shim shim = Assert.IsType<VisitAction.Shim>(advice.Action);
        Assert.Equal(BedCorner.FarRight, shim.Corner);
        double stacked = shim.Height.Millimetres;
        Assert.Equal(0, s_sums.Min(s => Math.Abs(s - stacked)), 9);
        // A raised corner raises the head past a level beam: one for one. Fewer washers may cost 0.1 mm.
        Assert.True(Math.Abs(stacked - height) <= Math.Max(0.1, s_sums.Min(s => Math.Abs(s - height))) + 1e-9, $"{stacked} for {height}");
        // The mark falls by as much as the head rises.
        Assert.Equal(height - stacked, advice.Expected!.Mark.Point.V, 6);
        Assert.Equal(0, advice.Expected.Mark.Point.U, 6);
        Assert.InRange(Math.Sqrt(advice.Expected.Mark.Covariance.Vv), 0.3 * stacked, stacked);
        Assert.Contains("far right", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_stock_any_height_can_be_asked_for() =>
        Assert.Equal(new VisitAction.Shim(BedCorner.FarRight, Some.Mm(0.9)), SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 0.9)]).Action);

    [Fact]
    public void A_shim_that_does_what_it_should_ends_the_visit()
    {
        VisitEvent[] shimmed = [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 1), new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(1)), SomeVisit.At(BedCorner.FarLeft), SomeVisit.At(BedCorner.FarRight)];
        VisitAdvice advice = SomeVisit.Advise(s_stocked, shimmed);
        Assert.IsType<VisitAction.Done>(advice.Action);
        Assert.Equal(-1, advice.State.Survey!.Response.Mean, 0.05);
        Assert.InRange(advice.State.Survey.Response.StandardDeviation, 0.05, 0.25);
    }

    [Fact]
    public void A_shim_that_did_half_as_much_as_expected_is_followed_by_a_fitting_second_one()
    {
        VisitEvent[] shimmed = [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 1.6), new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(1.6)), SomeVisit.At(BedCorner.FarLeft), SomeVisit.At(BedCorner.FarRight, v: 0.8)];
        VisitAdvice advice = SomeVisit.Advise(s_stocked, shimmed);
        Assert.Equal(-0.5, advice.State.Survey!.Response.Mean, 0.05);
        VisitAction.Shim second = Assert.IsType<VisitAction.Shim>(advice.Action);
        Assert.Equal(BedCorner.FarRight, second.Corner);
        // 0.8 mm are left, at half a millimetre of mark for one of shim.
        Assert.Equal(1.6, second.Height.Millimetres, 0.11);
        Assert.InRange(advice.Expected!.Mark.Point.V, -0.1, 0.1);
    }

    [Fact]
    public void A_far_right_corner_that_is_too_low_has_leg_2_aligned_again_at_the_far_end_and_then_the_near_right_corner_shimmed()
    {
        List<VisitEvent> events = [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: -1)];
        VisitAdvice advice = SomeVisit.Advise(s_stocked, [.. events]);
        Assert.Equal(new VisitAction.Realign("2", GantryEnd.Far), advice.Action);
        Assert.Contains("cannot be lowered", advice.Reason, StringComparison.Ordinal);

        events.Add(new VisitEvent.Realign("2", GantryEnd.Far));
        SimulatedVisit machine = new() { Twist = -1, Noise = 0 };
        List<VisitAction> actions = [];
        do
        {
            advice = SomeVisit.Advise(s_stocked, [.. events]);
            actions.Add(advice.Action);
            if (advice.Action is not VisitAction.Done)
                events.Add(machine.Do(advice.Action));
        }
        while (advice.Action is not (VisitAction.Done or VisitAction.Stop) && actions.Count < 60);

        // The survey's far marks are marks of leg 2 there: the first thing is a turn.
        Assert.Equal("2", Assert.IsType<VisitAction.Turn>(actions[0]).Leg);
        VisitAction.Fire[] fired = [.. actions.OfType<VisitAction.Fire>()];
        Assert.NotEmpty(fired);
        Assert.All(fired, f => Assert.Equal(("2", 400), (f.Leg, f.Gantry!.Value.Millimetres)));
        VisitAction.Shim shim = Assert.IsType<VisitAction.Shim>(actions.First(a => a is VisitAction.Shim));
        Assert.Equal(BedCorner.NearRight, shim.Corner);
        Assert.Equal(1, shim.Height.Millimetres, 0.35);
        Assert.IsType<VisitAction.Done>(actions[^1]);
        Assert.InRange(machine.Spread(), 0, 0.5);
    }

    [Fact]
    public void Too_thick_a_stock_is_said_to_be_so()
    {
        VisitSetup thick = SomeVisit.Machine with { Stock = [new("3 mm", Some.Mm(3), Some.Mm(0.05))] };
        VisitAdvice advice = SomeVisit.Advise(thick, [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 1)]);
        Assert.IsType<VisitAction.Stop>(advice.Action);
        Assert.Contains("stock", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Shims_that_change_nothing_end_in_a_look_at_the_frame()
    {
        SimulatedVisit machine = new() { Twist = 1, ShimResponse = 0, Noise = 0 };
        IReadOnlyList<VisitAdvice> given = SomeVisit.Play(s_stocked, [], machine.Do);
        Assert.IsType<VisitAction.Stop>(given[^1].Action);
        Assert.Contains("how the gantry lies", given[^1].Reason, StringComparison.Ordinal);
        Assert.InRange(given.Count(g => g.Action is VisitAction.Shim), 1, 6);
    }
}
