using System.Text.Json;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Survey;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a corner survey: mm, mrad, mm²; uncertainties are standard uncertainties.</summary>
/// <param name="Marks">Number of marks.</param>
/// <param name="Terms">Empty when the places of the marks do not determine them.</param>
/// <param name="Tests">Of leg 1, leg 2 and twist.</param>
/// <param name="Findings">What is significant, the largest effect first.</param>
/// <param name="Diagnosis">The same in sentences.</param>
/// <param name="Cure">For the first finding; null when there is none.</param>
/// <param name="Expected">The marks at the corners after the cure; empty without one.</param>
/// <param name="Spread">The spread over the bed; null without terms.</param>
/// <param name="Next">Where to fire when the data are not enough, or when the spread is undecided; else null.</param>
public sealed record SurveyReport(
    SurveyBedReport Bed,
    int Marks,
    IReadOnlyList<SurveyTermReport> Terms,
    IReadOnlyList<SurveyTestReport> Tests,
    IReadOnlyList<SurveyFindingReport> Findings,
    string Diagnosis,
    SurveyCureReport? Cure,
    IReadOnlyList<SurveyCornerReport> Expected,
    SurveySpreadReport? Spread,
    SurveyPlaceReport? Next,
    IReadOnlyList<WarningReport> Warnings)
{
    public static SurveyReport From(SurveyAnswer answer)
    {
        SurveyDiagnosis diagnosis = answer.Diagnosis;
        return new(
            new(answer.Bed.X.Millimetres, answer.Bed.Y.Millimetres),
            answer.Marks,
            diagnosis.Fit is { } fit ? [.. fit.Terms.Select(term => SurveyTermReport.From(fit, term))] : [],
            [.. diagnosis.Tests.Select(t => new SurveyTestReport(Name(t.Fault), t.Effect, t.Probability, t.Level, t.IsSignificant))],
            [.. diagnosis.Findings.Select(SurveyFindingReport.From)],
            SurveyWords.Diagnosis(diagnosis),
            SurveyCureReport.From(answer),
            [.. BedCorners.All.Where(diagnosis.Expected.ContainsKey).Select(corner => SurveyCornerReport.From(answer.Bed, corner, diagnosis.Expected[corner]))],
            answer.Spread is { } spread ? SurveySpreadReport.From(spread) : null,
            SurveyPlaceReport.From(answer),
            WarningReport.From(diagnosis.Warnings));
    }

    public static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}

/// <summary>The full travels of head (x) and gantry (y).</summary>
public sealed record SurveyBedReport(double X, double Y);

/// <summary>A term of both components, over the full travels.</summary>
/// <param name="Term">place, overHeadTravel, overGantryTravel, twist, headBow, gantryBow.</param>
public sealed record SurveyTermReport(string Term, SurveyCoefficientReport U, SurveyCoefficientReport V)
{
    internal static SurveyTermReport From(SurveyFit fit, SurveyTerm term) =>
        new(SurveyReport.Name(term), SurveyCoefficientReport.From(fit, SurveyComponent.Sideways, term), SurveyCoefficientReport.From(fit, SurveyComponent.Vertical, term));
}

/// <summary>A coefficient, mm; of a bow, how far the middle lies off the line between the ends.</summary>
/// <param name="Probability">Of a value at least as large by the marks' errors alone.</param>
public sealed record SurveyCoefficientReport(double Value, double Uncertainty, double Probability)
{
    internal static SurveyCoefficientReport From(SurveyFit fit, SurveyComponent component, SurveyTerm term)
    {
        // The model's s(s − 1) is −1/4 in the middle.
        double part = term is SurveyTerm.HeadBow or SurveyTerm.GantryBow ? -0.25 : 1;
        (double value, double uncertainty) = (fit.Coefficient(component, term).Value, fit.Coefficient(component, term).Uncertainty);
        return new(part * value, Math.Abs(part) * uncertainty, fit.Probability(component, term));
    }
}

/// <summary>A test: the fault is significant when the probability is at most the level.</summary>
/// <param name="Fault">legOneSlope, legTwoSlope, twist.</param>
/// <param name="Effect">On the marks over the bed, mm.</param>
public sealed record SurveyTestReport(string Fault, double Effect, double Probability, double Level, bool Significant);

/// <summary>A corner and the mark to expect there.</summary>
public sealed record SurveyCornerReport(string Corner, double X, double Y, double U, double V, double[][] Covariance)
{
    internal static SurveyCornerReport From(Bed bed, BedCorner corner, Quantities.MeasuredPoint mark)
    {
        (Quantities.Length x, Quantities.Length y) = bed.Place(corner);
        return new(SurveyReport.Name(corner), x.Millimetres, y.Millimetres, mark.Point.U, mark.Point.V, MarkReport.Matrix(mark.Covariance));
    }
}

/// <summary>The spread over the bed against its tolerance.</summary>
/// <param name="Greatest">The greatest distance of two fitted marks.</param>
/// <param name="Verdict">within, outside, undecided.</param>
/// <param name="Probability">Lower bound of the conformance probability.</param>
public sealed record SurveySpreadReport(double Greatest, double Tolerance, string Verdict, double Probability)
{
    internal static SurveySpreadReport From(SurveySpread spread) => new(
        spread.Greatest.Millimetres, spread.Tolerance.Millimetres, SurveyReport.Name(spread.Advice.Verdict.Verdict), spread.Advice.Verdict.Probability);
}

/// <summary>Where the head should stand for the next pulse.</summary>
public sealed record SurveyPlaceReport(double X, double Y)
{
    internal static SurveyPlaceReport? From(SurveyAnswer answer)
    {
        if (answer.Diagnosis.NextPlace is { } place)
            return new(place.X.Millimetres, place.Y.Millimetres);
        if (answer.Spread?.Advice.Next is not { } corner)
            return null;
        (Quantities.Length x, Quantities.Length y) = answer.Bed.Place(corner);
        return new(x.Millimetres, y.Millimetres);
    }
}
