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
