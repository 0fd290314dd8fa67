using MarkReader.Practice.Frames;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Machines;

/// <summary>The rules of a 45° mirror, seen on the machine's tapes. Figures: L·tan(2α) and the like, worked out by vector reflection in another program.</summary>
public sealed class FoldTests
{
    /// <summary>1000 mm: 10 mrad about the normal of the plane of incidence 20.00266709 mm, about the axis in the face 14.14296063 mm.</summary>
    [Theory]
    [InlineData("A", 20.00266709)]
    [InlineData("B", 14.14296063)]
    public void A_tilt_of_10_mrad_walks_the_mark_over_1000_mm(string screw, double walk)
    {
        foreach (PracticeLeg leg in new[] { PracticeLeg.One, PracticeLeg.Two })
        {
            PracticeMachine machine = Some.Straight(farOne: 1080, farTwo: 1060).WithFrame(leg, Some.CentreFrame(arm: 40, pitch: 40 * Math.Tan(0.010)));
            PracticeMachine turned = machine.Turn(leg, screw, 1).ValueOrThrow();
            Assert.Equal(walk, Mark(turned, leg, 1000).DistanceTo(Mark(turned, leg, 0)), 2e-8);
            Assert.Equal(0, Mark(machine, leg, 1000).DistanceTo(Mark(machine, leg, 0)), 1e-11);
        }
    }

    /// <summary>M4 on an arm of 40 mm: a full turn gives 35.010722 mm at 1000 mm.</summary>
    [Fact]
    public void A_full_turn_of_a_screw_walks_the_mark_by_35_mm_over_1000_mm()
    {
        PracticeMachine machine = Some.Straight(farOne: 1080).WithFrame(PracticeLeg.One, Some.CentreFrame()).Turn(PracticeLeg.One, "A", 1).ValueOrThrow();
        CardVector walk = Mark(machine, PracticeLeg.One, 1000) - Mark(machine, PracticeLeg.One, 0);
        Assert.Equal(35.010722, Math.Abs(walk.U), 5e-7);
        Assert.Equal(0, walk.V, 1e-11);
    }

    [Fact]
    public void Pushing_the_right_hand_screw_of_mirror_one_moves_the_beam_left_and_pushing_the_upper_one_moves_it_down()
    {
        // Pushed forwards on its right, seen from behind, a face turns to the left; pushed above, it looks down.
        PracticeMachine machine = Some.Straight().WithFrame(PracticeLeg.One, Some.CentreFrame());
        Assert.True(Mark(machine.Turn(PracticeLeg.One, "A", 0.1).ValueOrThrow(), PracticeLeg.One, 400).U < -1);
        Assert.True(Mark(machine.Turn(PracticeLeg.One, "B", 0.1).ValueOrThrow(), PracticeLeg.One, 400).V < -1);
    }

    /// <summary>A mirror moved by d along its normal moves the beam by 2d·sin 45° = √2·d: 0.1 mm gives 0.141421 mm at every path length.</summary>
    [Theory]
    [InlineData(PracticeLeg.One)]
    [InlineData(PracticeLeg.Two)]
    public void Three_screws_turned_alike_move_the_beam_sideways_by_root_2_and_do_not_turn_it(PracticeLeg leg)
    {
        ThreeContactFrame frame = new(
            Some.Contact(-15, -15, Some.Screw("C")), Some.Contact(15, -15, Some.Screw("A")), Some.Contact(-15, 15, Some.Screw("B")), Some.Mm(5));
        PracticeMachine machine = Some.Straight().WithFrame(leg, frame), moved = machine;
        foreach (string screw in new[] { "A", "B", "C" })
            moved = moved.Turn(leg, screw, 0.1 / 0.7).ValueOrThrow();
        foreach (double travel in new double[] { 0, 200, 400 })
        {
            CardVector walk = Mark(moved, leg, travel) - Mark(machine, leg, travel);
            Assert.Equal(0.141421, Math.Abs(walk.U), 5e-7);
            Assert.Equal(0, walk.V, 1e-12);
        }
    }

    /// <summary>Mirror two moved by s along the beam that leaves it moves that beam sideways by s.</summary>
    [Fact]
    public void Mirror_two_moved_along_its_outgoing_beam_moves_that_beam_1_to_1()
    {
        PracticeMachine machine = Some.Straight(), moved = machine.MoveTarget(PracticeLeg.One, new(0.3, 0)).ValueOrThrow();
        CardVector walk = Mark(moved, PracticeLeg.Two, 250) - Mark(machine, PracticeLeg.Two, 250);
        Assert.Equal(0.3, Math.Abs(walk.U), 1e-12);
        Assert.Equal(0, walk.V, 1e-12);
    }

    [Theory]
    [InlineData(PracticeLeg.One, 0)]
    [InlineData(PracticeLeg.One, 45)]
    [InlineData(PracticeLeg.Two, 0)]
    [InlineData(PracticeLeg.Two, 30)]
    public void A_target_moved_along_its_tape_moves_the_mark_the_other_way(PracticeLeg leg, double incidence)
    {
        PracticeMachine machine = Some.Straight(incidence, incidence);
        PracticeMachine moved = machine.MoveTarget(leg, new(0.5, -0.2)).ValueOrThrow();
        CardVector walk = Mark(moved, leg, 100) - Mark(machine, leg, 100);
        Assert.Equal(-0.5, walk.U, 1e-12);
        Assert.Equal(0.2, walk.V, 1e-12);
    }

    [Fact]
    public void The_nozzle_moves_under_the_beam()
    {
        PracticeMachine moved = Some.Straight().MoveTarget(PracticeLeg.Three, new(0.5, -0.2)).ValueOrThrow();
        CardVector offset = moved.PassageAt(BeamPlace.Nozzle, Some.Three(10)).ValueOrThrow().Offset;
        Assert.Equal(-0.5, offset.U, 1e-12);
        Assert.Equal(0.2, offset.V, 1e-12);
        Assert.False(moved.MoveTarget(PracticeLeg.Three, new(20, 0)).TryGet(out _, out Failure? failure));
        Assert.Equal(PracticeFailures.TargetAtItsEnd, failure.Code);
    }

    /// <summary>Tape at 45° shows offsets along u longer by 1/cos 45°, and the beam goes on by u·sin 45° more.</summary>
    [Fact]
    public void Tape_on_mirror_two_s_face_shows_longer_offsets_at_a_longer_path()
    {
        PracticeMachine Turned(double incidence) => Some.Straight(incidence).WithFrame(PracticeLeg.One, Some.CentreFrame())
            .Turn(PracticeLeg.One, "A", 0.1).ValueOrThrow().Turn(PracticeLeg.One, "B", 0.2).ValueOrThrow();
        CardPoint square = Mark(Turned(0), PracticeLeg.One, 400), face = Mark(Turned(45), PracticeLeg.One, 400);
        double slope = square.U / 480, rise = square.V / 480;
        double path = 480 + (face.U * Math.Sqrt(0.5));
        Assert.Equal(slope * path, face.U * Math.Sqrt(0.5), 1e-9);
        Assert.Equal(rise * path, face.V, 1e-9);
    }

    private static CardPoint Mark(PracticeMachine machine, PracticeLeg leg, double travel) =>
        machine.TrueMark(leg == PracticeLeg.One ? Some.One(travel) : Some.Two(travel)).ValueOrThrow().Place;
}
