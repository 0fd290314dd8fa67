using MarkReader.Alignment.NearFarBelow;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.NearFarBelow;

public sealed class SquarenessBelowTests
{
    [Fact]
    public void Squareness_of_two_heights_is_the_walk_over_their_difference()
    {
        // 0.6 mm and −0.8 mm over 200 mm: 3 and −4 mrad; marks of 0.05 mm leave 0.05·√2/200 = 0.354 mrad.
        BeamSquareness below = Of(0.6, -0.8, axis: 1, tolerance: 20);
        Assert.Equal(3, below.Slope.U, 1e-9);
        Assert.Equal(-4, below.Slope.V, 1e-9);
        Assert.Equal(5, below.Slope.Magnitude, 1e-9);
        Assert.Equal(Math.Sqrt((0.125 * 1) + 1), Math.Sqrt(below.Slope.Covariance.Uu), 1e-9);
        Assert.Equal(Verdict.Within, below.Verdict.Verdict);
    }

    [Theory]
    [InlineData(9, "Within")]
    [InlineData(5.5, "Undecided")]
    [InlineData(4, "Undecided")]
    [InlineData(1.5, "Outside")]
    public void Verdict_counts_the_uncertainty_of_the_lift(double tolerance, string verdict) =>
        Assert.Equal(verdict, Of(0.6, -0.8, axis: 1, tolerance).Verdict.Verdict.ToString());

    [Fact]
    public void The_lift_s_own_squareness_does_not_go_away_with_more_marks()
    {
        double Deviation(int marks) => Math.Sqrt(SquarenessBelow.Of(
            [.. Enumerable.Range(0, marks).Select(i => Some.Mark(i % 2 == 0 ? 60 : 260, 0, 0, 0.05))], Angle.FromMilliradians(2), Angle.FromMilliradians(5)).ValueOrThrow().Slope.Covariance.Vv);
        Assert.InRange(Deviation(100), 2, 2.01);
        Assert.True(Deviation(4) > Deviation(100));
    }

    [Fact]
    public void One_height_says_nothing_and_a_tolerance_of_zero_is_refused()
    {
        Assert.False(SquarenessBelow.Of([Some.Mark(60, 0, 0)], Angle.Zero, Angle.FromMilliradians(5)).TryGet(out _, out Failure? failure));
        Assert.Equal("TOO_FEW_STATIONS", failure.Code.Name);
        Assert.False(SquarenessBelow.Of([Some.Mark(60, 0, 0), Some.Mark(260, 0, 0)], Angle.Zero, Angle.Zero).TryGet(out _, out failure));
        Assert.Equal("SQUARENESS_TOLERANCE_INVALID", failure.Code.Name);
    }

    private static BeamSquareness Of(double u, double v, double axis, double tolerance) => SquarenessBelow.Of(
        [Some.Mark(60, 1, 1, 0.05), Some.Mark(260, 1 + u, 1 + v, 0.05)], Angle.FromMilliradians(axis), Angle.FromMilliradians(tolerance)).ValueOrThrow();
}
