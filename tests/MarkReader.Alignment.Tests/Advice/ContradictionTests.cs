using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Advice;

public sealed class ContradictionTests
{
    [Fact]
    public void A_plate_that_slips_after_its_screws_were_learned_is_noticed()
    {
        int noticed = 0, played = 0;
        for (int seed = 0; seed < 100; seed++)
        {
            TrueLeg leg = new(new(), new Random(200 + seed));
            bool slipped = false;
            LegRun run = ClosedLoop.Play(leg, ClosedLoop.Setup(new()), turn =>
            {
                if (turn == 3)
                {
                    leg.Slip(1, 0.2);
                    slipped = true;
                }
            });
            played += slipped ? 1 : 0;
            noticed += run.End is LegAction.Stop ? 1 : 0;
        }

        Assert.InRange(played, 60, 100);
        Assert.InRange(noticed, 0.95 * played, played);
    }

    [Fact]
    public void Ordinary_noise_is_not_taken_for_a_fault()
    {
        int stops = 0, left = 0;
        for (int seed = 0; seed < 200; seed++)
        {
            LegRun run = ClosedLoop.Play(new(new(), new Random(3000 + seed)), ClosedLoop.Setup(new()));
            stops += run.End is LegAction.Stop ? 1 : 0;
            left += run.Advice.Any(a => a.Warnings.Count > 0) ? 1 : 0;
        }

        Assert.Equal(0, stops);
        Assert.InRange(left, 0, 2);
    }

    [Fact]
    public void A_screw_that_moves_nothing_is_named()
    {
        LegEvent[] events = [Mark(80, 0.4, 0.1), Mark(480, 2.8, 0.3), new LegEvent.Turn("A", 0.125), Mark(480, 2.82, 0.29)];
        LegAdvice advice = LegAdviser.Advise(ClosedLoop.Setup(new()), events).ValueOrThrow();
        Assert.IsType<LegAction.Stop>(advice.Action);
        Assert.Contains("screw A", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_that_moves_although_nothing_was_turned_is_asked_for_again_and_stops_the_work_when_it_comes_again()
    {
        List<LegEvent> events = [Mark(80, 0.4, 0.1), Mark(480, 2.8, 0.3), Mark(480, 4.8, 0.3)];
        LegAdvice advice = LegAdviser.Advise(ClosedLoop.Setup(new()), events).ValueOrThrow();
        Assert.Equal(new LegAction.Fire(480), advice.Action);
        Assert.Contains("before anything is turned", advice.Reason, StringComparison.Ordinal);
        events.Add(Mark(480, 4.8, 0.3));
        advice = LegAdviser.Advise(ClosedLoop.Setup(new()), events).ValueOrThrow();
        Assert.IsType<LegAction.Stop>(advice.Action);
        Assert.Contains("although nothing was turned", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_that_moved_by_a_slip_of_the_tape_is_left_out_when_the_next_one_is_back()
    {
        LegEvent[] events = [Mark(80, 0.4, 0.1), Mark(480, 2.8, 0.3), Mark(480, 4.8, 0.3), Mark(480, 2.8, 0.3)];
        LegAdvice advice = LegAdviser.Advise(ClosedLoop.Setup(new()), events).ValueOrThrow();
        Assert.IsType<LegAction.Turn>(advice.Action);
        Assert.Equal("markLeftOut", Assert.Single(advice.Warnings).Code);
        Assert.Equal(6, advice.State.Slope!.U, 0.3);
    }

    [Fact]
    public void A_slightly_odd_mark_is_asked_for_once_more_and_left_out_when_the_next_one_fits()
    {
        LegSetup setup = ClosedLoop.Setup(new());
        List<LegEvent> events = [Mark(80, 0.4, 0.1), Mark(480, 2.8, 0.3), Mark(80, 0.4, 0.1), Mark(480, 2.8, 0.3), Mark(480, 2.8, 0.55)];
        LegAdvice advice = LegAdviser.Advise(setup, events).ValueOrThrow();
        Assert.Equal(new LegAction.Fire(480), advice.Action);
        events.Add(Mark(480, 2.81, 0.29));
        advice = LegAdviser.Advise(setup, events).ValueOrThrow();
        Assert.Equal("markLeftOut", Assert.Single(advice.Warnings).Code);
        Assert.IsType<LegAction.Turn>(advice.Action);
        Assert.Equal(0.5, advice.State.Slope!.V, 0.05);
    }

    [Fact]
    public void After_a_stop_the_leg_is_still_brought_home()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            LegSetup setup = ClosedLoop.Setup(new());
            TrueLeg leg = new(new(), new Random(400 + seed));
            List<LegEvent> events = [];
            int turns = 0, stops = 0;
            LegAction action;
            do
            {
                action = LegAdviser.Advise(setup, events).ValueOrThrow().Action;
                switch (action)
                {
                    case LegAction.Turn turn:
                        leg.Turn(turn.Screw, turn.Turns);
                        events.Add(new LegEvent.Turn(turn.Screw, turn.Turns));
                        if (++turns == 3)
                            leg.Slip(1, 0.1);
                        break;
                    case LegAction.Fire fire:
                        events.Add(new LegEvent.Mark(fire.Path, leg.Fire(fire.Path)));
                        break;
                    case LegAction.Stop:
                        // The screw is tightened; a fresh mark goes on.
                        stops++;
                        events.Add(new LegEvent.Mark(480, leg.Fire(480)));
                        break;
                }
            }
            while (action is not LegAction.Done && events.Count < ClosedLoop.Most);

            Assert.IsType<LegAction.Done>(action);
            Assert.InRange(stops, 0, 2);
            Assert.InRange(leg.Spread(), 0, 0.6);
        }
    }

    private static LegEvent.Mark Mark(double path, double u, double v) => new(path, new(new(u, v), Covariance2.Isotropic(0.05)));
}
