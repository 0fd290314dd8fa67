using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Practising;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Practising;

public sealed class ActionTextTests
{
    public static TheoryData<string, VisitAction> Lines => new()
    {
        { "fire 1 480", new VisitAction.Fire("1", 480, null) },
        { "  fire  2   60,5 ", new VisitAction.Fire("2", 60.5, null) },
        { "turn 1 A 1/8", new VisitAction.Turn("1", "A", 0.125) },
        { "turn 1 A -3/16", new VisitAction.Turn("1", "A", -0.1875) },
        { "turn 1 A −3/16", new VisitAction.Turn("1", "A", -0.1875) },
        { "turn 2 B 1 1/8 ccw", new VisitAction.Turn("2", "B", -1.125) },
        { "turn 2 B 0.25 cw", new VisitAction.Turn("2", "B", 0.25) },
        { "turn 2 B 0,25 counter-clockwise", new VisitAction.Turn("2", "B", -0.25) },
        { "turn 2 B -1/4 ccw", new VisitAction.Turn("2", "B", 0.25) },
        { "survey 500 400", new VisitAction.Survey(Length.FromMillimetres(500), Length.FromMillimetres(400)) },
        { "shim farRight 0.8", new VisitAction.Shim(BedCorner.FarRight, Length.FromMillimetres(0.8)) },
        { "shim NEARLEFT -0.5", new VisitAction.Shim(BedCorner.NearLeft, Length.FromMillimetres(-0.5)) },
        { "move 0.5 -0.2", new VisitAction.MoveTarget(new(0.5, -0.2)) },
        { "raise 1.5", new VisitAction.RaiseTube(Length.FromMillimetres(1.5)) },
        { "realign 2 far", new VisitAction.Realign("2", GantryEnd.Far) },
    };

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_is_an_action(string line, VisitAction action) => Assert.Equal(action, ActionText.Read(line).ValueOrThrow());

    [Theory]
    [InlineData("dance")]
    [InlineData("fire 1")]
    [InlineData("fire 1 480 9")]
    [InlineData("turn 1 A 1/0")]
    [InlineData("turn 1 A 1/8 upwards")]
    [InlineData("turn 1 A 999")]
    [InlineData("turn 1 A nan")]
    [InlineData("turn 1 A ٣")]
    [InlineData("shim 3 0.8")]
    [InlineData("shim middle 0.8")]
    [InlineData("fire 1 inf")]
    [InlineData("realign 2 7")]
    public void What_is_no_action_is_refused(string line)
    {
        Assert.False(ActionText.Read(line).TryGet(out _, out Failure? failure));
        Assert.Equal("ACTION_UNREADABLE", failure.Code.Name);
    }

    [Fact]
    public void A_number_that_is_none_is_refused_as_numbers_are()
    {
        Assert.False(ActionText.Read("fire 1 far").TryGet(out _, out Failure? failure));
        Assert.Equal("NUMBER_UNREADABLE", failure.Code.Name);
    }
}
