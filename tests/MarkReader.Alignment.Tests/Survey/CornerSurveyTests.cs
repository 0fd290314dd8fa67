using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Survey;

public sealed class CornerSurveyTests
{
    [Theory]
    [InlineData(BedCorner.NearLeft, 0.6)]
    [InlineData(BedCorner.NearRight, 0.6)]
    [InlineData(BedCorner.FarLeft, 0.6)]
    [InlineData(BedCorner.FarRight, 0.6)]
    [InlineData(BedCorner.NearLeft, -0.6)]
    [InlineData(BedCorner.NearRight, -0.6)]
    [InlineData(BedCorner.FarLeft, -0.6)]
    [InlineData(BedCorner.FarRight, -0.6)]
    public void The_corner_that_stands_out_is_named_and_a_high_mark_is_shimmed(BedCorner corner, double height)
    {
        SurveyDiagnosis diagnosis = Diagnose(new(Corner: corner, Height: height));
        TwistFinding twist = Assert.IsType<TwistFinding>(Assert.Single(diagnosis.Findings));
        Assert.Equal(corner, twist.Corner);
        Assert.Equal(height, twist.Height.Value, 1e-9);
        Assert.True(twist.CornerWeights[corner] > 0.9);
        Assert.Equal(1, twist.CornerWeights.Values.Sum(), 1e-9);
        if (height > 0)
        {
            ShimCorner shim = Assert.IsType<ShimCorner>(diagnosis.Cure);
            Assert.Equal((corner, 0.6), (shim.Corner, Math.Round(shim.Height.Value.Millimetres, 9)));
        }
        else
        {
            Assert.Equal(new RealignLeg(2, corner.End()), diagnosis.Cure);
        }
    }

    /// <summary>Common practice: after leg 2 is aligned at the other end of the travel, the corner opposite the low one stands too high, and can be shimmed.</summary>
    [Theory]
    [InlineData(BedCorner.FarRight)]
    [InlineData(BedCorner.NearRight)]
    [InlineData(BedCorner.FarLeft)]
    [InlineData(BedCorner.NearLeft)]
    public void After_realigning_leg_2_at_a_low_corner_the_opposite_one_stands_too_high_and_is_shimmed(BedCorner low)
    {
        SurveyDiagnosis diagnosis = Diagnose(new(Corner: low, Height: -0.6));
        SurveyMark[] after = [.. diagnosis.Expected.Select(e => new SurveyMark(Surveys.Bed.Place(e.Key).X, Surveys.Bed.Place(e.Key).Y, new(e.Value.Point, Covariance2.Isotropic(0.05))))];
        Assert.Equal(4, after.Length);
        SurveyDiagnosis second = CornerSurvey.Diagnose(Surveys.Bed, after).ValueOrThrow();
        TwistFinding twist = Assert.IsType<TwistFinding>(Assert.Single(second.Findings));
        Assert.Equal((low.AtOtherEnd(), 0.6), (twist.Corner, Math.Round(twist.Height.Value, 9)));
        Assert.Equal(low.AtOtherEnd(), Assert.IsType<ShimCorner>(second.Cure).Corner);
    }

    [Fact]
    public void After_the_shim_the_corner_is_expected_level_with_the_others_within_what_its_response_leaves()
    {
        SurveyDiagnosis diagnosis = Diagnose(new(Corner: BedCorner.FarRight, Height: 0.6));
        Assert.Equal(4, diagnosis.Expected.Count);
        Assert.All(diagnosis.Expected.Values, e => Assert.Equal(-0.7, e.Point.V, 1e-9));
        Assert.Equal(Math.Sqrt((0.05 * 0.05) + (0.3 * 0.3)), Math.Sqrt(diagnosis.Expected[BedCorner.FarRight].Covariance.Vv), 1e-9);
    }

    [Fact]
    public void A_walk_with_the_gantry_is_leg_1_and_a_walk_with_the_head_leg_2()
    {
        SlopeFinding one = Assert.IsType<SlopeFinding>(Assert.Single(Diagnose(new(WalkGantryU: 0.3, WalkGantryV: -0.4)).Findings));
        Assert.Equal((1, SurveyFault.LegOneSlope, 0.5), (one.Leg, one.Fault, Math.Round(one.Effect, 9)));
        Assert.Equal(0.75, one.Slope.U, 1e-9);
        // Twist and skew held at zero, all four marks tell of the walk: σ, not the √2·σ of two.
        Assert.Equal(0.05, Math.Sqrt(one.Covariance.Uu), 1e-9);
        Assert.Equal(0.05, Math.Sqrt(one.Covariance.Vv), 1e-9);
        SurveyDiagnosis two = Diagnose(new(WalkHeadV: 0.5));
        Assert.Equal(SurveyFault.LegTwoSlope, Assert.Single(two.Findings).Fault);
        Assert.Equal(new RealignLeg(2, GantryEnd.Near), two.Cure);
        Assert.All(two.Expected.Values, e => Assert.Equal(-0.7, e.Point.V, 1e-9));
        // The walk comes off the right corners together with its uncertainty.
        Assert.Equal(0.05 * Math.Sqrt(3), Math.Sqrt(two.Expected[BedCorner.FarRight].Covariance.Vv), 1e-9);
    }

    [Fact]
    public void The_larger_of_two_faults_comes_first()
    {
        SurveyDiagnosis diagnosis = Diagnose(new(WalkGantryV: 0.4, Corner: BedCorner.FarRight, Height: 0.9));
        Assert.Equal([SurveyFault.Twist, SurveyFault.LegOneSlope], diagnosis.Findings.Select(f => f.Fault));
        diagnosis = Diagnose(new(WalkGantryV: 2, Corner: BedCorner.FarRight, Height: 0.6));
        Assert.Equal([SurveyFault.LegOneSlope, SurveyFault.Twist], diagnosis.Findings.Select(f => f.Fault));
        Assert.Equal(diagnosis.Findings.Select(f => (f.Fault, f.Effect, f.Probability)), diagnosis.Tests.Where(t => t.IsSignificant).Select(t => (t.Fault, t.Effect, t.Probability)));
    }

    [Fact]
    public void A_level_survey_has_nothing_significant_and_no_cure()
    {
        SurveyDiagnosis diagnosis = Diagnose(new(0.02, 0.03, -0.02, 0.01));
        Assert.True(diagnosis.HasEnoughData);
        Assert.Empty(diagnosis.Findings);
        Assert.Null(diagnosis.Cure);
        Assert.Empty(diagnosis.Expected);
        Assert.Equal([SurveyFault.LegOneSlope, SurveyFault.LegTwoSlope, SurveyFault.Twist], diagnosis.Tests.Select(t => t.Fault));
        Assert.DoesNotContain(diagnosis.Tests, t => t.IsSignificant);
        Assert.Equal(0.1, diagnosis.Twist!.Value.Uncertainty, 1e-9);
    }

    [Fact]
    public void Too_few_places_say_where_to_fire_next()
    {
        SurveyDiagnosis none = CornerSurvey.Diagnose(Surveys.Bed, []).ValueOrThrow();
        Assert.False(none.HasEnoughData);
        Assert.Equal((Length.Zero, Length.Zero), none.NextPlace);
        SurveyMark[] three = new Surveys().Marks([(0, 0), (1, 0), (0, 1)], 0.05);
        Assert.Equal((Surveys.Bed.X, Surveys.Bed.Y), CornerSurvey.Diagnose(Surveys.Bed, three).ValueOrThrow().NextPlace);
        // Many marks on one line are no survey either.
        SurveyMark[] line = new Surveys().Marks([(0, 0), (0.2, 0.2), (0.5, 0.5), (0.8, 0.8), (1, 1)], 0.05);
        Assert.False(CornerSurvey.Diagnose(Surveys.Bed, line).ValueOrThrow().HasEnoughData);
    }

    [Fact]
    public void A_mark_that_fits_no_surface_earns_a_warning()
    {
        SurveyMark[] marks = new Surveys().Marks([.. Surveys.Corners, .. Surveys.Corners], 0.05);
        marks[5] = marks[5] with { Mark = new(marks[5].Mark.Point + new CardVector(0.5, 0), marks[5].Mark.Covariance) };
        Assert.Contains(CornerSurvey.Diagnose(Surveys.Bed, marks).ValueOrThrow().Warnings, w => w.Code == "surveyOffModel");
    }

    public static TheoryData<string, double, double, double, double, double> Refused => new()
    {
        { "BED_INVALID", 0, 400, 0, 0, 0.05 },
        { "BED_INVALID", 500, 1e9, 0, 0, 0.05 },
        { "SURVEY_PLACE_OFF_BED", 500, 400, 700, 0, 0.05 },
        { "SURVEY_PLACE_OFF_BED", 500, 400, 0, -100, 0.05 },
        { "SURVEY_MARK_INVALID", 500, 400, 0, 0, 0 },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Impossible_surveys_are_refused(string code, double bedX, double bedY, double x, double y, double u)
    {
        SurveyMark mark = new(Some.Mm(x), Some.Mm(y), Some.Point(0, 0, u));
        Assert.False(CornerSurvey.Diagnose(new(Some.Mm(bedX), Some.Mm(bedY)), [mark]).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Fact]
    public void A_mark_farther_than_50_mm_from_the_card_is_refused_by_its_number()
    {
        SurveyMark near = new(Some.Mm(0), Some.Mm(0), Some.Point(0, 50, 0.05)), far = near with { Mark = Some.Point(-40, 40, 0.05) };
        Assert.True(CornerSurvey.Diagnose(Surveys.Bed, [near]).TryGet(out _, out _));
        Assert.False(CornerSurvey.Diagnose(Surveys.Bed, [near, far]).TryGet(out _, out Failure? failure));
        Assert.Equal("SURVEY_MARK_INVALID", failure.Code.Name);
        Assert.Contains("mark 2 of the survey is 56.", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_200_marks_are_refused()
    {
        Assert.False(CornerSurvey.Diagnose(Surveys.Bed, [.. Enumerable.Repeat(new Surveys().Marks([(0, 0)], 0.05)[0], 201)]).TryGet(out _, out Failure? failure));
        Assert.Equal("SURVEY_TOO_MANY_MARKS", failure.Code.Name);
    }

    private static SurveyDiagnosis Diagnose(Surveys survey) => CornerSurvey.Diagnose(Surveys.Bed, survey.Marks(Surveys.Corners, 0.05)).ValueOrThrow();
}
