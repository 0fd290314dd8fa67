using MarkReader.Practice.Machines;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Machines;

public sealed class BelowTheHeadTests
{
    [Theory]
    [InlineData(TapeBelow.Lift)]
    [InlineData(TapeBelow.Tube)]
    public void On_a_straight_machine_the_beam_goes_straight_down_the_middle(TapeBelow below)
    {
        foreach (double drop in new double[] { 1, 50, 300 })
            Assert.Equal(0, Some.Straight().TrueMark(Some.Three(drop, below, 250, 200)).ValueOrThrow().Place.DistanceTo(CardPoint.Origin), 1e-12);
    }

    /// <summary>Mirror three tilted by 10 mrad: 20.00266709 mm over 1000 mm about the normal of the plane of incidence, 14.14296063 mm about the axis in its face.</summary>
    [Theory]
    [InlineData("A", 14.14296063, false)]
    [InlineData("B", 20.00266709, true)]
    public void Two_heights_of_the_lift_show_how_far_the_beam_is_from_square_to_the_bed(string screw, double distance, bool alongX)
    {
        PracticeMachine machine = Some.Straight().WithFrame(PracticeLeg.Three, Some.CentreFrame(pitch: 40 * Math.Tan(0.010)))
            .Turn(PracticeLeg.Three, screw, 1).ValueOrThrow();
        CardVector walk = machine.TrueMark(Some.Three(1100)).ValueOrThrow().Place - machine.TrueMark(Some.Three(100)).ValueOrThrow().Place;
        Assert.Equal(distance, walk.Magnitude, 2e-8);
        Assert.Equal(alongX, Math.Abs(walk.U) > 100 * Math.Abs(walk.V));
        Assert.Equal(!alongX, Math.Abs(walk.V) > 100 * Math.Abs(walk.U));
    }

    [Fact]
    public void An_error_at_the_entry_hole_passes_through_to_the_nozzle()
    {
        PracticeMachine machine = Some.Straight().MoveTarget(PracticeLeg.Two, new(0.5, -0.3)).ValueOrThrow();
        CardVector entry = machine.PassageAt(BeamPlace.HeadEntry, Some.Three(10)).ValueOrThrow().Offset;
        CardVector lens = machine.PassageAt(BeamPlace.Lens, Some.Three(10)).ValueOrThrow().Offset;
        Assert.Equal(-0.5, entry.U, 1e-12);
        Assert.Equal(0.3, entry.V, 1e-12);
        // A beam too high by 0.3 meets mirror three, whose upper edge leans towards it, 0.3 sooner; u of the entry hole points to −y.
        Assert.Equal(-0.3, lens.U, 1e-12);
        Assert.Equal(0.5, lens.V, 1e-12);
    }

    [Fact]
    public void A_head_that_rolls_with_the_gantry_sends_the_beam_off_square_to_the_bed_and_a_tube_on_it_shows_less()
    {
        // Right rail high by 560·tan(2 mrad): the head rolls by 2 mrad. The level beam leaves mirror three 4 mrad from plumb, 2 mrad from the tube.
        double high = 560 * Math.Tan(0.002);
        PracticeMachine machine = Some.Straight() with { RollFactor = 0, Bed = BedFrame.Flat.With(BedCorner.NearRight, new(Some.Mm(high), Length.Zero)).With(BedCorner.FarRight, new(Some.Mm(high), Length.Zero)) };
        double Walk(TapeBelow below) => (machine.TrueMark(Some.Three(600, below)).ValueOrThrow().Place - machine.TrueMark(Some.Three(100, below)).ValueOrThrow().Place).U;
        Assert.Equal(500 * Math.Tan(0.004), Math.Abs(Walk(TapeBelow.Lift)), 1e-9);
        Assert.Equal(500 * Math.Tan(0.002), Math.Abs(Walk(TapeBelow.Tube)), 1e-9);
    }
}
