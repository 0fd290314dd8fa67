using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Survey;

public sealed class SurveyPlanTests
{
    private static readonly Covariance2 s_pulse = Covariance2.Isotropic(0.05);

    [Fact]
    public void An_undecided_spread_asks_for_a_mark_at_one_of_the_two_corners_farthest_apart()
    {
        SurveyMark[] marks = new Surveys(WalkHeadU: 0.42).Marks(Surveys.Corners, 0.05);
        // The far right mark is the poorest.
        marks[3] = marks[3] with { Mark = new(marks[3].Mark.Point + new CardVector(0.02, 0), Covariance2.Isotropic(0.15)) };
        SpreadAdvice advice = SurveyPlan.Spread(Surveys.Bed, marks, Some.Mm(0.5), s_pulse);
        Assert.Equal(Verdict.Undecided, advice.Verdict.Verdict);
        Assert.Equal(BedCorner.FarRight, advice.Next);
    }

    [Theory]
    [InlineData(0.1, "Within")]
    [InlineData(1, "Outside")]
    public void A_decided_spread_asks_for_nothing(double walk, string verdict)
    {
        SpreadAdvice advice = SurveyPlan.Spread(Surveys.Bed, new Surveys(WalkGantryV: walk).Marks(Surveys.Corners, 0.05), Some.Mm(0.5), s_pulse);
        Assert.Equal((verdict, null), (advice.Verdict.Verdict.ToString(), advice.Next));
    }

    /// <summary>Truths off the limit: the pulses that are asked for decide, most of them soon, and err in at most 2.5 % each way.</summary>
    [Theory]
    [InlineData(0.35, "Within")]
    [InlineData(0.65, "Outside")]
    public void Pulses_that_are_asked_for_decide(double walk, string truth)
    {
        MersenneTwister random = new(26, threadSafe: false);
        Surveys machine = new(WalkHeadV: walk);
        int right = 0, wrong = 0;
        const int machines = 200;
        for (int i = 0; i < machines; i++)
        {
            List<SurveyMark> marks = [.. machine.Marks(Surveys.Corners, 0.05, random)];
            SpreadAdvice advice = SurveyPlan.Spread(Surveys.Bed, marks, Some.Mm(0.5), s_pulse);
            for (int pulse = 0; pulse < 20 && advice.Next is { } corner; pulse++)
            {
                marks.AddRange(machine.Marks([(corner.IsRight() ? 1 : 0, corner.End() == GantryEnd.Far ? 1 : 0)], 0.05, random));
                advice = SurveyPlan.Spread(Surveys.Bed, marks, Some.Mm(0.5), s_pulse);
            }

            right += advice.Verdict.Verdict.ToString() == truth ? 1 : 0;
            wrong += advice.Verdict.Verdict != Verdict.Undecided && advice.Verdict.Verdict.ToString() != truth ? 1 : 0;
        }

        Assert.InRange(right, 0.95 * machines, machines);
        Assert.InRange(wrong, 0, 0.025 * machines);
    }

    /// <summary>A truth on the limit, one look: at most 2.5 % either way.</summary>
    [Fact]
    public void A_bed_on_the_limit_is_called_within_or_outside_in_at_most_2_5_percent()
    {
        MersenneTwister random = new(27, threadSafe: false);
        Surveys machine = new(WalkHeadU: 0.3, WalkGantryV: 0.4);
        const int machines = 1000;
        Verdict[] verdicts = [.. Enumerable.Range(0, machines).Select(_ => SurveyPlan.Spread(Surveys.Bed, machine.Marks(Surveys.Corners, 0.05, random), Some.Mm(0.5), s_pulse).Verdict.Verdict)];
        Assert.InRange(verdicts.Count(v => v == Verdict.Within), 0, 0.025 * machines);
        Assert.InRange(verdicts.Count(v => v == Verdict.Outside), 0, 0.025 * machines);
    }
}
