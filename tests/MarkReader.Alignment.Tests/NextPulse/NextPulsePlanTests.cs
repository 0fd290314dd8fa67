using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.NextPulse;
using MarkReader.Alignment.Tests.Aiming;
using MarkReader.Quantities;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.NextPulse;

public sealed class NextPulsePlanTests
{
    private static readonly Station[] s_stations = [Some.Station(80), Some.Station(280), Some.Station(480)];

    [Fact]
    public void A_leg_begins_with_near_and_goes_on_with_far()
    {
        NextPulseAdvice first = Choose([]);
        Assert.Equal(80, first.Best.Station.Path.Millimetres);
        Assert.True(first.Pays);
        Assert.Null(first.Uncertainty);
        Assert.Null(first.Gain);
        NextPulseAdvice second = Choose([Some.Mark(80, 1, 1, 0.05)]);
        Assert.Equal([480.0, 280, 80], second.Choices.Select(c => c.Station.Path.Millimetres));
        Assert.Null(second.Choices[2].Uncertainty);
    }

    /// <summary>After near and far the pulses go to the near station until it has its share of 480 : 80.</summary>
    [Fact]
    public void Pulses_one_at_a_time_come_to_be_shared_as_far_to_near()
    {
        List<Observation> marks = [];
        for (int i = 0; i < 14; i++)
            marks.Add(Some.Mark(Choose(marks).Best.Station.Path.Millimetres, 1, 1, 0.05));
        Assert.Equal(12, marks.Count(m => m.Station.Path.Millimetres == 80));
        Assert.Equal(2, marks.Count(m => m.Station.Path.Millimetres == 480));
    }

    [Fact]
    public void No_pulse_is_ever_expected_to_raise_the_uncertainty() =>
        Gen.Select(Gen.Double[0, 3], Gen.Double[-50, 50], Gen.Int[1, 3], Gen.Int[1, 3]).Sample((pathUncertainty, incidence, near, far) =>
        {
            Observation Mark(double path) => new(Some.Station(path, pathUncertainty), Some.Point(1, 1 + (path * 0.004), 0.05));
            Observation[] marks = [.. Enumerable.Repeat(Mark(80), near), .. Enumerable.Repeat(Mark(480), far)];
            NextPulseAdvice advice = NextPulsePlan.Choose(
                Some.Leg(incidence), marks, [Some.Station(80, pathUncertainty), Some.Station(280, pathUncertainty), Some.Station(480, pathUncertainty)]).ValueOrThrow();
            return advice.Choices.Count == 3
                && advice.Choices.All(c => c.Uncertainty <= advice.Uncertainty + 1e-12)
                && advice.Choices.Zip(advice.Choices.Skip(1)).All(p => p.First.Uncertainty <= p.Second.Uncertainty);
        });

    [Fact]
    public void Stated_uncertainty_is_the_one_found_after_the_pulse()
    {
        Observation[] marks = [Some.Mark(80, 1, 2, 0.05), Some.Mark(480, 3, 1, 0.05)];
        NextPulseAdvice advice = Choose(marks);
        AimSolution after = AimSolver.Solve(Leg.Square, [.. marks, new(advice.Best.Station, new MeasuredPoint(advice.Best.Expected!.Point, Covariance2.Isotropic(0.05)))]).ValueOrThrow();
        Assert.Equal(Math.Sqrt(after.Aim.Covariance.Uu + after.Aim.Covariance.Vv), advice.Best.Uncertainty!.Value, 1e-12);
    }

    [Fact]
    public void Pulses_stop_paying_when_the_best_gains_less_than_a_tenth_or_enough_is_known()
    {
        List<Observation> marks = [Some.Mark(80, 1, 1, 0.05), Some.Mark(480, 1, 1, 0.05)];
        Assert.True(Choose(marks).Pays);
        Assert.True(Choose(marks).Gain > 0.1);
        Assert.False(NextPulsePlan.Choose(Leg.Square, marks, s_stations, new NextPulseOptions { Enough = Some.Mm(0.1) }).ValueOrThrow().Pays);
        for (int i = 0; i < 10; i++)
            marks.Add(Some.Mark(80, 1, 1, 0.05));
        Assert.False(Choose(marks).Pays);
        Assert.InRange(Choose(marks).Gain!.Value, 0, 0.1);
    }

    [Fact]
    public void When_the_path_lengths_limit_the_aim_more_pulses_do_not_pay()
    {
        Observation[] marks = [.. new double[] { 80, 480 }.Select(p => new Observation(Some.Station(p, 5), Some.Point(0, 0.02 * p, 0.005)))];
        NextPulseAdvice advice = NextPulsePlan.Choose(
            Leg.Square, marks, [Some.Station(80, 5), Some.Station(480, 5)], new NextPulseOptions { Pulse = Covariance2.Isotropic(0.005) }).ValueOrThrow();
        Assert.False(advice.Pays);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(45, 2)]
    public void Expected_mark_at_a_new_station_falls_within_its_region_as_often_as_stated(double incidence, double pathUncertainty)
    {
        SimulatedLeg leg = new(new MersenneTwister(41, threadSafe: false), 0.05, pathUncertainty, incidence);
        BeamLine beam = new(1, 0.012, -0.5, -0.008);
        const int trials = 1500;
        int inside = 0;
        for (int i = 0; i < trials; i++)
        {
            Dictionary<double, double> paths = leg.Paths(80, 480, 280);
            Observation[] marks = leg.Marks(beam, paths, 80, 480);
            MeasuredPoint expected = NextPulsePlan.Choose(leg.Leg, marks, [Some.Station(280, pathUncertainty), Some.Station(480, pathUncertainty)]).ValueOrThrow()
                .Choices.Single(c => c.Station.Path.Millimetres == 280).Expected!;
            CardPoint next = leg.Marks(beam, paths, 280)[0].Place;
            inside += expected.Covariance.MahalanobisSquared(next - expected.Point) < Covariance2.ChiSquare95 ? 1 : 0;
        }

        Assert.InRange(inside, 0.93 * trials, 0.97 * trials);
    }

    [Fact]
    public void Impossible_calls_are_refused()
    {
        Assert.Equal("NEXT_PULSE_STATION_COUNT", Code(NextPulsePlan.Choose(Leg.Square, [], [Some.Station(80)])));
        Assert.Equal("TOO_FEW_STATIONS", Code(NextPulsePlan.Choose(Leg.Square, [], [Some.Station(80), Some.Station(80)])));
        Assert.Equal("NEXT_PULSE_UNCERTAINTY", Code(NextPulsePlan.Choose(Leg.Square, [], s_stations, new NextPulseOptions { Pulse = Covariance2.Isotropic(0) })));
        Assert.Equal("MARK_UNCERTAINTY_ZERO", Code(NextPulsePlan.Choose(Leg.Square, [Some.Mark(80, 0, 0, 0), Some.Mark(480, 0, 0, 0)], s_stations)));
    }

    private static string? Code(Outcome<NextPulseAdvice> outcome) => outcome.TryGet(out _, out Failure? failure) ? null : failure.Code.Name;

    private static NextPulseAdvice Choose(IReadOnlyList<Observation> marks) => NextPulsePlan.Choose(Leg.Square, marks, s_stations).ValueOrThrow();
}
