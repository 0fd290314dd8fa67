using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Reports;
using MarkReader.Application.Survey;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>A corner survey for people.</summary>
internal static class SurveyText
{
    public static string Of(SurveyAnswer answer)
    {
        SurveyDiagnosis diagnosis = answer.Diagnosis;
        IReadOnlyList<string>[] parts =
        [
            [$"{answer.Marks} marks; travels: head {Mm(answer.Bed.X)}, gantry {Mm(answer.Bed.Y)} mm{(answer.BedIsGiven ? "" : ", as far as the marks reach")}"],
            diagnosis.Fit is null ? [] : Terms(SurveyReport.From(answer)),
            ["diagnosis: " + SurveyWords.Diagnosis(diagnosis), .. Cure(answer), .. Place(diagnosis)],
            [.. Spread(answer), .. Words.Of(diagnosis.Warnings)],
            Expected(answer),
            [Words.Cautions],
        ];
        return string.Join(Environment.NewLine + Environment.NewLine, parts.Where(p => p.Count > 0).Select(p => string.Join(Environment.NewLine, p)));
    }

    private static IReadOnlyList<string> Terms(SurveyReport report)
    {
        Table terms = new("term", "u/mm", "uncertainty", "p", "v/mm", "uncertainty", "p");
        foreach (SurveyTermReport term in report.Terms)
            terms.Add([Term(term.Term), .. Cells(term.U, term.Term), .. Cells(term.V, term.Term)]);
        Table tests = new("test", "effect/mm", "p", "level", "significant");
        foreach (SurveyTestReport test in report.Tests)
            tests.Add(Fault(test.Fault), Words.Fixed(test.Effect, 3), Words.Probability(test.Probability), Words.Fixed(test.Level, 3), test.Significant ? "yes" : "no");
        return
        [
            terms.ToString(),
            "over the full travels; uncertainty: standard uncertainty, mm; p: probability of a value as large by the marks' errors alone",
            "",
            tests.ToString(),
            "significant when p is at most the level; together the levels find a fault in 5 % of machines that have none",
        ];
    }

    private static string Term(string name) => name switch
    {
        "place" => "b0: near left corner",
        "overHeadTravel" => "bx: along the head's travel",
        "overGantryTravel" => "by: along the gantry's travel",
        "twist" => "bxy: twist, in v",
        "headBow" => "bow of the head's rail",
        "gantryBow" => "bow of the gantry's rail",
        _ => name,
    };

    private static string Fault(string name) => name switch
    {
        "legOneSlope" => "slope of leg 1 (by)",
        "legTwoSlope" => "slope of leg 2 (bx)",
        "twist" => "twist (bxy of v)",
        _ => name,
    };

    private static string[] Cells(SurveyCoefficientReport c, string term) =>
        [Words.Place(c.Value), Words.Fixed(c.Uncertainty, 3), term == "place" ? "-" : Words.Probability(c.Probability)];

    private static IEnumerable<string> Cure(SurveyAnswer answer)
    {
        if (answer.Diagnosis.Cure is null)
            yield break;
        yield return "cure: " + SurveyWords.Cure(answer.Diagnosis);
        if (answer.Spread?.Advice.Verdict.Verdict == Verdict.Within)
            yield return "The spread is within the tolerance all the same: the cure can wait.";
        foreach (string line in answer.Stack is { } stack ? ShimsText.Lines(stack) : [])
            yield return line;
    }

    private static IEnumerable<string> Place(SurveyDiagnosis diagnosis)
    {
        if (diagnosis.NextPlace is { } place)
            yield return $"next: fire a pulse with the head at x {Mm(place.X)}, y {Mm(place.Y)} mm.";
    }

    private static IReadOnlyList<string> Expected(SurveyAnswer answer)
    {
        if (answer.Diagnosis.Expected.Count == 0)
            return [];
        Table table = new("expected after", "x/mm", "y/mm", "u/mm", "v/mm", "region/mm");
        foreach (BedCorner corner in BedCorners.All)
        {
            (MeasuredPoint mark, (Length x, Length y)) = (answer.Diagnosis.Expected[corner], answer.Bed.Place(corner));
            table.Add(SurveyWords.Corner(corner), Mm(x), Mm(y), Words.Place(mark.Point.U), Words.Place(mark.Point.V), Words.Region95(mark.Covariance));
        }

        return [table.ToString(), Words.Region + (answer.Stack is null ? "" : ", for shims of exactly the wanted height")];
    }

    private static IEnumerable<string> Spread(SurveyAnswer answer)
    {
        if (answer.Spread is not { } spread)
            yield break;
        SpreadAdvice advice = spread.Advice;
        string verdict = advice.Verdict.Verdict.ToString().ToLowerInvariant();
        yield return $"spread over the bed: the fitted marks lie up to {Words.Fixed(spread.Greatest.Millimetres, 2)} mm apart, tolerance {Words.Fixed(spread.Tolerance.Millimetres, 2)} mm: {verdict}{Probability(advice.Verdict.Probability)}";
        if (advice.Next is { } corner)
            yield return $"A second pulse at the {SurveyWords.Corner(corner)} corner (x {Mm(answer.Bed.Place(corner).X)}, y {Mm(answer.Bed.Place(corner).Y)} mm) helps most to decide it.";
    }

    // A lower bound: near zero it says nothing.
    private static string Probability(double p) => p switch
    {
        > 0.999 => " (probability of conforming more than 99.9 %)",
        >= 0.001 => $" (probability of conforming at least {Words.Fixed(100 * p, 1)} %)",
        _ => "",
    };

    private static string Mm(Length length) => length.Millimetres.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
}
