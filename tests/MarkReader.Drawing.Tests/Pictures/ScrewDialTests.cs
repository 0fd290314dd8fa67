using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

public sealed class ScrewDialTests
{
    [Theory]
    [InlineData(0.125)]
    [InlineData(-0.09375)]
    [InlineData(0.0078125)]
    [InlineData(-0.75)]
    [InlineData(1.25)]
    [InlineData(-2.5)]
    public void The_arrow_ends_at_the_turn_s_angle_clockwise_from_the_top(double turns)
    {
        ScrewDial dial = SomePictures.Dial with { Turns = turns };
        PixelPoint end = dial.Arc()[^1];
        PixelVector from = end - ScrewDial.DialMiddle;
        double seen = Math.Atan2(from.X, -from.Y) / (2 * Math.PI);
        Assert.Equal(0, Math.IEEERemainder(seen - turns, 1), 1e-9);
        Assert.True(from.Magnitude > 8, "the end is in the middle");
        Assert.Contains(DrawnPicture.Of(dial).Outlines("#C44E00", filled: true), area => area[0].DistanceTo(end) < 0.01);
    }

    [Fact]
    public void The_way_goes_round_as_often_as_the_screw()
    {
        IReadOnlyList<PixelPoint> way = (SomePictures.Dial with { Turns = -2.5 }).Arc();
        double[] angles = [.. way.Select(p => p - ScrewDial.DialMiddle).Select(p => Math.Atan2(p.X, -p.Y))];
        double turned = angles.Skip(1).Zip(angles, (b, a) => Math.IEEERemainder(b - a, 2 * Math.PI)).Sum() / (2 * Math.PI);
        Assert.Equal(-2.5, turned, 1e-9);
    }

    [Fact]
    public void Contacts_and_turn_are_told_in_words()
    {
        IReadOnlyList<string> words = DrawnPicture.Of(SomePictures.Dial).Words;
        Assert.All(["A", "B", "pivot", "seen facing the knobs", "A: 1/8 turn clockwise"], w => Assert.Contains(w, words));
    }
}
