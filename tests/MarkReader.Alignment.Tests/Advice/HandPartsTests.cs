using MarkReader.Alignment.Advice;

namespace MarkReader.Alignment.Tests.Advice;

public sealed class HandPartsTests
{
    [Theory]
    [InlineData(0.1875, "3/16 turn clockwise")]
    [InlineData(-0.125, "1/8 turn counter-clockwise")]
    [InlineData(1, "1 turn clockwise")]
    [InlineData(-1.5, "1 1/2 turns counter-clockwise")]
    [InlineData(2, "2 turns clockwise")]
    [InlineData(0.078125, "5/64 turn (28°) clockwise")]
    public void Turns_are_said_as_a_hand_makes_them(double turns, string said) => Assert.Equal(said, HandParts.Say(turns));

    // 1/32 turn is what a hand sets by eye: common practice, no source.
    [Theory]
    [InlineData(0.1875, "3/16 turn clockwise")]
    [InlineData(-0.03125, "1/32 turn (11°) counter-clockwise")]
    [InlineData(0.0390625, "a touch more than 1/32 turn clockwise (14°)")]
    [InlineData(-1.0859375, "a touch less than 1 3/32 turns counter-clockwise (391°)")]
    [InlineData(0.015625, "a touch clockwise, less than 1/32 turn (6°)")]
    [InlineData(-0.0078125, "a touch counter-clockwise, less than 1/32 turn (3°)")]
    [InlineData(0, "no turn")]
    public void What_is_finer_than_a_hand_sets_is_said_as_a_touch(double turns, string said)
    {
        HandTurn turn = HandTurn.Nearest(turns, 0);
        Assert.Equal((said, turns), (turn.Advice, turn.Turns));
        Assert.Equal(said.Contains("touch", StringComparison.Ordinal), turn.IsFine);
    }

    [Theory]
    [InlineData(0.18, 0.01, 0.1875)]
    [InlineData(0.16, 0.01, 0.15625)]
    [InlineData(0.17, 0.003, 0.171875)]
    [InlineData(-0.3, 0.05, -0.3125)]
    [InlineData(0.002, 0.005, 0)]
    public void The_coarsest_part_that_is_near_enough_is_taken(double turns, double allowed, double rounded) =>
        Assert.Equal(rounded, HandParts.Round(turns, allowed), 1e-12);

    [Theory]
    [InlineData(0.13, 0.01, "1/8 turn", "1/8 turn clockwise")]
    [InlineData(-0.13, 0.01, "1/8 turn", "1/8 turn counter-clockwise")]
    [InlineData(-0.002, 0.005, "no turn", "no turn")]
    public void A_hand_s_turn_is_said_with_and_without_its_direction(double turns, double allowed, string size, string text)
    {
        HandTurn turn = HandTurn.Nearest(turns, allowed);
        Assert.Equal((size, text), (turn.Size, turn.Text));
    }
}
