using MarkReader.Application.Studies;
using MarkReader.Metrology.Studies;

namespace MarkReader.CommandLine.Output;

/// <summary>A repeatability and reproducibility study for people.</summary>
internal static class StudyText
{
    public static string Of(StudyAnswer answer, bool details)
    {
        IReadOnlyList<string>[] parts =
        [
            [StudyWords.Extent(answer)],
            [$"{StudyWords.Word(answer)}. {StudyWords.Claim(answer)}", StudyWords.Result(answer), .. answer.Axes.Select(a => StudyWords.Stated(a)).Append(Suspect(answer)).OfType<string>()],
            .. answer.Axes.Select(axis => Components(axis, answer)),
            [OutputTexts.Get("studyText.gaugePartGaugeVarianceTolerance")],
            .. details ? answer.Axes.Select(Anova) : [],
            [.. StudyWords.Notes(answer), StudyWords.Plan(answer.Plan)],
        ];
        return string.Join(Environment.NewLine + Environment.NewLine, parts.Where(p => p.Count > 0).Select(p => string.Join(Environment.NewLine, p)));
    }

    private static string? Suspect(StudyAnswer answer) => StudyWords.Suspect(answer) is { } suspect ? OutputTexts.Say("study.suspect", suspect) : null;

    public static string Of(StudyPlan plan)
    {
        Table table = new(OutputTexts.Get("studyText.peopleOrPhones"), OutputTexts.Get("studyText.photosEach"), OutputTexts.Get("studyText.photos"), OutputTexts.Get("studyText.intervalGauge"), OutputTexts.Get("studyText.reached"));
        foreach (PlannedStudy row in plan.Rows)
        {
            table.Add(
                Words.Fixed(row.Size.Operators, 0), Words.Fixed(row.Size.Repeats, 0), Words.Fixed(row.Photos, 0),
                OutputTexts.Say("studyText.times", Words.Fixed(row.Factors.Low, 2), Words.Fixed(row.Factors.High, 2)), row.HalfWidth <= plan.Wanted ? OutputTexts.Get("studyText.yes") : OutputTexts.Get("studyText.no"));
        }

        return string.Join(
            Environment.NewLine,
            StudyWords.Plan(plan), "", table.ToString(), "",
            OutputTexts.Get("studyText.reckonedWithHalfPhotoScatter"));
    }

    private static IReadOnlyList<string> Components(StudyAxis axis, StudyAnswer answer)
    {
        GaugeStudy study = axis.Study;
        Table table = new(OutputTexts.Say("studyText.along", axis.Axis), OutputTexts.Get("studyText.sdMm"), "95 %", OutputTexts.Get("studyText.gauge"), OutputTexts.Get("studyText.tolerance"));
        foreach (StudyPart part in StudyWords.Order(study.Options.Photos).Where(p => p != StudyPart.Parts))
        {
            VarianceComponent c = study[part];
            table.Add(
                StudyWords.Name(part, study.Options.Photos), StudyWords.Mm(c.StandardDeviation), OutputTexts.Say("studyText.to", StudyWords.Mm(c.DeviationInterval.Low), StudyWords.Mm(c.DeviationInterval.High)),
                StudyWords.Share(study, part) is { } share ? Words.Fixed(share, 1) : "-", Words.Fixed(study.OfTolerance(part, StudyWords.FullWidth(answer)).Percent, 1));
        }

        return [table.ToString()];
    }

    private static IReadOnlyList<string> Anova(StudyAxis axis)
    {
        Table table = new(OutputTexts.Say("studyText.anova", axis.Axis), OutputTexts.Get("studyText.sumSquares"), OutputTexts.Get("studyText.dof"), OutputTexts.Get("studyText.meanSquare"), "F", "p", OutputTexts.Get("studyText.against"));
        foreach (AnovaRow row in axis.Study.Rows)
        {
            table.Add(
                StudyWords.Name(row.Source), Words.Fixed(row.SumOfSquares, 6), Words.Fixed(row.Dof, 0), Words.Fixed(row.MeanSquare, 8),
                row.Test is { } f ? Words.Fixed(f.F, 3) : "-", row.Test is { } p ? Words.Probability(p.Probability) : "-",
                row.Test is { } t ? string.Join(" + ", t.Against.Select(StudyWords.Name)) : "-");
        }

        Table variation = new(OutputTexts.Say("studyText.allReadings", axis.Axis), OutputTexts.Get("studyText.sdMm"), OutputTexts.Get("studyText.variance"), OutputTexts.Get("studyText.studyVariation"));
        foreach (StudyPart part in (StudyPart[])[StudyPart.Repeatability, StudyPart.Reproducibility, StudyPart.Gauge, StudyPart.Parts])
            variation.Add(StudyWords.Name(part, axis.Study.Options.Photos), StudyWords.Mm(axis.Study[part].StandardDeviation), Words.Fixed(axis.Study.Contribution(part), 2), Words.Fixed(axis.Study.StudyVariation(part), 2));
        string categories = axis.Study.Categories is { } n ? Words.Fixed(n, 0) : "-";
        return [table.ToString(), "", variation.ToString(), OutputTexts.Say("studyText.distinctCategoriesTheyAndTwo", categories)];
    }
}
