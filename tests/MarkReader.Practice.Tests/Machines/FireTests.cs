using CsCheck;
using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Machines;

public sealed class FireTests
{
    private const int Pulses = 4000;

    /// <summary>The tube's front stands 150 mm before mirror one: pointing of θ scatters the mark by θ·(150 + L), the same on both axes.</summary>
    [Theory]
    [InlineData(0.3, 0, 0)]
    [InlineData(0, 0.1, 0)]
    [InlineData(0, 0, 0.05)]
    [InlineData(0.2, 0.1, 0.05)]
    public void Marks_scatter_as_pointing_place_and_measurement_say(double mrad, double position, double measurement)
    {
        PracticeMachine machine = Some.Straight() with { Scatter = new(Some.Mrad(mrad), Some.Mm(position), Some.Mm(measurement), 0) };
        double sigma = Math.Sqrt(Math.Pow(mrad / 1000 * (150 + 480), 2) + (position * position) + (measurement * measurement));
        (CardPoint mean, Covariance2 covariance) = Sample(machine, Some.One(400));

        // Standard errors of a standard deviation and of a correlation from n normal numbers: 1/√(2n) = 1.1 %, 1/√n = 1.6 %.
        Assert.InRange(Math.Sqrt(covariance.Uu) / sigma, 0.95, 1.05);
        Assert.InRange(Math.Sqrt(covariance.Vv) / sigma, 0.95, 1.05);
        Assert.InRange(covariance.Uv / (sigma * sigma), -0.07, 0.07);
        Assert.True(mean.DistanceTo(machine.TrueMark(Some.One(400)).ValueOrThrow().Place) < 5 * sigma / Math.Sqrt(Pulses));
    }

    [Fact]
    public void A_mark_states_the_measurement_s_uncertainty_alone()
    {
        PracticeMachine machine = Some.Straight() with { Scatter = new(Some.Mrad(0.3), Some.Mm(0.1), Some.Mm(0.05), 0) };
        BurnMark mark = machine.Fire(Some.One(100), new(1)).ValueOrThrow();
        Assert.Equal(0.05, mark.Uncertainty.Millimetres);
        Assert.Equal(0.05 * 0.05, mark.Measured.Covariance.Uu, 1e-15);
    }

    [Fact]
    public void Without_scatter_a_pulse_leaves_the_true_mark() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[0, 400], Gen.Int[0, 1000]).Sample((x, y, seed) =>
        {
            PracticeMachine machine = Some.Straight(45).Turn(PracticeLeg.One, "A", 0.1).ValueOrThrow();
            return machine.Fire(Some.Two(x, y), new(seed)).ValueOrThrow() == machine.TrueMark(Some.Two(x, y)).ValueOrThrow();
        });

    [Fact]
    public void A_lost_pulse_takes_as_many_numbers_as_one_that_leaves_a_mark()
    {
        Random lost = new(7), left = new(7);
        PracticeMachine machine = Some.Straight() with { Scatter = new(Angle.Zero, Length.Zero, Some.Mm(0.05), 0) };
        Assert.False((machine with { TapeRadius = Some.Mm(1), MirrorTwoOffset = new(5, 0) }).Fire(Some.One(0), lost).TryGet(out _, out _));
        Assert.True(machine.Fire(Some.One(0), left).TryGet(out _, out _));
        Assert.Equal(left.NextDouble(), lost.NextDouble());
    }

    [Fact]
    public void A_hand_sets_a_knob_with_its_own_scatter()
    {
        PracticeMachine machine = Some.Straight().WithFrame(PracticeLeg.One, Some.CentreFrame()) with { Scatter = Scatter.None with { HandTurns = 1.0 / 128 } };
        Random random = new(3);
        double[] errors = [.. Enumerable.Range(0, Pulses).Select(_ =>
            machine.Turn(PracticeLeg.One, "A", 0.25, random).ValueOrThrow().MirrorOne.Frame.Find("A")!.KnobTurns - 0.25)];
        Assert.InRange(Math.Sqrt(errors.Sum(e => e * e) / Pulses) * 128, 0.95, 1.05);
        Assert.Equal(0.25, machine.Turn(PracticeLeg.One, "A", 0.25).ValueOrThrow().MirrorOne.Frame.Find("A")!.KnobTurns, 1e-15);
    }

    [Fact]
    public void Turning_leaves_the_first_machine_as_it_was_and_touches_its_own_leg_alone()
    {
        PracticeMachine machine = Some.Straight(), turned = machine.Turn(PracticeLeg.Two, "B", 0.5).ValueOrThrow();
        Assert.Equal(0, machine.TrueMark(Some.Two(500)).ValueOrThrow().Place.DistanceTo(CardPoint.Origin), 1e-12);
        Assert.Equal(0, turned.TrueMark(Some.One(400)).ValueOrThrow().Place.DistanceTo(CardPoint.Origin), 1e-12);
        Assert.True(turned.TrueMark(Some.Two(500)).ValueOrThrow().Place.DistanceTo(CardPoint.Origin) > 5);
    }

    [Fact]
    public void Backlash_shows_on_the_tape()
    {
        PracticeMachine machine = Some.Straight().WithFrame(PracticeLeg.One, Some.CentreFrame(backlashDegrees: 36)).Turn(PracticeLeg.One, "A", 0.5).ValueOrThrow();
        CardPoint before = machine.TrueMark(Some.One(400)).ValueOrThrow().Place;
        CardPoint inside = machine.Turn(PracticeLeg.One, "A", -0.0999).ValueOrThrow().TrueMark(Some.One(400)).ValueOrThrow().Place;
        CardPoint beyond = machine.Turn(PracticeLeg.One, "A", -0.2).ValueOrThrow().TrueMark(Some.One(400)).ValueOrThrow().Place;
        Assert.Equal(0, inside.DistanceTo(before), 1e-12);
        Assert.Equal(480 * 2 * 0.7 * 0.1 / 40, beyond.DistanceTo(before), 0.02);
    }

    [Fact]
    public void A_knock_turns_the_frame_on_its_seat()
    {
        PracticeMachine knocked = Some.Straight(farOne: 1080).Knock(PracticeLeg.One, Some.Mrad(10), Angle.Zero);
        CardPoint near = knocked.TrueMark(Some.One(0)).ValueOrThrow().Place, far = knocked.TrueMark(Some.One(1000)).ValueOrThrow().Place;
        Assert.Equal(20.00266709, Math.Abs(far.U - near.U), 1e-8);
    }

    [Fact]
    public void Stations_are_found_by_the_stated_path_length()
    {
        PracticeMachine machine = Some.Straight();
        Assert.Equal(Some.One(400), machine.StationAt(PracticeLeg.One, Some.Mm(480)));
        Assert.Equal(Some.Two(0, 400), machine.StationAt(PracticeLeg.Two, Some.Mm(60), Some.Mm(400)));
        Assert.Throws<ArgumentOutOfRangeException>(() => machine.StationAt(PracticeLeg.Three, Some.Mm(60)));
    }

    private static (CardPoint Mean, Covariance2 Covariance) Sample(PracticeMachine machine, PracticeStation station)
    {
        Random random = new(20);
        CardPoint[] marks = [.. Enumerable.Range(0, Pulses).Select(_ => machine.Fire(station, random).ValueOrThrow().Place)];
        CardPoint mean = new(marks.Average(m => m.U), marks.Average(m => m.V));
        double Moment(Func<CardVector, double> of) => marks.Average(m => of(m - mean));
        return (mean, new(Moment(d => d.U * d.U), Moment(d => d.U * d.V), Moment(d => d.V * d.V)));
    }
}
