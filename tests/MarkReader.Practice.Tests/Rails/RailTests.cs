using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Rails;

public sealed class RailTests
{
    [Theory]
    [InlineData(BendShape.Parabola, 0.5, 1)]
    [InlineData(BendShape.Parabola, 0.25, 0.75)]
    [InlineData(BendShape.HalfSine, 0.5, 1)]
    [InlineData(BendShape.HalfSine, 1.0 / 6, 0.5)]
    [InlineData(BendShape.Parabola, 0, 0)]
    [InlineData(BendShape.HalfSine, 1, 0)]
    public void A_bent_gantry_rail_moves_leg_one_s_mark_the_other_way(BendShape shape, double part, double form)
    {
        PracticeMachine machine = Some.Straight() with { GantryRail = new(new RailBend(shape, Some.Mm(0.1), Some.Mm(-0.04))), RollFactor = 0 };
        CardPoint mark = machine.TrueMark(Some.One(400 * part)).ValueOrThrow().Place;
        Assert.Equal(-0.1 * form, mark.U, 1e-12);
        Assert.Equal(0.04 * form, mark.V, 1e-12);
    }

    [Theory]
    [InlineData(BendShape.Parabola, 0.25, 0.75)]
    [InlineData(BendShape.HalfSine, 0.5, 1)]
    public void A_bent_head_rail_moves_leg_two_s_mark_the_other_way(BendShape shape, double part, double form)
    {
        PracticeMachine machine = Some.Straight() with { HeadRail = new(new RailBend(shape, Some.Mm(0.1), Some.Mm(-0.04))) };
        CardPoint mark = machine.TrueMark(Some.Two(500 * part, 300)).ValueOrThrow().Place;
        Assert.Equal(-0.1 * form, mark.U, 1e-12);
        Assert.Equal(0.04 * form, mark.V, 1e-12);
    }

    [Fact]
    public void A_gantry_rail_bent_sideways_shifts_leg_two_s_beam_1_to_1()
    {
        // Mirror two moved by s along its outgoing beam moves that beam sideways by s.
        PracticeMachine machine = Some.Straight() with { GantryRail = new(new RailBend(BendShape.Parabola, Some.Mm(0.1), Length.Zero)) };
        Assert.Equal(0.1, Math.Abs(machine.TrueMark(Some.Two(250, 200)).ValueOrThrow().Place.U), 1e-12);
    }

    [Theory]
    [InlineData(0, -0.1 * 500 / 560)]
    [InlineData(250, -0.1 * 250 / 560)]
    [InlineData(500, 0)]
    public void A_left_rail_bent_upwards_lifts_the_gantry_s_left_end_alone(double x, double v)
    {
        PracticeMachine machine = Some.Straight() with { GantryRail = new(new RailBend(BendShape.Parabola, Length.Zero, Some.Mm(0.1))), RollFactor = 0 };
        Assert.Equal(v, machine.TrueMark(Some.Two(x, 200)).ValueOrThrow().Place.V, 1e-7);
    }

    [Theory]
    [InlineData(BendShape.Parabola, 4 * 0.1 / 400)]
    [InlineData(BendShape.HalfSine, Math.PI * 0.1 / 400)]
    public void A_carriage_that_follows_the_rail_s_slope_turns_the_beam_by_twice_its_yaw(BendShape shape, double slope)
    {
        // At the near end the carriage stands in place and is turned by the rail's end slope.
        PracticeMachine machine = Some.Straight() with { GantryRail = new(new RailBend(shape, Some.Mm(0.1), Length.Zero), TiltFollowing: 1) };
        double near = machine.TrueMark(Some.Two(0)).ValueOrThrow().Place.U, far = machine.TrueMark(Some.Two(500)).ValueOrThrow().Place.U;
        Assert.Equal(500 * Math.Tan(2 * Math.Atan(slope)), Math.Abs(far - near), 1e-12);
        Assert.Equal(0, machine.TrueMark(Some.Two(0, 200)).ValueOrThrow().Place.U - machine.TrueMark(Some.Two(500, 200)).ValueOrThrow().Place.U, 1e-12);
    }
}
