using CsCheck;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Rails;

/// <summary>A mirror that turns about the incident beam turns the reflected beam 1:1 with it (vector law of reflection): a full roll is hidden.</summary>
public sealed class TwistTests
{
    [Fact]
    public void A_roll_that_mirror_two_makes_in_full_is_hidden_at_the_head() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[-5, 5]).Sample((near, far) =>
        {
            PracticeMachine machine = Bed(Some.Straight(), nearRight: near, farRight: far) with { RollFactor = 1 };
            return machine.BedSpread().ValueOrThrow().Greatest.Millimetres < 1e-9;
        });

    [Theory]
    [InlineData(1.0)]
    [InlineData(-0.7)]
    public void Without_roll_the_mark_falls_by_the_height_of_the_head_above_mirror_two(double height)
    {
        PracticeMachine machine = Bed(Some.Straight(), farRight: height) with { RollFactor = 0 };
        foreach (double x in new double[] { 0, 250, 500 })
        {
            foreach (double y in new double[] { 0, 200, 400 })
            {
                CardPoint mark = machine.TrueMark(Some.Two(x, y)).ValueOrThrow().Place;
                // The right rail stands 560 mm from mirror two, the head 60 + x.
                Assert.Equal(-height * (60 + x) / 560 * (y / 400), mark.V, 1e-5);
                Assert.Equal(0, mark.U, 1e-3);
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(1)]
    public void The_part_of_the_roll_that_mirror_two_makes_hides_that_part_of_the_twist(double factor)
    {
        double whole = Twist(Bed(Some.Straight(), farRight: 1) with { RollFactor = 0 });
        double left = Twist(Bed(Some.Straight(), farRight: 1) with { RollFactor = factor });
        Assert.Equal(-500.0 / 560, whole, 1e-5);
        Assert.Equal((1 - factor) * whole, left, 1e-5);
    }

    [Theory]
    [InlineData(BedCorner.NearRight)]
    [InlineData(BedCorner.FarLeft)]
    [InlineData(BedCorner.FarRight)]
    [InlineData(BedCorner.NearLeft)]
    public void A_high_corner_shows_its_mark_low_and_a_shim_undoes_a_low_one(BedCorner corner)
    {
        PracticeMachine flat = Some.Straight() with { RollFactor = 0.3 };
        PracticeStation at = Some.Two(
            corner is BedCorner.NearRight or BedCorner.FarRight ? 500 : 0, corner is BedCorner.FarLeft or BedCorner.FarRight ? 400 : 0);
        PracticeMachine high = flat.Shim(corner, Some.Mm(0.8)).ValueOrThrow();
        Assert.True(high.TrueMark(at).ValueOrThrow().Place.V < -0.5);

        PracticeMachine low = flat with { Bed = flat.Bed.With(corner, new(Some.Mm(-0.8), Length.Zero)) };
        Assert.True(low.TrueMark(at).ValueOrThrow().Place.V > 0.5);
        PracticeMachine cured = low.Shim(corner, Some.Mm(0.5)).ValueOrThrow().Shim(corner, Some.Mm(0.3)).ValueOrThrow();
        Assert.Equal(0, cured.TrueMark(at).ValueOrThrow().Place.DistanceTo(CardPoint.Origin), 1e-12);
        Assert.Equal(0, cured.BedSpread().ValueOrThrow().Greatest.Millimetres, 1e-12);
    }

    [Fact]
    public void A_left_corner_raises_mirror_two_and_shows_on_leg_one_too()
    {
        PracticeMachine machine = Some.Straight().Shim(BedCorner.FarLeft, Some.Mm(0.8)).ValueOrThrow() with { RollFactor = 0 };
        Assert.Equal(-0.8, machine.TrueMark(Some.One(400)).ValueOrThrow().Place.V, 1e-12);
        Assert.Equal(-0.4, machine.TrueMark(Some.One(200)).ValueOrThrow().Place.V, 1e-12);
        Assert.Equal(0, machine.TrueMark(Some.One(0)).ValueOrThrow().Place.V, 1e-12);
    }

    [Fact]
    public void A_tilted_but_flat_bed_shows_no_twist() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[0, 1]).Sample((level, right, far, factor) =>
        {
            PracticeMachine machine = Bed(Some.Straight(), level, level + right, level + far, level + right + far) with { RollFactor = factor };
            return Math.Abs(Twist(machine)) < 1e-4;
        });

    [Fact]
    public void Shims_can_be_taken_away_again_but_no_corner_goes_below_its_own_height()
    {
        BedFrame bed = BedFrame.Flat.Shim(BedCorner.FarRight, Some.Mm(1.2)).ValueOrThrow();
        Assert.Equal(0.2, bed.Shim(BedCorner.FarRight, Some.Mm(-1)).ValueOrThrow().FarRight.Shims.Millimetres, 1e-12);
        Assert.False(bed.Shim(BedCorner.FarRight, Some.Mm(-1.3)).TryGet(out _, out Failure? there));
        Assert.Equal(PracticeFailures.ShimNotThere, there.Code);
        Assert.False(bed.Shim(BedCorner.FarRight, Some.Mm(19)).TryGet(out _, out Failure? thick));
        Assert.Equal(PracticeFailures.ShimTooThick, thick.Code);
    }

    /// <summary>What stands out of the plane at the far right corner, v: v(0,0) − v(X,0) − v(0,Y) + v(X,Y).</summary>
    private static double Twist(PracticeMachine machine)
    {
        double V(double x, double y) => machine.TrueMark(Some.Two(x, y)).ValueOrThrow().Place.V;
        return V(0, 0) - V(500, 0) - V(0, 400) + V(500, 400);
    }

    private static PracticeMachine Bed(PracticeMachine machine, double nearLeft = 0, double nearRight = 0, double farLeft = 0, double farRight = 0)
    {
        static CornerHeight Built(double height) => new(Some.Mm(height), Length.Zero);
        return machine with { Bed = new(Built(nearLeft), Built(nearRight), Built(farLeft), Built(farRight)) };
    }
}
