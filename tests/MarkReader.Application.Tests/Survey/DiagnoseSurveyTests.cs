using System.Text.Json;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Reports;
using MarkReader.Application.Shims;
using MarkReader.Application.Survey;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Survey;

public sealed class DiagnoseSurveyTests
{
    [Fact]
    public void A_high_corner_is_shimmed_with_washers_of_the_stock()
    {
        SurveyAnswer answer = Run(Corners(0, 0, 0, 0.9), stock: "0.5,0.4x1");
        Assert.Equal(BedCorner.FarRight, Assert.IsType<ShimCorner>(answer.Diagnosis.Cure).Corner);
        Assert.Equal(0.9, answer.Stack!.Stack.Height.Millimetres, 1e-9);
        Assert.Equal(Verdict.Outside, answer.Spread!.Advice.Verdict.Verdict);
        Assert.Equal(0.9, answer.Spread.Greatest.Millimetres, 1e-9);
        Assert.StartsWith("The frame is twisted: at the far right corner the mark stands 0.90 mm too high", SurveyWords.Diagnosis(answer.Diagnosis), StringComparison.Ordinal);
        Assert.StartsWith("Put shims of 0.90 mm under the far right corner", SurveyWords.Cure(answer.Diagnosis), StringComparison.Ordinal);
    }

    [Fact]
    public void A_low_corner_asks_for_leg_2_at_its_end_of_the_travel_and_needs_no_washers()
    {
        SurveyAnswer answer = Run(Corners(0, 0, 0, -0.9));
        Assert.Equal(new RealignLeg(2, GantryEnd.Far), answer.Diagnosis.Cure);
        Assert.Null(answer.Stack);
        Assert.Contains("gantry at the far end", SurveyWords.Cure(answer.Diagnosis), StringComparison.Ordinal);
        Assert.Contains("near right corner then stands too high", SurveyWords.Cure(answer.Diagnosis), StringComparison.Ordinal);
    }

    [Fact]
    public void A_walk_along_the_gantry_is_leg_1()
    {
        SurveyAnswer answer = Run(Corners(0, 0, 0.8, 0.8));
        Assert.Contains("A slope is left in leg 1: over the gantry's travel the mark walks by u 0.00 mm and v +0.80 mm (slope u 0.00 mrad, v +2.00 mrad).", SurveyWords.Diagnosis(answer.Diagnosis), StringComparison.Ordinal);
        Assert.StartsWith("Align leg 1 again", SurveyWords.Cure(answer.Diagnosis), StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_that_agree_have_nothing_significant_and_lie_within()
    {
        SurveyAnswer answer = Run(Corners(0.02, 0, 0.01, -0.02));
        Assert.StartsWith("Nothing is significant", SurveyWords.Diagnosis(answer.Diagnosis), StringComparison.Ordinal);
        Assert.Equal("", SurveyWords.Cure(answer.Diagnosis));
        Assert.Equal(Verdict.Within, answer.Spread!.Advice.Verdict.Verdict);
        Assert.Equal([SurveyFault.LegOneSlope, SurveyFault.LegTwoSlope, SurveyFault.Twist], answer.Diagnosis.Tests.Select(t => t.Fault));
        Assert.DoesNotContain(answer.Diagnosis.Tests, t => t.IsSignificant);
    }

    [Fact]
    public void Tests_and_findings_agree_on_what_is_significant()
    {
        SurveyDiagnosis diagnosis = Run(Corners(0, 0.6, 0, 1.4)).Diagnosis;
        Assert.Equal(2, diagnosis.Findings.Count);
        Assert.Equal(
            diagnosis.Findings.Select(f => (f.Fault, f.Probability)).OrderBy(f => f.Fault),
            diagnosis.Tests.Where(t => t.IsSignificant).Select(t => (t.Fault, t.Probability)));
    }

    [Fact]
    public void Three_marks_are_not_enough_and_the_missing_corner_is_named()
    {
        SurveyAnswer answer = Run(Corners(0, 0, 0, 0)[..3]);
        Assert.Null(answer.Spread);
        Assert.Equal((Mm(500), Mm(400)), answer.Diagnosis.NextPlace);
        Assert.StartsWith("There are not enough data", SurveyWords.Diagnosis(answer.Diagnosis), StringComparison.Ordinal);
        Assert.Equal(new SurveyPlaceReport(500, 400), SurveyReport.From(answer).Next);
    }

    [Fact]
    public void Travels_are_those_of_the_marks_unless_given()
    {
        SurveyAnswer without = DiagnoseSurvey.Run(new(new(Corners(0, 0, 0, 0)))).ValueOrThrow();
        Assert.False(without.BedIsGiven);
        Assert.Equal(new Bed(Mm(500), Mm(400)), without.Bed);
        Assert.Equal(new Bed(Mm(600), Mm(500)), DiagnoseSurvey.Run(new(new(Corners(0, 0, 0, 0)), new(600, 500))).ValueOrThrow().Bed);
    }

    [Fact]
    public void Json_has_terms_tests_findings_cure_and_verdict()
    {
        using JsonDocument document = JsonDocument.Parse(ReportJson.Write(SurveyReport.From(Run(Corners(0, 0, 0, 0.9)))));
        JsonElement root = document.RootElement;
        Assert.Equal(
            ["bed", "marks", "terms", "tests", "findings", "diagnosis", "cure", "expected", "spread", "next", "warnings"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal(["place", "overHeadTravel", "overGantryTravel", "twist"], root.GetProperty("terms").EnumerateArray().Select(t => t.GetProperty("term").GetString()));
        Assert.Equal(0.9, root.GetProperty("terms")[3].GetProperty("v").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(["legOneSlope", "legTwoSlope", "twist"], root.GetProperty("tests").EnumerateArray().Select(t => t.GetProperty("fault").GetString()));
        JsonElement cure = root.GetProperty("cure");
        Assert.Equal(["kind", "reason", "corner", "height", "uncertainty", "stack"], cure.EnumerateObject().Select(p => p.Name));
        Assert.Equal(("shim", "farRight"), (cure.GetProperty("kind").GetString(), cure.GetProperty("corner").GetString()));
        Assert.Equal(4, root.GetProperty("expected").GetArrayLength());
        Assert.Equal("outside", root.GetProperty("spread").GetProperty("verdict").GetString());
    }

    /// <summary>A bow of the head's rail, as a lift of the marks in the middle: reported is how far the middle lies off.</summary>
    [Fact]
    public void A_bow_is_reported_as_the_middle_s_distance_from_the_line_between_the_ends()
    {
        SurveyMark[] marks = [.. from x in new[] { 0.0, 250, 500 } from y in new[] { 0.0, 200, 400 } select Mark(x, y, x == 250 ? 0.3 : 0)];
        SurveyTermReport bow = SurveyReport.From(Run(marks)).Terms.Single(t => t.Term == "headBow");
        Assert.Equal(0.3, bow.V.Value, 1e-9);
    }

    [Theory]
    [InlineData("SURVEY_TOLERANCE_INVALID", 0)]
    [InlineData("SURVEY_TOLERANCE_INVALID", double.NaN)]
    public void A_tolerance_that_makes_no_sense_is_refused(string code, double tolerance)
    {
        Assert.False(DiagnoseSurvey.Run(new(new(Corners(0, 0, 0, 0)), null, tolerance)).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Fact]
    public void Marks_at_one_end_of_a_travel_do_not_show_the_bed()
    {
        Assert.False(DiagnoseSurvey.Run(new(new([Mark(0, 0, 0), Mark(0, 400, 0)]))).TryGet(out _, out Failure? failure));
        Assert.Equal("BED_INVALID", failure.Code.Name);
        Assert.Equal("give both full travels in mm", failure.Hint);
    }

    private static SurveyAnswer Run(SurveyMark[] marks, string? stock = null) =>
        DiagnoseSurvey.Run(new(new(marks), new(500, 400), Stock: stock is null ? null : StockText.Read(stock).ValueOrThrow())).ValueOrThrow();

    private static SurveyMark[] Corners(double nearLeft, double nearRight, double farLeft, double farRight) =>
        [Mark(0, 0, nearLeft), Mark(500, 0, nearRight), Mark(0, 400, farLeft), Mark(500, 400, farRight)];

    private static SurveyMark Mark(double x, double y, double v) => new(Mm(x), Mm(y), new(new(1.2, v), Covariance2.Isotropic(0.05)));

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
