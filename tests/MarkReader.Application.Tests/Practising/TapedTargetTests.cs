using MarkReader.Application.Practising;
using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Practising;

public sealed class TapedTargetTests
{
    private static readonly TapedTarget s_plate = TapedTarget.Fresh(CardKinds.Find("plate")!, 1);

    /// <summary>Zones of 26 and 80 mm, a mark of 4 mm.</summary>
    [Theory]
    [InlineData("plate", 11)]
    [InlineData("bed", 38)]
    public void A_mark_may_go_as_far_as_it_lies_whole_in_the_free_zone(string card, double reach)
    {
        TapedTarget tape = TapedTarget.Fresh(CardKinds.Find(card)!, 1);
        Assert.Equal(reach, TapedTarget.Reach(tape.Card, Mm(4)).Millimetres, 1e-9);
        foreach ((double u, double v) in ((double, double)[])[(1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, -1)])
        {
            Assert.True(tape.Burn(new(u * (reach - 0.01), v * (reach - 0.01)), Mm(4)).TryGet(out _, out _));
            Assert.False(tape.Burn(new(u * (reach + 0.01), v * (reach + 0.01)), Mm(4)).TryGet(out _, out _));
        }
    }

    [Fact]
    public void A_mark_off_the_small_card_is_refused_with_the_card_that_has_room()
    {
        Assert.False(s_plate.Burn(new(14.25, -3), Mm(4)).TryGet(out _, out Failure? failure));
        Assert.Equal(("MARK_OFF_CARD", FailureKind.NotMeasurable), (failure.Code.Name, failure.Code.Kind));
        Assert.Equal("the mark at u 14.3, v -3.0 mm, 4.0 mm wide, is not whole in the free zone of the plate card, which ends 13 mm from the middle", failure.Message);
        Assert.StartsWith("use the bed card, whose free zone ends 40 mm from the middle", failure.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60, 0, 4)]
    [InlineData(double.NaN, 0, 4)]
    [InlineData(0, double.PositiveInfinity, 4)]
    [InlineData(0, 0, 81)]
    public void A_mark_that_no_card_has_room_for_names_none(double u, double v, double diameter)
    {
        Assert.False(s_plate.Burn(new(u, v), Mm(diameter)).TryGet(out _, out Failure? failure));
        Assert.Equal("MARK_OFF_CARD", failure.Code.Name);
        Assert.DoesNotContain("card", failure.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pulse_leaves_the_tape_as_it_was_and_gives_another()
    {
        TapedTarget one = s_plate.Burn(new(1, 2), Mm(3)).ValueOrThrow();
        TapedTarget two = one.Burn(new(-4, 0), Mm(3.5)).ValueOrThrow();
        Assert.Empty(s_plate.Burns);
        Assert.Equal([new(new(1, 2), Mm(3))], one.Burns);
        Assert.Equal([new(new(1, 2), Mm(3)), new(new(-4, 0), Mm(3.5))], two.Burns);
        Assert.Equal((s_plate.Card, s_plate.Number), (two.Card, two.Number));
    }

    [Fact]
    public void A_mark_without_width_is_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => s_plate.Burn(new(0, 0), Length.Zero));

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
