using MarkReader.Application.Budgets;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Budgets;

public sealed class ExplainedBudgetTests
{
    private static readonly MarkReport s_mark = new(0, 0, [[1e-6, 0], [0, 1e-6]], 2, 100, 100, null);

    [Fact]
    public void What_dominates_and_what_would_halve_the_whole_is_said_with_how()
    {
        // 4² + 3² = 5²: 64 % and 36 %.
        ExplainedBudget words = ExplainedBudget.Of(Report((UncertaintySource.Noise, 0.03), (UncertaintySource.PathLengths, 0.04)), RecordFormat.Plain)!;

        Assert.StartsWith("64 % comes from one part: path lengths.", words.Dominant, StringComparison.Ordinal);
        Assert.EndsWith("0.0500\u00a0mm would become 0.0300\u00a0mm.", words.Dominant, StringComparison.Ordinal);
        Assert.Equal("No part stands out: all must shrink to one half.", words.Halving);
        Assert.Equal(2, words.Remedies.Count);
        Assert.Null(words.Idle);
    }

    [Fact]
    public void Parts_that_hardly_count_are_named_as_not_worth_the_work_in_the_readers_unit()
    {
        RecordFormat inches = RecordFormat.Plain with { Unit = RecordUnit.Inch, HasComma = true };
        ExplainedBudget words = ExplainedBudget.Of(Report((UncertaintySource.Noise, 0.002), (UncertaintySource.Parallax, 0.0508)), inches)!;

        Assert.Contains("must shrink to 50 % of its size: height of the tape", words.Halving, StringComparison.Ordinal);
        Assert.Contains("Not worth work: noise and texture.", words.Idle, StringComparison.Ordinal);
        Assert.Contains("0,002002\u00a0in", words.Idle, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_source_is_told_what_it_is_and_what_makes_it_smaller() => Assert.All(Enum.GetValues<UncertaintySource>(), source =>
    {
        Assert.NotEqual("", ExplainedBudget.About(source));
        Assert.NotEqual("", BudgetTexts.Get("less." + source));
    });

    [Fact]
    public void A_report_of_an_earlier_or_later_version_is_not_explained()
    {
        AimReport report = Report((UncertaintySource.Noise, 0.03));
        Assert.Null(ExplainedBudget.Of(report with { Aim = report.Aim with { Budget = null } }, RecordFormat.Plain));
        Assert.Null(ExplainedBudget.Of(report with { Aim = report.Aim with { Budget = [report.Aim.Budget![0] with { Source = "tides" }] } }, RecordFormat.Plain));
    }

    private static AimReport Report(params (UncertaintySource Source, double Uncertainty)[] parts)
    {
        UncertaintyComponent[] budget = [.. parts.Select(p => new UncertaintyComponent(p.Source, Covariance2.Isotropic(p.Uncertainty)))];
        double variance = budget.Sum(c => c.Covariance.Uu);
        return new(
            s_mark, s_mark, new(1, 2, [[variance, 0], [0, variance]], 0, 0, ComponentReport.From(budget)),
            new(1, 1, [[1, 0], [0, 1]]), 0.2, new(80, 480, 1, 0, 0, 0), new(0, 0, []), [], null);
    }
}
