using MarkReader.Practice.Beams;
using MarkReader.Practice.Frames;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Practice.Rails;
using MarkReader.Practice.Truth;

namespace MarkReader.Practice.Tests.Misalignment;

/// <summary>One who sees the truth can align every drawn machine to 0.5 mm over the bed; so an adviser is not asked for what cannot be done.</summary>
public sealed class AlignableTests
{
    private const double Tolerance = 0.5;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Turning_screws_by_the_true_slopes_aligns_a_machine_with_a_flat_bed(bool bent)
    {
        MisalignmentRanges ranges = bent ? MisalignmentRanges.WithBentRails : new();
        double[] spreads = [.. Seeds.Select(seed => Aligned(RandomMachines.Draw(StatedMachine.Desktop, ranges, new(seed))).BedSpread().ValueOrThrow().Greatest.Millimetres)];
        Assert.All(spreads, s => Assert.True(s < Tolerance, $"{s} mm"));
        Assert.True(bent == spreads.Average() > 0.05);
    }

    [Fact]
    public void Three_screw_frames_align_as_well()
    {
        StatedMachine stated = StatedMachine.Desktop with
        {
            LegOne = StatedMachine.Desktop.LegOne with { Frame = StatedMachine.ThreeScrewFrame },
            LegTwo = StatedMachine.Desktop.LegTwo with { Frame = StatedMachine.ThreeScrewFrame },
        };
        Assert.All(Seeds, seed => Assert.True(Aligned(RandomMachines.Draw(stated, new(), new(seed))).BedSpread().ValueOrThrow().Greatest.Millimetres < Tolerance));
    }

    [Fact]
    public void A_twisted_bed_is_cured_by_a_shim_under_its_low_corner_or_under_the_one_across_the_bed_diagonal()
    {
        foreach (int seed in Seeds)
        {
            PracticeMachine machine = Aligned(RandomMachines.Draw(StatedMachine.Desktop, MisalignmentRanges.WithTwist, new(seed)));
            // Heights (a, b, c, d) lie in a plane when a − b − c + d = 0: one low corner is raised, or one of its neighbours for a high one.
            double twist = Height(machine, BedCorner.NearLeft) - Height(machine, BedCorner.NearRight) - Height(machine, BedCorner.FarLeft) + Height(machine, BedCorner.FarRight);
            BedCorner corner = twist < 0 ? BedCorner.FarRight : BedCorner.NearRight;
            PracticeMachine shimmed = machine.Shim(corner, Some.Mm(Math.Abs(twist))).ValueOrThrow();
            Assert.True(Aligned(shimmed).BedSpread().ValueOrThrow().Greatest.Millimetres < 0.1);
        }
    }

    private static IEnumerable<int> Seeds => Enumerable.Range(0, 40);

    private static double Height(PracticeMachine machine, BedCorner corner) => machine.Bed[corner].Built.Millimetres;

    /// <summary>Newton's method on the true slopes of leg 1, then of leg 2 with the gantry near; backlash only makes it slower.</summary>
    private static PracticeMachine Aligned(PracticeMachine machine)
    {
        PracticeMachine exact = machine with { Scatter = Scatter.None, TapeRadius = Some.Mm(60) };
        return Steepest(Steepest(exact, PracticeLeg.One), PracticeLeg.Two);
    }

    private static PracticeMachine Steepest(PracticeMachine machine, PracticeLeg leg)
    {
        Screw[] screws = [.. machine.SourceOf(leg).Frame.Screws.Take(2)];
        for (int round = 0; round < 20; round++)
        {
            BeamSlope now = Slope(machine, leg);
            // A probing turn large enough to be through the backlash, measured on the far side of it.
            (double U, double V) Response(string screw)
            {
                PracticeMachine taken = machine.Turn(leg, screw, 0.2).ValueOrThrow(), more = taken.Turn(leg, screw, 0.2).ValueOrThrow();
                return ((Slope(more, leg).U - Slope(taken, leg).U) / 0.2, (Slope(more, leg).V - Slope(taken, leg).V) / 0.2);
            }

            var (a, b) = (Response(screws[0].Name), Response(screws[1].Name));
            double determinant = (a.U * b.V) - (b.U * a.V);
            machine = machine.Turn(leg, screws[0].Name, ((b.U * now.V) - (b.V * now.U)) / determinant).ValueOrThrow()
                .Turn(leg, screws[1].Name, ((a.V * now.U) - (a.U * now.V)) / determinant).ValueOrThrow();
        }

        Assert.True(Slope(machine, leg).Magnitude < 0.05, $"{Slope(machine, leg).Magnitude} mrad");
        return machine;
    }

    private static BeamSlope Slope(PracticeMachine machine, PracticeLeg leg) => machine.TrueSlope(leg).ValueOrThrow();
}
