using CsCheck;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Truth;

public sealed class MachineTruthTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    public void A_leg_s_spread_is_its_slope_times_its_travel_across_the_beam_whatever_the_tape(double incidence)
    {
        PracticeMachine machine = Some.Straight(incidence).WithFrame(PracticeLeg.One, Some.CentreFrame())
            .Turn(PracticeLeg.One, "A", 0.07).ValueOrThrow().Turn(PracticeLeg.One, "B", 0.1).ValueOrThrow();
        BeamSlope slope = machine.TrueSlope(PracticeLeg.One).ValueOrThrow();
        Assert.True(slope.Magnitude > 3);
        Assert.Equal(slope.Magnitude / 1000 * 400, machine.LegSpread(PracticeLeg.One).ValueOrThrow().Greatest.Millimetres, 1e-9);
    }

    [Fact]
    public void The_slope_of_leg_one_walks_leg_two_s_marks_as_well()
    {
        PracticeMachine machine = Some.Straight().WithFrame(PracticeLeg.One, Some.CentreFrame()).Turn(PracticeLeg.One, "B", 0.02).ValueOrThrow();
        BeamSlope slope = machine.TrueSlope(PracticeLeg.One).ValueOrThrow();
        MarkSpread bed = machine.BedSpread().ValueOrThrow();
        // The tilt out of the plane stays with the beam: v rises by slope times the whole path, least at the near left, most at the far right.
        Assert.Equal(Math.Abs(slope.V) / 1000 * (400 + 500), bed.Greatest.Millimetres, 0.01);
    }

    [Fact]
    public void A_bend_shows_in_the_spread_of_many_stations_and_not_in_that_of_the_ends()
    {
        PracticeMachine machine = Some.Straight() with { HeadRail = new(new RailBend(BendShape.Parabola, Some.Mm(0.1), Length.Zero)) };
        Assert.Equal(0.1, machine.LegSpread(PracticeLeg.Two).ValueOrThrow().Greatest.Millimetres, 1e-12);
        Assert.Equal(0, machine.LegSpread(PracticeLeg.Two, stations: 2).ValueOrThrow().Greatest.Millimetres, 1e-12);
        Assert.Equal(0.1, machine.BedSpread().ValueOrThrow().Greatest.Millimetres, 1e-12);
        Assert.Equal(0, machine.BedSpread(2).ValueOrThrow().Greatest.Millimetres, 1e-12);
        Assert.Equal(0, machine.TrueSlope(PracticeLeg.Two).ValueOrThrow().Magnitude, 1e-12);
    }

    [Fact]
    public void The_spread_of_marks_is_by_hand()
    {
        MarkSpread spread = MarkSpread.Of([new(0, 0), new(3, 0), new(0, 4)]);
        Assert.Equal(5, spread.Greatest.Millimetres, 1e-12);
        Assert.Equal(new CardPoint(1.5, 2), spread.Middle);
        Assert.Equal(2.5, spread.FromMiddle.Millimetres, 1e-12);
        Assert.Throws<ArgumentException>(() => MarkSpread.Of([]));
    }

    [Fact]
    public void No_mark_is_farther_from_the_middle_than_the_greatest_distance_and_half_of_it_at_least() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], (u, v) => new CardPoint(u, v)).Array[1, 20].Sample(marks =>
        {
            MarkSpread spread = MarkSpread.Of(marks);
            return spread.FromMiddle.Millimetres <= spread.Greatest.Millimetres + 1e-12
                && spread.FromMiddle.Millimetres >= (spread.Greatest.Millimetres / 2) - 1e-12;
        });

    [Fact]
    public void Passages_name_offset_beam_and_hole()
    {
        PracticeMachine machine = Some.Straight().MoveTarget(PracticeLeg.Two, new(1, 0)).ValueOrThrow();
        BeamPassage passage = machine.PassageAt(BeamPlace.HeadEntry, Some.Three(50)).ValueOrThrow();
        Assert.Equal(-1, passage.Offset.U, 1e-12);
        Assert.Equal(9, passage.Radius.Millimetres);
        Assert.False(machine.PassageAt(BeamPlace.Lens, Some.Two(0)).TryGet(out _, out _));
    }
}
