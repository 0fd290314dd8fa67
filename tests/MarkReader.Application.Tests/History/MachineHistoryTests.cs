using MarkReader.Alignment.History;
using MarkReader.Application.History;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;
using static MarkReader.Application.Tests.History.VisitedMachine;

namespace MarkReader.Application.Tests.History;

public sealed class MachineHistoryTests : IDisposable
{
    // From the marks: √2 · 0.05 mm over the travel.
    private const double LegOne = 0.177, LegTwo = 0.1414;

    private static readonly HistoryWords s_words = new(RecordFormat.Plain);

    private readonly VisitedMachine _machine = new(Document());

    public void Dispose() => _machine.Dispose();

    [Fact]
    public void Nothing_beyond_its_uncertainty_is_called_steady()
    {
        foreach ((int day, double u) in new[] { (0, 0.1), (30, 0.2), (61, -0.05), (90, 0.15), (125, 0) })
            _machine.Visit(day, Marks("1", u, -u));
        QuantityHistory history = Assert.Single(_machine.Now.Quantities);
        Assert.Equal((HistoryVerdict.Steady, 4, 5), (history.Finding!.Verdict, history.Changes.Count, history.Points.Count));
        Assert.All(history.Changes.Skip(1), c => Assert.True(c.BeginsWhereLastEnded));
        Assert.Equal(LegOne, Math.Sqrt(history.Changes[0].Left.Covariance.Uu), 0.01);
        Assert.StartsWith("Leg 1's slope is steady: over 5 visits nothing beyond its uncertainty. A drift of up to 0.1", s_words.Sentence(history), StringComparison.Ordinal);
    }

    [Fact]
    public void A_drift_that_nobody_corrects_has_the_rate_of_its_marks()
    {
        for (int i = 0; i < 5; i++)
            _machine.Visit(i * 30, Marks("2", 0.4 * i, 0.3 * i));
        QuantityHistory history = Assert.Single(_machine.Now.Quantities);
        Assert.Equal(HistoryVerdict.Drifting, history.Finding!.Verdict);
        Assert.Equal(0.5 * 365.25 / 12 / 30, history.Finding.Rate!.Value, 0.02);
        Assert.Matches(@"^Leg 2's slope is drifting: about 0\.5\d mrad a month \(0\.\d\d to 0\.\d\d\)\.$", s_words.Sentence(history));
        Assert.Matches(@"about 0,5\d mrad a month", new HistoryWords(RecordFormat.Plain with { HasComma = true }).Sentence(history));
    }

    [Fact]
    public void A_jump_that_was_put_right_is_told_with_its_days_and_its_size()
    {
        _machine.Visit(0, Marks("1", 0.1, 0));
        _machine.Visit(57, Marks("1", 0, 0));
        _machine.Visit(90, Marks("1", 2.9, 0), Turn("1", 0.0625), Marks("1", 0, 0.05));
        _machine.Visit(120, Marks("1", 0.05, 0));
        QuantityHistory history = Assert.Single(_machine.Now.Quantities);
        Assert.Equal(HistoryVerdict.Jumped, history.Finding!.Verdict);
        Assert.Equal([false, true, false], history.Changes.Select(c => c.BeginsWhereLastEnded));
        Assert.Equal(2.9, history.Points[2].State.Found!.U, 0.1);
        Assert.Equal(0, history.Points[2].State.Left!.U, 0.2);
        Assert.Matches(@"^Leg 1's slope jumped between 2026-03-03 and 2026-04-05, by 2\.\d\d mrad \(2\.\d\d to 3\.\d\d\)\.$", s_words.Sentence(history));
        Assert.Contains("2026-04-05: found u +2.", s_words.Description(history), StringComparison.Ordinal);
        Assert.NotEmpty(PictureFile.Svg(s_words.Chart(history)));
    }

    [Fact]
    public void A_turn_of_leg_1_before_leg_2_was_found_widens_what_is_said_of_leg_2()
    {
        _machine.Visit(0, Marks("1", 0, 0), Marks("2", 0, 0));
        _machine.Visit(30, Marks("1", 2.9, 0), Turn("1", 0.0625), Marks("1", 0.6, 0), Marks("2", 0.5, 0));
        HistoryChange change = Assert.Single(_machine.Now.Quantities[1].Changes);
        // Leg 1 stands 0.6 mrad otherwise: on each axis 0.6²/2, and the variances of both slopes.
        double more = (0.36 + (4 * LegOne * LegOne)) / 2;
        Assert.Equal((LegTwo * LegTwo) + more, change.Found.Covariance.Uu, 0.15 * more);
        Assert.Equal(LegTwo * LegTwo, change.Left.Covariance.Uu, 0.002);
    }

    [Fact]
    public void What_was_turned_and_not_measured_again_ends_a_chain_and_says_nothing_of_what_came_after()
    {
        _machine.Visit(0, Marks("1", 0, 0));
        _machine.Visit(30, Marks("1", 0, 0), Turn("1", 0.0625));
        _machine.Visit(60, Marks("1", 2.9, 0));
        QuantityHistory history = Assert.Single(_machine.Now.Quantities);
        Assert.Null(history.Points[1].State.Left);
        Assert.Equal((HistoryVerdict.TooFew, 1), (history.Finding!.Verdict, history.Changes.Count));
        Assert.Equal("Leg 1's slope: too few visits to tell. One more visit is needed at which it is measured before anything is changed.", s_words.Sentence(history));
    }

    [Fact]
    public void A_reminder_counts_from_the_last_visit_and_practice_is_no_visit()
    {
        using VisitedMachine machine = new(Document("\"remindDays\": 30,"));
        Assert.Null(machine.Now.Reminder);
        machine.Visit(0, Marks("1", 0, 0));
        DateTimeOffset due = machine.Clock.Now.AddDays(30);
        machine.Visits.Begin(new(null, "", "", new(6))).ValueOrThrow();
        Assert.Equal((due, 1), (machine.Now.Reminder!.DueAt, machine.Now.Visits.Count));
        Assert.False(machine.Now.Reminder!.IsOverdue(due));
        Assert.True(machine.Now.Reminder!.IsOverdue(due.AddMinutes(1)));
        Assert.Equal(due, Assert.Single(machine.Machines.Overview(null, 10).ValueOrThrow().Items).Reminder!.DueAt);
        Assert.False(machine.History.Of(99).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.NotKept, failure.Code);
    }
}
