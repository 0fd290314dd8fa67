using MarkReader.Application.Budgets;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Documents;
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

    // A region of 2.448 standard uncertainties against the usual tolerance of 0.5 mm.
    [Theory]
    [InlineData(0.051, Sufficiency.Enough, "differ by 0.125\u00a0mm at most (95 %), 25 % of a tolerance of 0.5\u00a0mm")]
    [InlineData(0.053, Sufficiency.Scarce, "Hardly good enough")]
    [InlineData(0.3, Sufficiency.TooLittle, "147 % of a tolerance of 0.5\u00a0mm")]
    public void Whether_it_is_good_enough_is_said_against_the_usual_tolerance(double uncertainty, Sufficiency sufficiency, string said)
    {
        ExplainedBudget words = ExplainedBudget.Of(Report((UncertaintySource.Noise, uncertainty)), RecordFormat.Plain)!;

        Assert.Equal(sufficiency, words.Sufficiency);
        Assert.Contains(said, words.Enough, StringComparison.Ordinal);
        Assert.Contains("this result has none of its own", words.Enough, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.01, 0.2)]
    [InlineData(0.04, 0.2)]
    [InlineData(0.02, 1.5)]
    public void The_scatter_of_pulses_that_is_named_makes_it_just_good_enough(double uncertainty, double ratio)
    {
        AimReport report = Report((UncertaintySource.Noise, uncertainty)) with { Ratio = ratio };
        double scatter = ExplainedBudget.BearableScatter(report).Millimetres;

        // The aim point lies on the near mark's other side: near + r·(near − far).
        double variance = report.Aim.Covariance[0][0] + (scatter * scatter * (Math.Pow(1 + ratio, 2) + Math.Pow(-ratio, 2)));
        Assert.Equal(0.125, Math.Sqrt(variance * Covariance2.ChiSquare95), 9);
        Assert.Contains(RecordFormat.Plain.WithUnit(scatter, 3), ExplainedBudget.Of(report, RecordFormat.Plain)!.Enough, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.995, "99.5")]
    [InlineData(0.5, "50")]
    [InlineData(0.034, "3.4")]
    public void A_share_is_the_same_number_in_words_and_in_bars(double share, string said)
    {
        Assert.Equal(said, ExplainedBudget.Percent(share, RecordFormat.Plain));
        Assert.Equal(said, Percentage.Rounded(share).ToString(System.Globalization.CultureInfo.InvariantCulture));
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

    [Fact]
    public void The_document_says_which_aim_it_explains_when_it_was_found_and_by_which_version()
    {
        AimReport report = Report((UncertaintySource.Noise, 0.03));
        DateTimeOffset found = new(2026, 11, 26, 14, 3, 9, TimeSpan.Zero);
        SheetDocument kept = BudgetDocument.Of(new(report, AimToExplain.Kept(12), found, ProgramVersion.Current), RecordFormat.Plain)!;
        Assert.Equal(("Result 12, 2026-11-26 14:03 UTC. Path lengths 80\u00a0mm and 480\u00a0mm", $"MarkReader {ProgramVersion.Current}", found), (kept.Subtitle, kept.Foot, kept.Written));
        SheetDocument photos = BudgetDocument.Of(new(report, AimToExplain.Photos(["/tmp/near.jpg", "far\n.jpg"]), found, "0.1"), RecordFormat.Plain)!;
        Assert.StartsWith("near.jpg, far.jpg, 2026-11-26 14:03 UTC.", photos.Subtitle, StringComparison.Ordinal);
        Assert.Equal($"Worked out by MarkReader 0.1, explained by {ProgramVersion.Current}", photos.Foot);
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
