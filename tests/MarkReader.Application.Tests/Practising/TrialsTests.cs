using MarkReader.Alignment.Verdicts;
using MarkReader.Trials.Machines;
using MarkReader.Trials.Methods;
using MarkReader.Trials.Scores;

namespace MarkReader.Application.Tests.Practising;

/// <summary>A part of the trials whose table is in the README: the same machines every time.</summary>
public sealed class TrialsTests
{
    private const int Machines = 60;

    [Theory]
    [InlineData("all", 5, 4)]
    // Over 1000 machines the median is 2; of 60 it can be 3.
    [InlineData("known", 4, 3)]
    public void Machines_are_brought_within_half_a_millimetre_with_few_pulses_and_turns(string name, int pulses, int turns)
    {
        TrialResult[] results = [.. Enumerable.Range(1, Machines).AsParallel().AsOrdered().Select(seed => AdvisedVisit.Run(TrialMachine.Draw(Condition.All.Single(c => c.Name == name), seed)))];

        Assert.Equal(Machines, results.Length);
        Assert.True(results.Count(r => r.Unfinished is null) >= 0.97 * Machines);
        Assert.True(results.Count(r => r.After.IsWithin) >= 0.97 * Machines);
        Assert.All(results, r => Assert.True(r.After.Spread < r.Before.Spread, "No machine ends worse than it began."));
        Assert.InRange(Part(results.SelectMany(r => r.Pulses), 0.5), 1, pulses);
        Assert.InRange(Part(results.SelectMany(r => r.Pulses), 0.95), 1, 9);
        Assert.InRange(Part(results.SelectMany(r => r.Turns), 0.5), 1, turns);
        Assert.InRange(Part(results.SelectMany(r => r.Turns), 0.95), 1, 8);
        GivenVerdict[] outside = [.. results.SelectMany(r => r.Verdicts).Where(v => !v.TrulyWithin)];
        Assert.True(outside.Length > 100);
        Assert.InRange(outside.Count(v => v.Verdict == Verdict.Within), 0, 0.025 * outside.Length);
    }

    [Fact]
    public void Halving_by_eye_leaves_most_machines_outside()
    {
        TrialMachine[] machines = [.. Enumerable.Range(1, Machines).Select(seed => TrialMachine.Draw(Condition.All[0], seed))];
        Assert.InRange(machines.Count(m => new ByHand(m, halving: true).Run().After.IsWithin), 1, Machines / 2);
    }

    private static int Part(IEnumerable<int> values, double part)
    {
        int[] sorted = [.. values.Order()];
        return sorted[Math.Min(sorted.Length - 1, (int)(part * sorted.Length))];
    }
}
