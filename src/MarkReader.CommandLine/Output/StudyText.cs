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
            [StudyWords.Claim(answer), StudyWords.Result(answer), .. answer.Axes.Select(StudyWords.Stated).OfType<string>()],
            .. answer.Axes.Select(axis => Components(axis, answer)),
            .. details ? answer.Axes.Select(Anova) : [],
            [.. StudyWords.Notes(answer), StudyWords.Plan(answer.Plan)],
        ];
        return string.Join(Environment.NewLine + Environment.NewLine, parts.Where(p => p.Count > 0).Select(p => string.Join(Environment.NewLine, p)));
    }

    public static string Of(StudyPlan plan)
    {
        Table table = new("people or phones", "photos each", "photos", "95 % interval of the gauge", "reached");
        foreach (PlannedStudy row in plan.Rows)
        {
            table.Add(
                Words.Fixed(row.Size.Operators, 0), Words.Fixed(row.Size.Repeats, 0), Words.Fixed(row.Photos, 0),
                $"{Words.Fixed(row.Factors.Low, 2)} to {Words.Fixed(row.Factors.High, 2)} times", row.HalfWidth <= plan.Wanted ? "yes" : "no");
        }

        return string.Join(
            Environment.NewLine,
            StudyWords.Plan(plan), "", table.ToString(), "",
            "Reckoned with half of a photo's scatter common to its marks and a quarter of the whole between people (a guess). A study that was done plans the next with what it found.");
    }

    private static IReadOnlyList<string> Components(StudyAxis axis, StudyAnswer answer)
    {
        Table table = new($"along {axis.Axis}", "sd/mm", "95 %", "variance/%", "study/%", "tolerance/%");
        foreach (StudyPart part in StudyWords.Order(axis.Study.Options.Photos))
        {
            VarianceComponent c = axis.Study[part];
            table.Add(
                StudyWords.Name(part, axis.Study.Options.Photos), StudyWords.Mm(c.StandardDeviation), $"{StudyWords.Mm(c.DeviationInterval.Low)} to {StudyWords.Mm(c.DeviationInterval.High)}",
                Words.Fixed(axis.Study.Contribution(part), 2), Words.Fixed(axis.Study.StudyVariation(part), 2),
                part == StudyPart.Parts ? "-" : Words.Fixed(axis.Study.OfTolerance(part, StudyWords.FullWidth(answer)).Percent, 1));
        }

        return [table.ToString(), .. axis.Study.Categories is { } n ? [$"distinct categories: {n}"] : Array.Empty<string>()];
    }

    private static IReadOnlyList<string> Anova(StudyAxis axis)
    {
        Table table = new($"anova, {axis.Axis}", "sum of squares", "dof", "mean square", "F", "p", "against");
        foreach (AnovaRow row in axis.Study.Rows)
        {
            table.Add(
                StudyWords.Name(row.Source), Words.Fixed(row.SumOfSquares, 6), Words.Fixed(row.Dof, 0), Words.Fixed(row.MeanSquare, 8),
                row.Test is { } f ? Words.Fixed(f.F, 3) : "-", row.Test is { } p ? Words.Probability(p.Probability) : "-",
                row.Test is { } t ? string.Join(" + ", t.Against.Select(StudyWords.Name)) : "-");
        }

        return [table.ToString()];
    }
}
