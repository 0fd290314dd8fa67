using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

public sealed class VisitCentringTests
{
    private static readonly VisitSetup s_thick = SomeVisit.WithAperture with { Stock = [new("1 mm", Some.Mm(1), Some.Mm(0.03))] };

    [Fact]
    public void A_mark_to_the_side_has_the_target_moved_along_u_towards_it()
    {
        VisitAdvice advice = At(1.4, 0);
        Assert.Equal(new VisitAction.MoveTarget(new(1.4, 0)), advice.Action);
        Assert.Equal(new CardPoint(0, 0), Rounded(advice.Expected!.Mark.Point));
        Assert.Contains("right", advice.Reason, StringComparison.Ordinal);
        Assert.Equal(Verdict.Outside, advice.State.Centring!.Verdict.Verdict);
        Assert.Equal(new VisitAction.MoveTarget(new(-1.4, 0)), At(-1.4, 0).Action);
    }

    [Fact]
    public void A_mark_too_high_has_the_target_raised_with_shims()
    {
        VisitAdvice advice = At(0, 1.234);
        Assert.Equal(new VisitAction.MoveTarget(new(0, 1.23)), advice.Action);
        Assert.Contains("too high", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_shims_come_from_the_stock() =>
        Assert.Equal(new VisitAction.MoveTarget(new(0, 1.3)), At(0, 1.27, SomeVisit.WithAperture with { Stock = SomeVisit.Washers }).Action);

    /// <summary>A stack too high would leave the mark too low, which asks for the tube and for all legs again.</summary>
    [Theory]
    [InlineData(0.8, 1)]
    [InlineData(1.6, 1)]
    [InlineData(1.9, 2)]
    public void They_are_rather_too_low_than_much_too_high(double height, double shim) =>
        Assert.Equal(new VisitAction.MoveTarget(new(0, shim)), At(0, height, s_thick).Action);

    [Fact]
    public void A_stock_that_makes_no_fitting_height_is_said_to_lack_one()
    {
        VisitAdvice advice = At(0, 0.7, s_thick);
        Assert.IsType<VisitAction.Stop>(advice.Action);
        Assert.Contains("stock", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void While_it_is_open_whether_a_shim_is_needed_at_all_another_mark_is_asked_for() => Assert.IsType<VisitAction.Survey>(At(0, 0.45, s_thick).Action);

    [Fact]
    public void A_mark_too_low_has_the_tube_raised()
    {
        VisitAdvice advice = At(0, -1.1);
        Assert.Equal(new VisitAction.RaiseTube(Some.Mm(1.1)), advice.Action);
        Assert.Contains("unplug", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Sideways_comes_before_the_tube_which_makes_the_legs_stale() =>
        Assert.Equal(new VisitAction.MoveTarget(new(1.4, 0)), At(1.4, -1.1).Action);

    [Fact]
    public void A_mark_within_is_left_alone()
    {
        VisitAdvice advice = At(0.1, -0.1);
        Assert.IsType<VisitAction.Done>(advice.Action);
        Assert.Equal(Verdict.Within, advice.State.Centring!.Verdict.Verdict);
    }

    [Fact]
    public void The_centre_is_where_the_aperture_is()
    {
        VisitSetup off = SomeVisit.WithAperture with { Aperture = new(Some.Point(3, -2, SomeVisit.Sigma), Some.Mm(0.5)) };
        Assert.IsType<VisitAction.Done>(At(3, -2, off).Action);
        Assert.Equal(new VisitAction.MoveTarget(new(-3, 0)), At(0, -2, off).Action);
    }

    [Fact]
    public void After_the_move_one_mark_at_any_corner_tells()
    {
        VisitEvent[] moved = [.. SomeVisit.Aligned, .. BedCorners.All.Select(c => SomeVisit.At(c, 1.4)), new VisitEvent.MoveTarget(new(1.4, 0))];
        Assert.IsType<VisitAction.Survey>(SomeVisit.Advise(SomeVisit.WithAperture, moved).Action);
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.WithAperture, [.. moved, SomeVisit.At(BedCorner.FarRight, 0.02, 0.03)]);
        Assert.IsType<VisitAction.Done>(advice.Action);
        Assert.Equal(0.02, advice.State.Centring!.Offset!.Vector.U, 3);
    }

    [Fact]
    public void A_machine_that_is_off_on_both_axes_ends_centred()
    {
        foreach (CardVector off in new CardVector[] { new(1.5, 1.2), new(-1.5, -1.2), new(0.4, 0.45), new(-0.45, 0) })
        {
            SimulatedVisit machine = new() { Steady = off, SlopeOne = new(3, 2), SlopeTwo = new(-2, 3), Random = new(3) };
            IReadOnlyList<VisitAdvice> given = SomeVisit.Play(SomeVisit.WithAperture, [], machine.Do);
            Assert.IsType<VisitAction.Done>(given[^1].Action);
            Assert.InRange(machine.AtHead(250, 200).Magnitude, 0, 0.6);
            Assert.InRange(machine.Spread(), 0, 0.55);
        }
    }

    private static VisitAdvice At(double u, double v, VisitSetup? setup = null) =>
        SomeVisit.Advise(setup ?? SomeVisit.WithAperture, [.. SomeVisit.Aligned, .. BedCorners.All.Select(c => SomeVisit.At(c, u, v))]);

    private static CardPoint Rounded(CardPoint p) => new(Math.Round(p.U, 6) + 0.0, Math.Round(p.V, 6) + 0.0);
}
