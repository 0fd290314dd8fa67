using System.Globalization;
using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Advice;

/// <summary>
/// The adviser against legs drawn at random and traced with vectors: up to 8 mrad on both axes, senses unknown, arms ±20 %, paths ±2 mm,
/// marks ±0.05 mm, backlash 5°, a hand that is off by 1/128 turn; the spread over the travel has to come within 0.5 mm.
/// </summary>
public sealed class ClosedLoopTests(ITestOutputHelper output)
{
    [Fact]
    public void Random_legs_come_within_tolerance_in_five_pulses_and_four_turns()
    {
        Score score = Score.Of(Play(new(), 300), 0.5);
        output.WriteLine(score.ToString());
        Assert.Equal(300, score.Legs);
        Assert.Equal(300, score.Done);
        Assert.InRange(score.Pulses.Median, 3, 5);
        Assert.InRange(score.Turns.Median, 2, 4);
        Assert.InRange(score.Pulses.High, 3, 9);
        Assert.InRange(score.Turns.High, 2, 8);
        Assert.True(score.TrulyOutside <= 0.025 * score.Legs, score.ToString());
    }

    [Fact]
    public void Known_responses_save_pulses_and_turns()
    {
        Score score = Score.Of(Play(new(), 200, (setup, leg) => setup with
        {
            Known = [.. setup.Frame.Screws.Select(s => new KnownResponse(s, leg.Response(s).U + 0.8, leg.Response(s).V - 0.8, 1))],
        }), 0.5);
        output.WriteLine(score.ToString());
        Assert.Equal(200, score.Done);
        Assert.InRange(score.Pulses.Median, 2, 4);
        Assert.InRange(score.Turns.Median, 1, 2);
    }

    [Theory]
    [InlineData("60/560 mm")]
    [InlineData("tape at 45 degrees")]
    [InlineData("three screws")]
    [InlineData("frame turned 5 degrees")]
    [InlineData("marks 0.02 mm")]
    [InlineData("marks 0.15 mm")]
    [InlineData("arms 35 %, backlash 10 degrees")]
    [InlineData("long levers")]
    public void Other_legs_come_within_tolerance_too(string which)
    {
        LegRanges ranges = which switch
        {
            "60/560 mm" => new() { Near = 60, Far = 560 },
            "tape at 45 degrees" => new() { IncidenceDegrees = 45 },
            "three screws" => new() { ThreeScrews = true },
            "frame turned 5 degrees" => new() { FrameTurnedDegrees = 5 },
            "marks 0.02 mm" => new() { Mark = 0.02 },
            "marks 0.15 mm" => new() { Mark = 0.15 },
            "arms 35 %, backlash 10 degrees" => new() { ArmSpread = 0.35, BacklashDegrees = 10 },
            _ => new() { Arm = 45, Pitch = 0.5 },
        };
        Score score = Score.Of(Play(ranges, 60), 0.5);
        output.WriteLine($"{which}: {score}");
        Assert.Equal(60, score.Legs);
        Assert.Equal(60, score.Done);
        // A mark of 0.15 mm needs a few more pulses to decide 0.5 mm.
        Assert.InRange(score.Pulses.Median, 3, which == "marks 0.15 mm" ? 9 : 5);
        Assert.InRange(score.Turns.High, 2, 12);
        Assert.InRange(score.TrulyOutside, 0, 3);
    }

    /// <summary>No turn may carry the beam off its target, whichever way it works: 8 mm, or a little more where the beam began out there.</summary>
    [Fact]
    public void No_leg_s_beam_leaves_the_target_on_the_way()
    {
        LegRun[] runs = [.. Play(new() { Slope = 5 }, 100)];
        Assert.Equal(100, runs.Length);
        Assert.All(runs, r => Assert.InRange(r.Farthest, 0, 9.5));
    }

    [Fact]
    public void Slope_and_next_mark_lie_where_they_are_stated_as_often_as_they_should()
    {
        List<double> slopes = [], marks = [];
        for (int seed = 0; seed < 200; seed++)
        {
            TrueLeg leg = new(new(), new Random(7000 + seed));
            LegRun run = ClosedLoop.Play(leg, ClosedLoop.Setup(new()));
            (double u, double v) = leg.Slopes();
            LegState end = run.Advice[^1].State;
            slopes.Add(end.Slope!.Covariance.MahalanobisSquared(new((1000 * u) - end.Slope.U, (1000 * v) - end.Slope.V)));
            marks.AddRange(run.Events.Zip(run.Advice)
                .Where(p => p.First is LegEvent.Mark && p.Second.Expected is not null)
                .Select(p => p.Second.Expected!.Mark.Covariance.MahalanobisSquared(((LegEvent.Mark)p.First).At.Point - p.Second.Expected.Mark.Point)));
        }

        // χ² with two degrees of freedom: mean 2 ± 0.14 for 200 legs.
        Assert.Equal(200, slopes.Count);
        Assert.InRange(slopes.Average(), 1.5, 2.6);
        Assert.True(marks.Count > 300);
        Assert.InRange(marks.Count(m => m > Covariance2.ChiSquare95) / (double)marks.Count, 0, 0.05);
    }

    private static IEnumerable<LegRun> Play(LegRanges ranges, int legs, Func<LegSetup, TrueLeg, LegSetup>? told = null)
    {
        for (int seed = 0; seed < legs; seed++)
        {
            TrueLeg leg = new(ranges, new Random(1000 + seed));
            LegSetup setup = ClosedLoop.Setup(ranges);
            yield return ClosedLoop.Play(leg, told?.Invoke(setup, leg) ?? setup);
        }
    }

    private sealed record Spread(double Median, double High, double Most)
    {
        public static Spread Of(IEnumerable<double> values)
        {
            double[] sorted = [.. values.Order()];
            return new(sorted[sorted.Length / 2], sorted[(int)(0.95 * sorted.Length)], sorted[^1]);
        }
    }

    private sealed record Score(int Legs, int Done, int TrulyOutside, Spread Pulses, Spread Turns, Spread Millimetres)
    {
        public static Score Of(IEnumerable<LegRun> played, double tolerance)
        {
            LegRun[] runs = [.. played];
            return new(
                runs.Length,
                runs.Count(r => r.Said),
                runs.Count(r => r.Said && r.Spread > tolerance),
                Spread.Of(runs.Select(r => (double)r.Pulses)),
                Spread.Of(runs.Select(r => (double)r.Turns)),
                Spread.Of(runs.Select(r => r.Spread)));
        }

        public override string ToString() => string.Create(
            CultureInfo.InvariantCulture,
            $"{Done} of {Legs} done, {TrulyOutside} of them outside; pulses {Pulses}, turns {Turns}, spread {Millimetres}");
    }
}
