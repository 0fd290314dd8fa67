using CsCheck;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Survey;

public sealed class SurveyFitTests
{
    [Fact]
    public void Coefficients_of_exact_marks_are_those_of_the_surface() =>
        Gen.Double[-2, 2].Array[5].Sample(c =>
        {
            SurveyFit fit = Fit(new(c[0], c[1], c[2], c[3], BedCorner.FarRight, c[4]), Surveys.Nine);
            return Near(c[0], fit.Coefficient(SurveyComponent.Sideways, SurveyTerm.OverGantryTravel).Value)
                && Near(c[1], fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.OverGantryTravel).Value)
                && Near(c[2], fit.Coefficient(SurveyComponent.Sideways, SurveyTerm.OverHeadTravel).Value)
                && Near(c[3], fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.OverHeadTravel).Value)
                && Near(c[4], fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.Twist).Value)
                && Near(0, fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.HeadBow).Value)
                && fit.At(Some.Mm(250), Some.Mm(100)).Point.DistanceTo(new Surveys(c[0], c[1], c[2], c[3], BedCorner.FarRight, c[4]).At(0.5, 0.25)) < 1e-9;
        });

    /// <summary>Four corners of equal scatter σ: the twist v(1,1) − v(1,0) − v(0,1) + v(0,0) has 2σ, a walk along an edge √2·σ.</summary>
    [Fact]
    public void Uncertainties_of_four_corners_are_those_of_sums_of_four_marks()
    {
        SurveyFit fit = Fit(new(), Surveys.Corners);
        Assert.Equal(4, fit.Terms.Count);
        Assert.Equal(0.1, fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.Twist).Uncertainty, 1e-12);
        Assert.Equal(0.05 * Math.Sqrt(2), fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.OverHeadTravel).Uncertainty, 1e-12);
        Assert.Equal(0.05, Math.Sqrt(fit.At(BedCorner.FarLeft).Covariance.Vv), 1e-12);
        Assert.Equal((0, null), (fit.Quality.DegreesOfFreedom, fit.Quality.Probability));
    }

    /// <summary>Two-sided normal tails: 1.96 standard uncertainties leave 5 %, none leave all.</summary>
    [Fact]
    public void A_term_of_1_96_standard_uncertainties_has_a_probability_of_5_percent()
    {
        SurveyFit fit = Fit(new(Corner: BedCorner.FarRight, Height: 0.1959964), Surveys.Corners);
        Assert.Equal(0.05, fit.Probability(SurveyComponent.Vertical, SurveyTerm.Twist), 1e-6);
        Assert.Equal(1, fit.Probability(SurveyComponent.Sideways, SurveyTerm.Twist), 1e-6);
    }

    [Fact]
    public void More_marks_of_known_scatter_never_raise_the_uncertainty_of_a_term() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((s, t) =>
        {
            SurveyFit four = Fit(new(), Surveys.Corners), five = Fit(new(), [.. Surveys.Corners, (s, t)]);
            // A fifth term is taken up only when a degree of freedom is left besides.
            return five.Terms.Count == 4 && five.Terms.All(term =>
                five.Coefficient(SurveyComponent.Vertical, term).Uncertainty <= four.Coefficient(SurveyComponent.Vertical, term).Uncertainty + 1e-12);
        });

    [Fact]
    public void A_bend_of_the_head_rail_shows_in_its_own_term_and_not_in_the_others()
    {
        SurveyMark[] marks =
        [
            .. new Surveys().Marks(Surveys.Nine, 0.02).Select(m => m with
            {
                Mark = m.Mark with { Point = m.Mark.Point + new CardVector(0, m.X == Some.Mm(250) ? 0.3 : 0) },
            }),
        ];
        SurveyDiagnosis diagnosis = CornerSurvey.Diagnose(Surveys.Bed, marks).ValueOrThrow();
        Assert.Equal(6, diagnosis.Fit!.Terms.Count);
        Assert.Equal(-1.2, diagnosis.Fit.Coefficient(SurveyComponent.Vertical, SurveyTerm.HeadBow).Value, 1e-9);
        Assert.Empty(diagnosis.Findings);
        Assert.Equal("railBent", Assert.Single(diagnosis.Warnings).Code);
    }

    [Fact]
    public void The_spread_over_the_bed_is_the_longest_of_the_differences()
    {
        IReadOnlyList<MeasuredVector> differences = Fit(new(0.3, 0, 0, 0.4), Surveys.Corners).Differences();
        Assert.Equal(6, differences.Count);
        Assert.Equal(0.5, differences.Max(d => d.Vector.Magnitude), 1e-12);
        Assert.Equal(36, Fit(new(), Surveys.Nine).Differences().Count);
    }

    private static SurveyFit Fit(Surveys survey, (double S, double T)[] places) =>
        CornerSurvey.Diagnose(Surveys.Bed, survey.Marks(places, 0.05)).ValueOrThrow().Fit!;

    private static bool Near(double expected, double value) => Math.Abs(expected - value) < 1e-9;
}
