using MarkReader.Application.Studies;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a repeatability and reproducibility study: mm; intervals at 95 %.</summary>
/// <param name="Photos">Whether a repeat is a photo, which is then a source of its own.</param>
/// <param name="Worse">u or v.</param>
/// <param name="Verdict">fits, undecided, tooCoarse: 30 % of the full tolerance width.</param>
/// <param name="ToleranceWidth">Full width on each axis: twice the largest distance.</param>
/// <param name="Next">The study that would know the gauge as well as was wished.</param>
public sealed record StudyReport(
    int Parts, int Operators, int Repeats, bool Photos, string Worse, string Verdict, double ToleranceWidth,
    StudyAxisReport U, StudyAxisReport V, StudyPlanReport Next, IReadOnlyList<string> Notes)
{
    public static StudyReport From(StudyAnswer answer)
    {
        StudySize size = answer.U.Study.Size;
        return new(
            size.Parts, size.Operators, size.Repeats, answer.Request.Readings.Photos, answer.Worse.Axis, SurveyReport.Name(StudyWords.Verdict(answer)), StudyWords.FullWidth(answer),
            StudyAxisReport.From(answer.U, StudyWords.FullWidth(answer)), StudyAxisReport.From(answer.V, StudyWords.FullWidth(answer)), StudyPlanReport.From(answer.Plan), [.. StudyWords.Notes(answer)]);
    }
}

/// <summary>One axis.</summary>
/// <param name="Pooled">Whether the interaction was taken as repeatability.</param>
/// <param name="Categories">Number of distinct categories; null without any scatter.</param>
/// <param name="Stated">Null when no uncertainty was stated.</param>
public sealed record StudyAxisReport(
    IReadOnlyList<AnovaRowReport> Anova, bool Pooled, IReadOnlyList<StudyComponentReport> Components, int? Categories, StatedReport? Stated)
{
    internal static StudyAxisReport From(StudyAxis axis, double width) => new(
        [.. axis.Study.Rows.Select(AnovaRowReport.From)],
        axis.Study.IsPooled,
        [.. StudyWords.Order(axis.Study.Options.Photos).Select(part => StudyComponentReport.From(axis.Study, part, width))],
        axis.Study.Categories,
        StatedReport.From(axis));
}

/// <summary>A row of the table of variance.</summary>
/// <param name="Source">part, operator, interaction, photo, repeatability, pooled, total.</param>
/// <param name="Against">Sources in the denominator of F.</param>
public sealed record AnovaRowReport(string Source, double SumOfSquares, double Dof, double MeanSquare, double? F, double? Probability, IReadOnlyList<string> Against)
{
    internal static AnovaRowReport From(AnovaRow row) =>
        new(SurveyReport.Name(row.Source), row.SumOfSquares, row.Dof, row.MeanSquare, row.Test?.F, row.Test?.Probability, [.. (row.Test?.Against ?? []).Select(SurveyReport.Name)]);
}

/// <summary>A part of the scatter.</summary>
/// <param name="Part">photo, within, repeatability, operator, interaction, reproducibility, gauge, parts.</param>
/// <param name="Interval">Of the standard deviation: low, high.</param>
/// <param name="Contribution">% of the total variance.</param>
/// <param name="StudyVariation">% of the total standard deviation.</param>
/// <param name="OfTolerance">Six standard deviations in % of the full tolerance width, with its interval.</param>
/// <param name="WasNegative">Estimated below zero and set to 0.</param>
public sealed record StudyComponentReport(
    string Part, double Variance, double StandardDeviation, double[] Interval, double Contribution, double StudyVariation, double OfTolerance, double[] OfToleranceInterval, bool WasNegative)
{
    internal static StudyComponentReport From(GaugeStudy study, StudyPart part, double width)
    {
        VarianceComponent c = study[part];
        (double percent, Interval interval) = study.OfTolerance(part, width);
        return new(SurveyReport.Name(part), c.Variance, c.StandardDeviation, Ends(c.DeviationInterval), study.Contribution(part), study.StudyVariation(part), percent, Ends(interval), c.WasNegative);
    }

    internal static double[] Ends(Interval interval) => [interval.Low, interval.High];
}

/// <summary>Observed scatter over the stated uncertainty.</summary>
/// <param name="Uncertainty">Root mean square of what was stated, mm.</param>
/// <param name="Verdict">tooSmall, agrees, larger: of the statement, by the repeatability.</param>
public sealed record StatedReport(double Uncertainty, double RepeatabilityRatio, double[] RepeatabilityInterval, double GaugeRatio, double[] GaugeInterval, string Verdict)
{
    internal static StatedReport? From(StudyAxis axis) => axis is { Repeatability: { } r, Gauge: { } g }
        ? new(r.Stated, r.Ratio, StudyComponentReport.Ends(r.Interval), g.Ratio, StudyComponentReport.Ends(g.Interval), SurveyReport.Name(g.Verdict == StatedVerdict.TooSmall ? g.Verdict : r.Verdict))
        : null;
}

/// <summary>How many photos a study needs.</summary>
/// <param name="Wanted">Half-width of the gauge's 95 % interval, as a part of its standard deviation.</param>
/// <param name="Best">The fewest photos that reach it; null when none do.</param>
/// <param name="Sizes">For each number of people or phones the fewest photos, or the most that were tried.</param>
public sealed record StudyPlanReport(double Wanted, PlannedStudyReport? Best, IReadOnlyList<PlannedStudyReport> Sizes)
{
    public static StudyPlanReport From(StudyPlan plan) => new(plan.Wanted, plan.Best is { } best ? PlannedStudyReport.From(best) : null, [.. plan.Rows.Select(PlannedStudyReport.From)]);
}

/// <param name="Factors">The interval to be expected, as factors of the standard deviation.</param>
public sealed record PlannedStudyReport(int Operators, int Repeats, int Photos, int Marks, double[] Factors)
{
    internal static PlannedStudyReport From(PlannedStudy s) => new(s.Size.Operators, s.Size.Repeats, s.Photos, s.Size.Parts, StudyComponentReport.Ends(s.Factors));
}
