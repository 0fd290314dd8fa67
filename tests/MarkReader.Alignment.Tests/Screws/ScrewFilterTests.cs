using CsCheck;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Tests.Advice;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Screws;

public sealed class ScrewFilterTests
{
    private static readonly LegRanges Quiet = new() { Mark = 0.01, Hand = 0, BacklashDegrees = 0, PathSpread = 0, FrameTurnedDegrees = 0 };

    /// <summary>Without turns the filter is a weighted line through the marks: the aim solver's answer, reached another way.</summary>
    [Fact]
    public void Without_turns_slope_and_aim_are_those_of_the_aim_solver() =>
        Gen.Select(Gen.Double[-3, 3].Array[6], Gen.Double[0, 60], Gen.Double[0.02, 0.1]).Sample((at, incidence, sigma) =>
        {
            (double Path, CardPoint Point)[] marks = [(80, new(at[0], at[1])), (480, new(at[2], at[3])), (480, new(at[2] + (at[4] * sigma / 3), at[3] + (at[5] * sigma / 3)))];
            AimSolution solved = AimSolver.Solve(Some.Leg(incidence), [.. marks.Select(m => new MarkReader.Alignment.Legs.Observation(
                Some.Station(m.Path, 2), new(m.Point, Covariance2.Isotropic(sigma))))]).ValueOrThrow();
            LegState state = LegAdviser.Advise(ClosedLoop.Setup(new() { IncidenceDegrees = incidence }), [.. marks.Select(m => new LegEvent.Mark(m.Path, new(m.Point, Covariance2.Isotropic(sigma))))]).ValueOrThrow().State;
            return solved.Slope.Covariance.MahalanobisSquared(new(solved.Slope.U - state.Slope!.U, solved.Slope.V - state.Slope.V)) < 0.01
                && solved.Aim.Covariance.MahalanobisSquared(solved.Aim.Point - state.Aim!.Point) < 0.01
                && Math.Abs((state.Slope.Covariance.Uu / solved.Slope.Covariance.Uu) - 1) < 0.03
                && Math.Abs((state.Slope.Covariance.Vv / solved.Slope.Covariance.Vv) - 1) < 0.03
                && Math.Abs((state.Aim.Covariance.Uu / solved.Aim.Covariance.Uu) - 1) < 0.03
                && Math.Abs((state.Aim.Covariance.Vv / solved.Aim.Covariance.Vv) - 1) < 0.03;
        });

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void One_far_mark_after_a_turn_of_each_screw_teaches_both(int seed)
    {
        TrueLeg leg = new(Quiet, new Random(seed));
        IReadOnlyList<ScrewResponse> learned = Responses(leg, [("A", 0.125), ("B", -0.125)]);
        Assert.Equal(2, learned.Count);
        foreach (ScrewResponse screw in learned)
        {
            (double u, double v) = leg.Response(screw.Screw);
            Assert.True(screw.SenseKnown);
            Assert.True(Math.Abs(screw.U - u) < 3 * Math.Sqrt(screw.Covariance.Uu) && Math.Abs(screw.V - v) < 3 * Math.Sqrt(screw.Covariance.Vv), $"{screw} against ({u}, {v})");
            Assert.True(Math.Sqrt(screw.Covariance.Uu + screw.Covariance.Vv) < 0.2 * Math.Sqrt((u * u) + (v * v)));
        }
    }

    [Fact]
    public void Before_any_turn_both_senses_are_as_likely_and_the_size_is_the_frame_s()
    {
        IReadOnlyList<ScrewResponse> known = Responses(new TrueLeg(Quiet, new Random(3)), []);
        Assert.Equal(2, known.Count);
        Assert.All(known, r => Assert.Equal(0.5, r.SenseProbability, 0.001));
        Assert.Equal(46.67, Math.Abs(known[0].U), 0.01);
        Assert.Equal(33.00, Math.Abs(known[1].V), 0.01);
        Assert.Null(known[0].ToRecord());
    }

    [Fact]
    public void Backlash_is_learned_from_turns_to_and_fro()
    {
        LegRanges loose = Quiet with { BacklashDegrees = 12, Slope = 3 };
        TrueLeg leg = new(loose, new Random(11));
        LegSetup setup = ClosedLoop.Setup(loose);
        setup = setup with { Habits = setup.Habits with { HandSetting = 0.001 } };
        List<LegEvent> events = [Mark(leg, 80), Mark(leg, 480)];
        foreach (double turns in new[] { 0.125, 0.125, -0.125, -0.125, 0.125, -0.0625 })
        {
            leg.Turn("A", turns);
            events.AddRange([new LegEvent.Turn("A", turns), Mark(leg, 480)]);
        }

        Assert.Equal(12, LegAdviser.Advise(setup, events).ValueOrThrow().Responses[0].Backlash.Degrees, 1.5);
    }

    [Fact]
    public void Shifting_the_card_shifts_the_aim_and_nothing_else() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Double[-2, 2], Gen.Double[-2, 2]).Sample((seed, du, dv) =>
        {
            LegRanges ranges = new();
            TrueLeg leg = new(ranges, new Random(seed));
            List<LegEvent> events = [Mark(leg, 80), Mark(leg, 480)];
            leg.Turn("A", 0.0625);
            events.AddRange([new LegEvent.Turn("A", 0.0625), Mark(leg, 480)]);
            LegState here = LegAdviser.Advise(ClosedLoop.Setup(ranges), events).ValueOrThrow().State;
            LegState there = LegAdviser.Advise(ClosedLoop.Setup(ranges), [.. events.Select(e => e is LegEvent.Mark m
                ? m with { At = m.At with { Point = m.At.Point + new CardVector(du, dv) } }
                : e)]).ValueOrThrow().State;
            return (there.Aim!.Point - here.Aim!.Point - new CardVector(du, dv)).Magnitude < 1e-3
                && Math.Abs(there.Slope!.U - here.Slope!.U) < 1e-3 && Math.Abs(there.Slope.V - here.Slope.V) < 1e-3;
        }, iter: 30);

    [Fact]
    public void Another_mark_never_raises_the_slope_s_stated_uncertainty() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Bool).Sample((seed, near) =>
        {
            TrueLeg leg = new(new(), new Random(seed));
            LegEvent[] two = [Mark(leg, 80), Mark(leg, 480)];
            Slope before = LegAdviser.Advise(ClosedLoop.Setup(new()), two).ValueOrThrow().State.Slope!;
            Slope after = LegAdviser.Advise(ClosedLoop.Setup(new()), [.. two, Mark(leg, near ? 80 : 480)]).ValueOrThrow().State.Slope!;
            return after.Covariance.Uu <= before.Covariance.Uu * 1.01 && after.Covariance.Vv <= before.Covariance.Vv * 1.01;
        }, iter: 50);

    [Fact]
    public void What_disturbs_the_beam_opens_the_slope_and_keeps_what_was_learned()
    {
        TrueLeg leg = new(Quiet, new Random(5));
        List<LegEvent> events = [Mark(leg, 80), Mark(leg, 480)];
        leg.Turn("A", 0.125);
        events.AddRange([new LegEvent.Turn("A", 0.125), Mark(leg, 480)]);
        ScrewResponse learned = LegAdviser.Advise(ClosedLoop.Setup(Quiet), events).ValueOrThrow().Responses[0];
        LegAdvice after = LegAdviser.Advise(ClosedLoop.Setup(Quiet), [.. events, new LegEvent.Disturbed()]).ValueOrThrow();
        Assert.Null(after.State.Slope);
        Assert.IsType<LegAction.Fire>(after.Action);
        Assert.Equal(learned.U, after.Responses[0].U, 0.5);
        Assert.True(after.Responses[0].SenseKnown);
    }

    private static IReadOnlyList<ScrewResponse> Responses(TrueLeg leg, (string Screw, double Turns)[] turns)
    {
        List<LegEvent> events = [Mark(leg, 80), Mark(leg, 480)];
        foreach ((string screw, double by) in turns)
        {
            leg.Turn(screw, by);
            events.Add(new LegEvent.Turn(screw, by));
        }

        events.Add(Mark(leg, 480));
        return LegAdviser.Advise(ClosedLoop.Setup(Quiet), events).ValueOrThrow().Responses;
    }

    private static LegEvent.Mark Mark(TrueLeg leg, double path) => new(path, leg.Fire(path));
}
