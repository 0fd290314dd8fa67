using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Reports;
using MarkReader.Application.Survey;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A corner survey for people.</summary>
internal static class SurveyText
{
    public static string Of(SurveyAnswer answer)
    {
        SurveyDiagnosis diagnosis = answer.Diagnosis;
        IReadOnlyList<string>[] parts =
        [
            [Say("survey.marksTravelsHeadGantry", answer.Marks, Mm(answer.Bed.X), Mm(answer.Bed.Y), answer.BedIsGiven ? "" : Get("survey.asFarAsThe"))],
            diagnosis.Fit is null ? [] : Terms(SurveyReport.From(answer)),
            [Get("survey.diagnosis") + SurveyWords.Diagnosis(diagnosis), .. Cure(answer), .. Place(diagnosis)],
            [.. Spread(answer), .. Words.Of(diagnosis.Warnings)],
            Expected(answer),
            [Words.Cautions],
        ];
        return string.Join(Environment.NewLine + Environment.NewLine, parts.Where(p => p.Count > 0).Select(p => string.Join(Environment.NewLine, p)));
    }

    private static IReadOnlyList<string> Terms(SurveyReport report)
    {
        Table terms = new(Get("survey.term"), "u/mm", Get("survey.uncertainty"), "p", "v/mm", Get("survey.uncertainty"), "p");
        foreach (SurveyTermReport term in report.Terms)
            terms.Add([Term(term.Term), .. Cells(term.U, term.Term), .. Cells(term.V, term.Term)]);
        Table tests = new(Get("survey.test"), Get("survey.effectMm"), "p", Get("survey.level"), Get("survey.significant"));
        foreach (SurveyTestReport test in report.Tests)
            tests.Add(Fault(test.Fault), Words.Fixed(test.Effect, 3), Words.Probability(test.Probability), Words.Fixed(test.Level, 3), test.Significant ? Get("yes") : Get("no"));
        return
        [
            terms.ToString(),
            Get("survey.overTheFullTravels"),
            "",
            tests.ToString(),
            Get("survey.significantWhenPIs"),
        ];
    }

    private static string Term(string name) => name switch
    {
        "place" => Get("survey.b0NearLeftCorner"),
        "overHeadTravel" => Get("survey.bxAlongTheHead"),
        "overGantryTravel" => Get("survey.byAlongTheGantry"),
        "twist" => Get("survey.bxyTwistInV"),
        "headBow" => Get("survey.bowOfTheHead"),
        "gantryBow" => Get("survey.bowOfTheGantry"),
        _ => name,
    };

    private static string Fault(string name) => name switch
    {
        "legOneSlope" => Get("survey.slopeOfLeg1"),
        "legTwoSlope" => Get("survey.slopeOfLeg2"),
        "twist" => Get("survey.twistBxyOfV"),
        _ => name,
    };

    private static string[] Cells(SurveyCoefficientReport c, string term) =>
        [Words.Place(c.Value), Words.Fixed(c.Uncertainty, 3), term == "place" ? "-" : Words.Probability(c.Probability)];

    private static IEnumerable<string> Cure(SurveyAnswer answer)
    {
        if (answer.Diagnosis.Cure is null)
            yield break;
        yield return Get("survey.cure") + SurveyWords.Cure(answer.Diagnosis);
        if (answer.Spread?.Advice.Verdict.Verdict == Verdict.Within)
            yield return Get("survey.theSpreadIsWithin");
        foreach (string line in answer.Stack is { } stack ? ShimsText.Lines(stack) : [])
            yield return line;
    }

    private static IEnumerable<string> Place(SurveyDiagnosis diagnosis)
    {
        if (diagnosis.NextPlace is { } place)
            yield return Say("survey.nextFireAPulse", Mm(place.X), Mm(place.Y));
    }

    private static IReadOnlyList<string> Expected(SurveyAnswer answer)
    {
        if (answer.Diagnosis.Expected.Count == 0)
            return [];
        Table table = new(Get("survey.expectedAfter"), "x/mm", "y/mm", "u/mm", "v/mm", Get("survey.regionMm"));
        foreach (BedCorner corner in BedCorners.All)
        {
            (MeasuredPoint mark, (Length x, Length y)) = (answer.Diagnosis.Expected[corner], answer.Bed.Place(corner));
            table.Add(SurveyWords.Corner(corner), Mm(x), Mm(y), Words.Place(mark.Point.U), Words.Place(mark.Point.V), Words.Region95(mark.Covariance));
        }

        return [table.ToString(), Words.Region + (answer.Stack is null ? "" : Get("survey.forShimsOfExactly"))];
    }

    private static IEnumerable<string> Spread(SurveyAnswer answer)
    {
        if (answer.Spread is not { } spread)
            yield break;
        SpreadAdvice advice = spread.Advice;
        string verdict = Words.Of(advice.Verdict);
        yield return Say("survey.spreadOverTheBed", Words.Fixed(spread.Greatest.Millimetres, 2), Words.Fixed(spread.Tolerance.Millimetres, 2), verdict, Probability(advice.Verdict.Probability));
        if (advice.Next is { } corner)
            yield return Say("survey.aSecondPulseAt", SurveyWords.Corner(corner), Mm(answer.Bed.Place(corner).X), Mm(answer.Bed.Place(corner).Y));
    }

    // A lower bound: near zero it says nothing.
    private static string Probability(double p) => p switch
    {
        > 0.999 => Get("survey.probabilityOfConformingMore"),
        >= 0.001 => Say("survey.probabilityOfConformingAt", Words.Fixed(100 * p, 1)),
        _ => "",
    };

    private static string Mm(Length length) => length.Millimetres.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
}
