using CsCheck;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Advice;

public sealed class LegAdviserTests
{
    private static readonly LegSetup Setup = ClosedLoop.Setup(new());

    [Fact]
    public void The_near_mark_comes_first_and_the_far_one_second()
    {
        LegAdvice first = Advise();
        Assert.Equal(new LegAction.Fire(80), first.Action);
        Assert.Equal(Verdict.Undecided, first.State.Verdict);
        Assert.Null(first.State.Slope);
        Assert.Equal(new LegAction.Fire(480), Advise(Mark(80, 1, 1)).Action);
    }

    [Fact]
    public void Both_screws_are_turned_before_the_next_pulse_and_then_the_far_mark_is_asked_for()
    {
        LegEvent[] two = [Mark(80, 0.4, 0.2), Mark(480, 2.4, 1.4)];
        LegAction.Turn first = Assert.IsType<LegAction.Turn>(Advise(two).Action);
        LegAction.Turn second = Assert.IsType<LegAction.Turn>(Advise([.. two, new LegEvent.Turn(first.Screw, first.Turns)]).Action);
        Assert.NotEqual(first.Screw, second.Screw);
        LegAdvice third = Advise([.. two, new LegEvent.Turn(first.Screw, first.Turns), new LegEvent.Turn(second.Screw, second.Turns)]);
        Assert.Equal(new LegAction.Fire(480), third.Action);
        Assert.Equal(4, third.Expected!.Branches.Count);
        Assert.Equal(1, third.Expected.Branches.Sum(b => b.Probability), 0.01);
    }

    [Fact]
    public void A_screw_that_the_slope_does_not_ask_for_is_left_alone()
    {
        LegEvent[] two = [Mark(80, 0.4, 0.2), Mark(480, 2.4, 0.22)];
        LegAction.Turn first = Assert.IsType<LegAction.Turn>(Advise(two).Action);
        Assert.Equal("A", first.Screw);
        Assert.IsType<LegAction.Fire>(Advise([.. two, new LegEvent.Turn("A", first.Turns)]).Action);
    }

    [Fact]
    public void A_beam_well_within_tolerance_is_done_after_two_marks()
    {
        LegAdvice advice = Advise(Mark(80, 1, -0.5), Mark(480, 1.05, -0.47));
        Assert.IsType<LegAction.Done>(advice.Action);
        Assert.Equal(Verdict.Within, advice.State.Verdict);
        Assert.True(advice.State.Spread.Probability > 0.975);
        Assert.InRange(advice.State.Aim!.Point.U, 0.95, 1.05);
    }

    [Fact]
    public void A_turn_without_a_mark_after_it_is_never_within()
    {
        LegAdvice advice = Advise(Mark(80, 1, -0.5), Mark(480, 1.05, -0.47), new LegEvent.Turn("A", 1.0 / 128));
        Assert.NotEqual(Verdict.Within, advice.State.Verdict);
        Assert.IsType<LegAction.Fire>(advice.Action);
    }

    [Fact]
    public void A_spread_at_the_limit_is_undecided_and_one_beyond_it_outside()
    {
        Assert.Equal(Verdict.Undecided, Advise(Mark(80, 0, 0), Mark(480, 0.48, 0)).State.Verdict);
        Assert.Equal(Verdict.Outside, Advise(Mark(80, 0, 0), Mark(480, 0.9, 0)).State.Verdict);
    }

    [Fact]
    public void Of_legs_truly_at_the_limit_at_most_one_in_forty_is_called_within()
    {
        Random random = new(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        int within = 0, outside = 0;
        const int Legs = 2000;
        for (int i = 0; i < Legs; i++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * random.NextDouble());
            LegEvent[] marks = [.. new[] { 80.0, 480, 80, 480 }.Select(p => Mark(p, (0.5 * c * (p - 80) / 400) + (0.05 * Normal()), (0.5 * s * (p - 80) / 400) + (0.05 * Normal())))];
            Verdict verdict = Advise(marks).State.Verdict;
            within += verdict == Verdict.Within ? 1 : 0;
            outside += verdict == Verdict.Outside ? 1 : 0;
        }

        // 2.5 % of 2000 is 50 ± 7, for each of the two errors; regions in the plane err less.
        Assert.InRange(within, 1, 60);
        Assert.InRange(outside, 1, 60);
    }

    [Fact]
    public void A_known_response_gives_the_exact_turn_at_once()
    {
        LegSetup known = Setup with { Known = [new("A", 46, 0, 1), new("B", 0, -33, 1)] };
        LegEvent[] two = [Mark(80, 0.4, 0.2), Mark(480, 2.24, 0.2)];
        LegAdvice advice = LegAdviser.Advise(known, two).ValueOrThrow();
        LegAction.Turn turn = Assert.IsType<LegAction.Turn>(advice.Action);
        Assert.Equal("A", turn.Screw);
        // 4.6 mrad at 46 mrad per turn, and half of the usual backlash on the first turn.
        Assert.Equal(-0.1 - (2.5 / 360), turn.Turns, 0.01);
        Assert.Equal("A", advice.Responses[0].ToRecord()!.Screw);
    }

    [Fact]
    public void Large_uncertain_backlash_is_approached_from_one_side()
    {
        LegSetup loose = Setup with
        {
            Known = [new("A", 46, 0, 0.5), new("B", 0, -33, 0.5)],
            Habits = Setup.Habits with { Backlash = Angle.FromDegrees(30), BacklashUncertainty = Angle.FromDegrees(15) },
        };
        // The last turn was clockwise and went too far: back again beyond the place, then clockwise.
        LegEvent[] events = [Mark(80, 0.4, 0.2), Mark(480, 2.24, 0.2), new LegEvent.Turn("A", 0.25), Mark(480, 6.3, 0.2)];
        LegAdvice back = LegAdviser.Advise(loose, events).ValueOrThrow();
        LegAction.Turn first = Assert.IsType<LegAction.Turn>(back.Action);
        Assert.Contains("one side", back.Reason, StringComparison.Ordinal);
        Assert.True(first is { GoesBeyond: true, Turns: < -0.3 });
        LegAction.Turn second = Assert.IsType<LegAction.Turn>(LegAdviser.Advise(loose, [.. events, new LegEvent.Turn("A", first.Turns)]).ValueOrThrow().Action);
        Assert.Equal("A", second.Screw);
        Assert.True(second is { GoesBeyond: false, Turns: > 0.05 });
        Assert.IsType<LegAction.Fire>(LegAdviser.Advise(loose, [.. events, new LegEvent.Turn("A", first.Turns), new LegEvent.Turn("A", second.Turns)]).ValueOrThrow().Action);
    }

    [Fact]
    public void What_no_screw_can_be_set_to_is_said_as_such_and_is_no_fault_of_the_frame()
    {
        // 0.05 mm over 400 mm are 0.125 mrad: 1/370 turn at 46 mrad per turn, less than half of 1/128.
        LegSetup strict = Setup with { Tolerance = Some.Mm(0.02), Known = [new("A", 46, 0, 0.5), new("B", 0, -33, 0.5)], Habits = Setup.Habits with { Backlash = Angle.Zero, BacklashUncertainty = Angle.FromDegrees(0.1) } };
        static LegEvent Sharp(double path, double u) => new LegEvent.Mark(path, new(new(u, 0), Covariance2.Isotropic(0.001)));
        LegAdvice advice = LegAdviser.Advise(strict, [Sharp(80, 0), Sharp(480, 0.05)]).ValueOrThrow();
        Assert.IsType<LegAction.Stop>(advice.Action);
        Assert.Equal(Verdict.Outside, advice.State.Verdict);
        Assert.Contains("finer than a screw can be set", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_events_give_the_same_advice()
    {
        LegRun run = ClosedLoop.Play(new(new(), new Random(9)), Setup);
        for (int i = 0; i < run.Advice.Count; i++)
        {
            LegAdvice again = LegAdviser.Advise(Setup, [.. run.Events.Take(i)]).ValueOrThrow();
            Assert.Equal((run.Advice[i].Action, run.Advice[i].Reason), (again.Action, again.Reason));
        }
    }

    public static TheoryData<string, FailureCode> Hostile => new()
    {
        { "mark NaN", AdviceFailures.MarkInvalid },
        { "mark far away", AdviceFailures.MarkInvalid },
        { "path NaN", AdviceFailures.MarkInvalid },
        { "path zero", AdviceFailures.MarkInvalid },
        { "no uncertainty", AdviceFailures.MarkUncertaintyInvalid },
        { "huge uncertainty", AdviceFailures.MarkUncertaintyInvalid },
        { "turns NaN", AdviceFailures.TurnsInvalid },
        { "turns infinite", AdviceFailures.TurnsInvalid },
        { "unknown screw", AdviceFailures.ScrewUnknown },
        { "a million events", AdviceFailures.TooManyEvents },
        { "many stations", AdviceFailures.TooManyStations },
        { "impossible slope", AdviceFailures.BeamImplausible },
        { "tolerance zero", AdviceFailures.ToleranceInvalid },
        { "radius zero", AdviceFailures.TargetRadiusInvalid },
        { "habit NaN", AdviceFailures.HabitInvalid },
        { "stations swapped", LegFailures.PathsSwapped },
        { "known of another screw", AdviceFailures.ScrewUnknown },
        { "known NaN", AdviceFailures.KnownResponseInvalid },
        { "known twice", AdviceFailures.KnownResponseInvalid },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void What_cannot_be_is_refused_with_its_own_code(string what, FailureCode code)
    {
        KnownResponse known = new("A", 46, 0, 1);
        (LegSetup setup, LegEvent[] events) = what switch
        {
            "mark NaN" => (Setup, [Mark(80, double.NaN, 0)]),
            "mark far away" => (Setup, [Mark(80, 0, 1e9)]),
            "path NaN" => (Setup, [Mark(double.NaN, 0, 0)]),
            "path zero" => (Setup, [Mark(0, 0, 0)]),
            "no uncertainty" => (Setup, [Mark(80, 0, 0, 0)]),
            "huge uncertainty" => (Setup, [Mark(80, 0, 0, 1e6)]),
            "turns NaN" => (Setup, [new LegEvent.Turn("A", double.NaN)]),
            "turns infinite" => (Setup, [new LegEvent.Turn("A", double.PositiveInfinity)]),
            "unknown screw" => (Setup, [new LegEvent.Turn("Q", 0.1)]),
            "a million events" => (Setup, [.. Enumerable.Repeat<LegEvent>(new LegEvent.Turn("A", 0.1), 1_000_000)]),
            "many stations" => (Setup, [.. Enumerable.Range(0, 60).Select(i => Mark(80 + i, 0, 0))]),
            "impossible slope" => (Setup, [Mark(80, 0, 0), Mark(480, 2, 0), new LegEvent.Turn("A", 20)]),
            "tolerance zero" => (Setup with { Tolerance = Length.Zero }, Array.Empty<LegEvent>()),
            "radius zero" => (Setup with { TargetRadius = Length.Zero }, []),
            "habit NaN" => (Setup with { Habits = Setup.Habits with { HandSetting = double.NaN } }, []),
            "stations swapped" => (Setup with { Near = Setup.Far, Far = Setup.Near }, []),
            "known of another screw" => (Setup with { Known = [known with { Screw = "Q" }] }, []),
            "known NaN" => (Setup with { Known = [known with { U = double.NaN }] }, []),
            _ => (Setup with { Known = [known, known] }, []),
        };
        Assert.False(LegAdviser.Advise(setup, events).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code);
    }

    [Fact]
    public void Any_events_within_the_limits_give_an_advice_or_a_refusal() =>
        Gen.Select(
            Gen.OneOf<LegEvent>(
                Gen.Select(Gen.Double[1, 20000], Gen.Double[-300, 300], Gen.Double[-300, 300], Gen.Double[0.001, 50], (p, u, v, s) => (LegEvent)Mark(p, u, v, s)),
                Gen.Select(Gen.Bool, Gen.Double[-20, 20], (a, t) => (LegEvent)new LegEvent.Turn(a ? "A" : "B", t)),
                Gen.Const((LegEvent)new LegEvent.Disturbed())).Array[0, 12],
            Gen.Double[0, 75]).Sample((events, incidence) => LegAdviser.Advise(ClosedLoop.Setup(new() { IncidenceDegrees = incidence }), events).TryGet(out LegAdvice? advice, out _)
                is false || (double.IsFinite(advice!.State.Spread.Probability) && advice.Reason.Length > 10),
            iter: 300);

    [Fact]
    public void A_thousand_events_are_worked_through()
    {
        LegEvent[] events = [.. Enumerable.Range(0, 1000).Select(i => i % 3 == 0 ? new LegEvent.Turn("A", i % 2 == 0 ? 0.001 : -0.001) : (LegEvent)Mark(i % 3 == 1 ? 80 : 480, 0.1, 0.1))];
        Assert.True(LegAdviser.Advise(Setup, events).TryGet(out _, out _));
    }

    private static LegAdvice Advise(params LegEvent[] events) => LegAdviser.Advise(Setup, events).ValueOrThrow();

    private static LegEvent.Mark Mark(double path, double u, double v, double sigma = 0.05) => new(path, new(new(u, v), Covariance2.Isotropic(sigma)));
}
