using CsCheck;
using MarkReader.Practice.Frames;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Frames;

public sealed class ScrewTests
{
    [Fact]
    public void A_turn_advances_the_contact_by_the_pitch_and_the_sense_decides_which_way()
    {
        Assert.Equal(0.7, Some.Screw("A").Turned(1).Advance.Millimetres, 1e-12);
        Assert.Equal(-0.7, Some.Screw("A", sense: ScrewSense.ClockwisePulls).Turned(1).Advance.Millimetres, 1e-12);
    }

    [Fact]
    public void Backlash_swallows_exactly_its_angle_on_reversal() =>
        Gen.Select(Gen.Double[0.1, 30], Gen.Double[0.5, 3], Gen.Double[0, 3]).Sample((degrees, forth, back) =>
        {
            double gap = degrees / 360;
            Screw taken = Some.Screw("A", backlashDegrees: degrees).Turned(forth);
            double moved = taken.ContactTurns - taken.Turned(-back).ContactTurns;
            return Math.Abs(moved - Math.Max(0, back - gap)) < 1e-12;
        });

    [Fact]
    public void Going_on_in_the_same_direction_loses_nothing() =>
        Gen.Select(Gen.Double[0.1, 30], Gen.Double[0.5, 3], Gen.Double[0, 3]).Sample((degrees, first, second) =>
        {
            Screw taken = Some.Screw("A", backlashDegrees: degrees).Turned(-first);
            return Math.Abs(taken.ContactTurns - taken.Turned(-second).ContactTurns - second) < 1e-12;
        });

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 0.5)]
    [InlineData(-1, 1)]
    public void The_first_turn_loses_what_is_left_of_the_gap(double place, double lost)
    {
        Screw screw = Some.Screw("A", backlashDegrees: 36).WithKnobInGap(place);
        Assert.Equal(0.25 - (lost * 0.1), screw.Turned(0.25).ContactTurns, 1e-12);
    }

    [Fact]
    public void In_whichever_steps_the_knob_goes_one_way_the_contact_ends_at_the_same_place() =>
        Gen.Double[0, 0.2].Array[1, 12].Sample(steps =>
        {
            Screw start = Some.Screw("A", backlashDegrees: 20);
            Screw stepwise = steps.Aggregate(start, (screw, step) => screw.Turned(step));
            return Math.Abs(stepwise.ContactTurns - start.Turned(steps.Sum()).ContactTurns) < 1e-12;
        });

    [Fact]
    public void A_screw_needs_a_name_a_pitch_and_a_gap_of_less_than_a_turn()
    {
        Assert.Throws<ArgumentException>(() => Some.Screw(" "));
        Assert.Throws<ArgumentOutOfRangeException>(() => Some.Screw("A", pitch: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Screw("A", Length.FromMillimetres(0.7), ScrewSense.ClockwisePushes, Angle.FromDegrees(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Screw("A", Length.FromMillimetres(0.7), ScrewSense.ClockwisePushes, Angle.FromDegrees(360)));
    }
}
