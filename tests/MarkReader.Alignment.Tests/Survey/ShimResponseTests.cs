using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Survey;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Survey;

public sealed class ShimResponseTests
{
    /// <summary>Linear Gaussian update: with h = 0.8, prior −1 ± 0.5 and a move of −0.4 seen to ±0.1·√2 the weights are 0.4² against 0.02.</summary>
    [Fact]
    public void One_re_survey_teaches_the_response()
    {
        ShimResponse learned = ShimResponse.Prior.After(MeasuredLength.FromMillimetres(0.8, 0), new Prediction(0.7, 0.1), new Prediction(0.3, 0.1));
        Assert.Equal(-1 + (0.8 * 0.25 / 0.18 * 0.4), learned.Mean, 1e-12);
        Assert.Equal(Math.Sqrt(0.25 * 0.02 / 0.18), learned.StandardDeviation, 1e-12);
        Assert.True(learned.IsKnown);
    }

    [Fact]
    public void A_shim_that_does_not_move_the_mark_makes_the_response_unknown_and_the_frame_is_to_be_checked()
    {
        ShimResponse learned = ShimResponse.Prior.After(MeasuredLength.FromMillimetres(0.8, 0), new Prediction(0.7, 0.05), new Prediction(0.7, 0.05));
        Assert.False(learned.IsKnown);
        SurveyDiagnosis diagnosis = CornerSurvey.Diagnose(
            Surveys.Bed, new Surveys(Height: 0.7).Marks(Surveys.Corners, 0.05), SurveyOptions.Default with { Response = learned }).ValueOrThrow();
        Assert.IsType<CheckFrame>(diagnosis.Cure);
    }

    [Fact]
    public void No_shim_teaches_nothing() =>
        Assert.Equal(ShimResponse.Prior, ShimResponse.Prior.After(MeasuredLength.FromMillimetres(0, 0), new Prediction(0.7, 0.1), new Prediction(0.7, 0.1)));

    [Fact]
    public void Stated_deviation_after_learning_is_that_of_the_errors_over_machines_of_the_prior()
    {
        MersenneTwister random = new(25, threadSafe: false);
        const int machines = 3000;
        double sum = 0;
        for (int i = 0; i < machines; i++)
        {
            double truth = Normal.Sample(random, -1, 0.5), shim = Normal.Sample(random, 0.8, 0.03);
            Prediction before = new(Normal.Sample(random, 0.7, 0.1), 0.1), after = new(Normal.Sample(random, 0.7 + (truth * shim), 0.1), 0.1);
            ShimResponse learned = ShimResponse.Prior.After(MeasuredLength.FromMillimetres(0.8, 0.03), before, after);
            sum += Math.Pow((learned.Mean - truth) / learned.StandardDeviation, 2);
        }

        Assert.Equal(1, Math.Sqrt(sum / machines), 0.05);
    }
}
