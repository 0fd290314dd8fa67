using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Tests.Support;

namespace MarkReader.Cameras.Tests.Boards;

public sealed class BoardCoverageTests
{
    [Fact]
    public void The_first_straight_photo_leaves_the_tilted_ones_to_take()
    {
        BoardCoverage coverage = BoardCoverage.Of([new SimulatedBoard(1).Views[0]])!;

        Assert.InRange(Assert.Single(coverage.Places).Tilt.Degrees, 0, 10);
        Assert.DoesNotContain(ViewNeed.Straight, coverage.Missing);
        Assert.Equal(
            [ViewNeed.FromLeft, ViewNeed.FromRight, ViewNeed.FromAbove, ViewNeed.FromBelow, ViewNeed.Turned],
            coverage.Missing.Take(5));
        Assert.Contains(ViewNeed.More, coverage.Missing);
    }

    [Fact]
    public void Many_photos_from_all_sides_lack_nothing_but_corners_at_most()
    {
        BoardCoverage coverage = BoardCoverage.Of([.. new SimulatedBoard(5, 40).Views])!;

        Assert.All(coverage.Missing, m => Assert.Equal(ViewNeed.Corners, m));
    }

    [Fact]
    public void Nothing_is_said_of_no_photo() => Assert.Null(BoardCoverage.Of([]));
}
