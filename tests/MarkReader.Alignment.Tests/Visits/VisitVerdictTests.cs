using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

public sealed class VisitVerdictTests(ITestOutputHelper output)
{
    private const int Machines = 400;

    private static readonly string[] s_faults = ["slope in leg 1", "slope in leg 2", "twist", "both slopes"];

    /// <summary>Machines whose marks truly spread by just the tolerance. 2.5 % of 400 is 10, for each of the two errors.</summary>
    [Theory]
    [InlineData("slope in leg 1", 1)]
    [InlineData("slope in leg 2", 1)]
    [InlineData("twist", 1)]
    [InlineData("both slopes", 1)]
    [InlineData("slope in leg 2", 3)]
    [InlineData("twist", 3)]
    public void Of_machines_truly_at_the_limit_at_most_one_in_forty_is_called_within_or_outside(string fault, int rounds)
    {
        Random random = new(11);
        int within = 0, outside = 0;
        for (int i = 0; i < Machines; i++)
        {
            SimulatedVisit machine = AtLimit(fault, random);
            Assert.Equal(0.5, machine.Spread(), 9);
            VisitEvent[] marks = [.. Enumerable.Range(0, rounds).SelectMany(_ => BedCorners.All).Select(c => machine.Do(SomeVisit.Ask(c)))];
            Verdict verdict = SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, .. marks]).State.Survey!.Spread.Verdict;
            within += verdict == Verdict.Within ? 1 : 0;
            outside += verdict == Verdict.Outside ? 1 : 0;
        }

        output.WriteLine($"{fault}, {rounds}: within {within}, outside {outside} of {Machines}");
        Assert.InRange(within, 0, 10);
        Assert.InRange(outside, 0, 10);
    }

    [Fact]
    public void Machines_well_on_either_side_are_told_apart()
    {
        int within = 0, outside = 0;
        for (int i = 0; i < 100; i++)
        {
            within += Verdict4(new() { SlopeTwo = new(0.2, 0), Random = new(i) }) == Verdict.Within ? 1 : 0;
            outside += Verdict4(new() { SlopeTwo = new(2, 0), Random = new(i) }) == Verdict.Outside ? 1 : 0;
        }

        Assert.InRange(within, 90, 100);
        Assert.InRange(outside, 95, 100);

        static Verdict Verdict4(SimulatedVisit machine) =>
            SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, .. BedCorners.All.Select(c => machine.Do(SomeVisit.Ask(c)))]).State.Survey!.Spread.Verdict;
    }

    [Fact]
    public void An_undecided_spread_asks_for_a_pulse_and_says_the_chance()
    {
        VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 0.36)]);
        Assert.Equal(Verdict.Undecided, advice.State.Survey!.Spread.Verdict);
        VisitAction.Survey survey = Assert.IsType<VisitAction.Survey>(advice.Action);
        Assert.Contains("chance", advice.Reason, StringComparison.Ordinal);
        Assert.Equal(survey.X.Millimetres > 0 && survey.Y.Millimetres > 0 ? 0.36 : 0, advice.Expected!.Mark.Point.V, 6);
    }

    /// <summary>Machines near the limit, with marks of three uncertainties.</summary>
    [Theory]
    [InlineData(0.03)]
    [InlineData(0.05)]
    [InlineData(0.1)]
    public void Every_undecided_visit_ends_decided(double noise)
    {
        VisitSetup setup = SomeVisit.Machine with { Stock = SomeVisit.Washers };
        int undecided = 0, longest = 0, stops = 0;
        for (int seed = 0; seed < 40; seed++)
        {
            Random random = new(900 + seed);
            SimulatedVisit machine = AtLimit(s_faults[seed % 4], random, noise);
            IReadOnlyList<VisitAdvice> given = SomeVisit.Play(setup, [], machine.Do);
            undecided += given.Any(g => g.State.Survey is { Marks: >= 4, Spread.Verdict: Verdict.Undecided }) ? 1 : 0;
            longest = Math.Max(longest, given.Count);
            if (given[^1].Action is VisitAction.Stop)
            {
                // What to check, or which washer is lacking.
                Assert.Matches("Check|stock", given[^1].Reason);
                stops++;
                continue;
            }

            Assert.IsType<VisitAction.Done>(given[^1].Action);
            Assert.Equal(Verdict.Within, given[^1].State.Machine.Verdict);
            Assert.InRange(machine.Spread(), 0, 0.6);
        }

        output.WriteLine($"{noise} mm: {undecided} of 40 undecided on the way, at most {longest} actions, {stops} stopped");
        // A fifth of the tolerance is coarse: a walk can then hide in a leg's own marks.
        Assert.InRange(stops, 0, noise > 0.05 ? 2 : 0);
        Assert.InRange(undecided, 10, 40);
    }

    [Fact]
    public void The_same_events_give_the_same_advice()
    {
        SimulatedVisit machine = new() { SlopeOne = new(4, -3), SlopeTwo = new(-5, 2), Twist = 1, Steady = new(1, -1), Random = new(7) };
        VisitSetup setup = SomeVisit.WithAperture with { Stock = SomeVisit.Washers };
        List<VisitEvent> events = [];
        IReadOnlyList<VisitAdvice> given = SomeVisit.Play(setup, [], machine.Do, events);
        Assert.Equal(given.Count, events.Count + 1);
        // Backwards, so that nothing carried over from the visit before can help.
        for (int i = given.Count - 1; i >= 0; i--)
        {
            VisitAdvice again = SomeVisit.Advise(setup, [.. events.Take(i)]);
            Assert.Equal((given[i].Action, given[i].Reason, given[i].State.Machine), (again.Action, again.Reason, again.State.Machine));
            Assert.Equal(given[i].Expected?.Mark, again.Expected?.Mark);
        }
    }

    // 0.5 mm in a direction at random; over 400 and 500 mm of travel.
    private static SimulatedVisit AtLimit(string fault, Random random, double noise = SomeVisit.Sigma)
    {
        (double sin, double cos) = Math.SinCos(2 * Math.PI * random.NextDouble());
        CardVector walk = new(0.5 * cos, 0.5 * sin);
        return fault switch
        {
            "slope in leg 1" => new() { SlopeOne = 1 / 0.4 * walk, Noise = noise, Random = random },
            "slope in leg 2" => new() { SlopeTwo = 1 / 0.5 * walk, Noise = noise, Random = random },
            "both slopes" => new() { SlopeOne = 0.5 / 0.4 * walk, SlopeTwo = 0.5 / 0.5 * walk, Noise = noise, Random = random },
            _ => new() { Twist = random.Next(2) == 0 ? 0.5 : -0.5, Noise = noise, Random = random },
        };
    }
}
