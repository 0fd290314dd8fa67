using MarkReader.Practice.Frames;
using MarkReader.Practice.Geometry;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Misalignment;

public sealed class RandomMachinesTests
{
    private const int Count = 400;

    [Fact]
    public void The_same_seed_gives_the_same_machine_and_another_one_another()
    {
        CardPoint Far(int seed) => RandomMachines.Draw(StatedMachine.Desktop, MisalignmentRanges.WithTwist, new(seed)).TrueMark(Some.One(400)).ValueOrThrow().Place;
        Assert.Equal(Far(5), Far(5));
        Assert.NotEqual(Far(5), Far(6));
    }

    [Fact]
    public void Without_any_range_every_machine_is_straight() =>
        Assert.All(Drawn(MisalignmentRanges.None, StatedMachine.Desktop, 20), m => Assert.Equal(0, m.BedSpread().ValueOrThrow().Greatest.Millimetres, 1e-10));

    [Fact]
    public void Slopes_fill_their_range_on_both_axes_of_both_legs()
    {
        PracticeMachine[] machines = Drawn(new(), StatedMachine.Desktop);
        AssertFilled([.. machines.Select(m => m.TrueSlope(PracticeLeg.One).ValueOrThrow().U)], 8);
        AssertFilled([.. machines.Select(m => m.TrueSlope(PracticeLeg.One).ValueOrThrow().V)], 8);
        BeamSlope[] second = [.. machines.Select(m => WithLegOneAligned(m).TrueSlope(PracticeLeg.Two).ValueOrThrow())];
        AssertFilled([.. second.Select(s => s.U)], 8);
        AssertFilled([.. second.Select(s => s.V)], 8);
    }

    [Fact]
    public void Arms_senses_backlash_paths_and_roll_are_drawn_as_stated()
    {
        PracticeMachine[] machines = Drawn(new(), StatedMachine.Desktop);
        Screw[] screws = [.. machines.SelectMany(m => m.MirrorOne.Frame.Screws.Concat(m.MirrorTwo.Frame.Screws))];
        Assert.Equal(4 * Count, screws.Length);
        Assert.InRange(screws.Count(s => s.Sense == ScrewSense.ClockwisePushes) / (double)screws.Length, 0.45, 0.55);
        Assert.All(screws, s => Assert.Equal(5, s.Backlash.Degrees, 1e-12));
        AssertFilled([.. screws.Select(s => (s.KnobTurns - s.ContactTurns) * 720 / 5)], 1);

        // Pivot lower left: screw A's arm runs to the right of it, screw B's upwards; a straight right-angled frame.
        FrameContact Contact(ThreeContactFrame frame, string name) => new[] { frame.First, frame.Second, frame.Third }.Single(c => c.Screw?.Name == name);
        AssertFilled([.. machines.Select(m => ((Contact(m.MirrorOne.Frame, "A").Right.Millimetres + 15) / 30) - 1)], 0.2);
        AssertFilled([.. machines.Select(m => ((Contact(m.MirrorTwo.Frame, "B").Up.Millimetres + 15) / 30) - 1)], 0.2);
        Assert.All(machines, m => Assert.Equal(-15, Contact(m.MirrorOne.Frame, "A").Up.Millimetres, 1e-12));

        double[] errors = [.. machines.SelectMany(m => new[] { m.LegOnePaths.Near.Millimetres - 80, m.LegOnePaths.Far.Millimetres - 480, m.LegTwoPaths.Near.Millimetres - 60, m.LegTwoPaths.Far.Millimetres - 560 })];
        Assert.InRange(Math.Sqrt(errors.Average(e => e * e)), 1.9, 2.1);
        AssertFilled([.. machines.Select(m => (2 * m.RollFactor) - 1)], 1);
        Assert.All(machines, m => Assert.Equal(0.05, m.Scatter.Measurement.Millimetres));
    }

    [Fact]
    public void Twist_lifts_or_lowers_one_corner_and_every_corner_has_its_turn()
    {
        PracticeMachine[] machines = Drawn(MisalignmentRanges.WithTwist, StatedMachine.Desktop);
        BedCorner[] corners = Enum.GetValues<BedCorner>();
        (BedCorner Corner, double Height)[] off = [.. machines.SelectMany(m => corners.Select(c => (c, m.Bed[c].Built.Millimetres)).Where(c => c.Millimetres != 0))];
        Assert.Equal(Count, off.Length);
        AssertFilled([.. off.Select(o => o.Height)], 1);
        Assert.All(corners, c => Assert.InRange(off.Count(o => o.Corner == c), Count / 6, Count / 3));
    }

    [Fact]
    public void Bent_rails_are_bent_by_their_height_in_any_direction()
    {
        RailBend[] bends = [.. Drawn(MisalignmentRanges.WithBentRails, StatedMachine.Desktop).SelectMany(m => new[] { m.GantryRail.Bend!, m.HeadRail.Bend! })];
        Assert.All(bends, b => Assert.Equal(0.1, Math.Sqrt(Math.Pow(b.Right.Millimetres, 2) + Math.Pow(b.Up.Millimetres, 2)), 1e-12));
        // Uniform directions: each component has half the mean square.
        Assert.InRange(bends.Average(b => Math.Pow(b.Right.Millimetres, 2)) / 0.01, 0.45, 0.55);
        Assert.InRange(bends.Average(b => b.Right.Millimetres * b.Up.Millimetres) / 0.01, -0.05, 0.05);
        Assert.InRange(bends.Count(b => b.Shape == BendShape.HalfSine), 0.4 * bends.Length, 0.6 * bends.Length);
    }

    [Fact]
    public void Every_drawn_machine_can_be_fired_at_both_ends_of_leg_one() =>
        Assert.All(Drawn(MisalignmentRanges.WithTwist, StatedMachine.Desktop), m =>
        {
            Assert.True(m.TrueMark(Some.One(0)).TryGet(out _, out _));
            Assert.True(m.TrueMark(Some.One(400)).TryGet(out _, out _));
        });

    [Fact]
    public void A_frame_stated_with_two_contacts_at_one_corner_is_a_fault()
    {
        StatedMachine wrong = StatedMachine.Desktop with { MirrorThree = StatedMachine.TwoScrewFrame with { Pivot = FrameCorner.LowerRight } };
        Assert.Throws<ArgumentException>(() => RandomMachines.Draw(wrong, new(), new(1)));
    }

    private static PracticeMachine[] Drawn(MisalignmentRanges ranges, StatedMachine stated, int count = Count)
    {
        Random random = new(11);
        return [.. Enumerable.Range(0, count).Select(_ => RandomMachines.Draw(stated, ranges, random))];
    }

    private static PracticeMachine WithLegOneAligned(PracticeMachine machine) => machine with
    {
        MirrorOne = machine.MirrorOne with
        {
            Seat = FrameSeat.Reflecting(machine.Tube.Beam(Vector3.Zero).Direction, Vector3.AlongY, Folds.One, Angle.Zero),
        },
    };

    /// <summary>Uniform over ±half: nothing outside, the ends nearly reached, the spread that of a uniform distribution (half/√3, within 8 %).</summary>
    private static void AssertFilled(double[] values, double half)
    {
        Assert.NotEmpty(values);
        Assert.All(values, v => Assert.InRange(v, -half - 1e-9, half + 1e-9));
        Assert.True(values.Max() > 0.95 * half && values.Min() < -0.95 * half);
        Assert.InRange(Math.Sqrt(values.Average(v => v * v)) * Math.Sqrt(3) / half, 0.92, 1.08);
    }
}
