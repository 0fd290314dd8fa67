using MarkReader.Alignment.History;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.History;

public sealed class HistoryTestTests
{
    private const int Drawn = 4000;

    [Theory]
    [InlineData(1, 0, 1)]
    [InlineData(2, 0.5, 0)]
    [InlineData(5, 0, 0)]
    [InlineData(5, 1, 0)]
    [InlineData(5, 0.5, 0)]
    [InlineData(5, 0, 0.7)]
    [InlineData(25, 0.3, 0.7)]
    public void Of_steady_histories_at_most_5_in_100_are_called_anything_else(int changes, double leftAlone, double common)
    {
        SimulatedHistory history = new(changes, 0.1, (_, _) => (0, 0)) { LeftAlone = leftAlone, Common = common, Uneven = true };
        int wrong = Count(history, changes, f => f.Verdict is not (HistoryVerdict.Steady or HistoryVerdict.TooFew));

        // Three standard deviations of a count at 5 %; and the tests do reject now and then.
        Assert.InRange(wrong, Drawn / 100, (0.05 * Drawn) + (3 * Math.Sqrt(0.05 * 0.95 * Drawn)));
    }

    [Fact]
    public void A_drift_of_three_sigma_a_month_is_named_after_six_months_in_9_of_10_histories_and_hardly_ever_called_a_jump()
    {
        SimulatedHistory history = new(6, 0.1, (_, months) => (0.24 * months, 0.18 * months));
        Assert.InRange(Count(history, 1, f => f.Verdict == HistoryVerdict.Drifting), 0.9 * Drawn, Drawn);
        Assert.InRange(Count(history, 2, f => f.Verdict == HistoryVerdict.Jumped), 0, 0.01 * Drawn);
    }

    [Fact]
    public void Two_thirds_of_that_drift_are_called_steady_in_less_than_1_of_20_histories()
    {
        SimulatedHistory history = new(6, 0.1, (_, months) => (0.16 * months, 0.12 * months));
        Assert.InRange(Count(history, 8, f => f.Verdict == HistoryVerdict.Steady), 0, 0.05 * Drawn);
    }

    [Fact]
    public void The_interval_of_a_rate_holds_the_true_one_in_95_of_100_histories()
    {
        SimulatedHistory history = new(6, 0.1, (_, months) => (0.12 * months, 0.09 * months)) { Uneven = true };
        int held = Count(history, 3, f => f.Rate!.Low <= 0.15 && f.Rate.High >= 0.15);
        Assert.InRange(held, 0.935 * Drawn, 0.965 * Drawn);
    }

    [Fact]
    public void A_jump_of_eight_sigma_is_found_in_9_of_10_histories_in_its_place_and_hardly_ever_called_a_drift()
    {
        SimulatedHistory history = new(6, 0.1, (i, _) => i == 3 ? (-0.64, 0.48) : (0, 0));
        Assert.InRange(Count(history, 4, f => f.Verdict == HistoryVerdict.Jumped && f.JumpAt == 3), 0.9 * Drawn, Drawn);
        Assert.InRange(Count(history, 5, f => f.Verdict == HistoryVerdict.Drifting), 0, 0.002 * Drawn);
        Assert.InRange(Count(history, 6, f => f.Jump!.Low <= 0.8 && f.Jump.High >= 0.8), 0.935 * Drawn, 0.965 * Drawn);
    }

    [Fact]
    public void Changes_to_and_fro_are_called_unsteady()
    {
        SimulatedHistory history = new(6, 0.05, (i, _) => i % 2 == 0 ? (0.5, 0) : (-0.5, 0.2));
        Assert.InRange(Count(history, 7, f => f.Verdict == HistoryVerdict.Unsteady), 0.95 * Drawn, Drawn);
    }

    [Fact]
    public void The_numbers_of_a_history_worked_by_hand_come_out()
    {
        // 97.5 % of the normal distribution, to six places.
        const double Normal = 1.959964;
        // Two changes of a month each, own measurements: d = (3, 0) and (1, 0) with covariance 2·I each. Rate = 2, of variance 1; χ² = 9/2 + 1/2.
        DateTimeOffset begun = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
        HistoryChange[] changes = [Change(0, 0, 3), Change(1, 5, 6)];
        HistoryFinding finding = HistoryTest.Of(changes);
        Assert.Equal(2, finding.Rate!.Value, 6);
        Assert.Equal(2 - Normal, finding.Rate.Low, 6);
        Assert.Equal(2 + Normal, finding.Rate.High, 6);
        Assert.Equal((0, 3), (finding.JumpAt!.Value, Math.Round(finding.Jump!.Value, 6)));
        // P(χ² with 2 degrees of freedom > 2²/1) = exp(−2), of the jump twice exp(−9/4), of all with 4 degrees (1 + 5/2)·exp(−5/2).
        Assert.Equal(Math.Min(1, 3 * Math.Min(Math.Exp(-2), Math.Min(2 * Math.Exp(-2.25), 3.5 * Math.Exp(-2.5)))), finding.Probability, 6);
        Assert.Equal(HistoryVerdict.Steady, finding.Verdict);

        // The same without a change at the second visit: the sum of both changes, 4, has the variance of two measurements.
        HistoryFinding together = HistoryTest.Of([Change(0, 0, 3), Change(1, 3, 4) with { BeginsWhereLastEnded = true }]);
        Assert.Equal(2, together.Rate!.Value, 6);
        Assert.Equal(Normal * Math.Sqrt(0.5), together.Rate.High - together.Rate.Value, 6);

        HistoryChange Change(int month, double left, double found) => new(begun.AddDays(month * 365.25 / 12), begun.AddDays((month + 1) * 365.25 / 12), Value(left), Value(found));
    }

    [Fact]
    public void One_change_is_too_few_for_a_verdict_but_what_is_beyond_its_uncertainty_is_told()
    {
        DateTimeOffset begun = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
        HistoryFinding Of(double found) => HistoryTest.Of([new(begun, begun.AddDays(30), Value(0), Value(found))]);
        Assert.Equal((HistoryVerdict.TooFew, 1), (Of(1).Verdict, Of(1).Missing));
        Assert.Equal((HistoryVerdict.Changed, 1), (Of(9).Verdict, Of(9).Missing));
        Assert.Equal((HistoryVerdict.TooFew, 2), (HistoryTest.Of([]).Verdict, HistoryTest.Of([]).Missing));
    }

    private static HistoryValue Value(double u) => new(u, 0, Covariance2.Isotropic(1));

    private static int Count(SimulatedHistory history, int seed, Func<HistoryFinding, bool> condition)
    {
        Random random = new(seed);
        return Enumerable.Range(0, Drawn).Count(_ => condition(HistoryTest.Of(history.Draw(random))));
    }
}
