using MarkReader.Metrology.Studies;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>Against the results of the R package SixSigma on its own data (its test test-ss-rr.R), pooling limit 0.05.</summary>
public sealed class SixSigmaExampleTests
{
    private static readonly GaugeStudy s_study = GaugeStudy.Run(SomeStudies.SixSigma, new() { PoolAbove = 0.05 }).ValueOrThrow();

    [Theory]
    [InlineData(AnovaSource.Part, 2, 1.2007)]
    [InlineData(AnovaSource.Operator, 2, 0.0529)]
    [InlineData(AnovaSource.Interaction, 4, 0.0834)]
    [InlineData(AnovaSource.Repeatability, 18, 0.3854)]
    [InlineData(AnovaSource.Pooled, 22, 0.4688)]
    [InlineData(AnovaSource.Total, 26, 1.7225)]
    public void Sums_of_squares_are_the_printed_ones(AnovaSource source, double dof, double sum)
    {
        AnovaRow row = s_study.Rows.Single(r => r.Source == source);
        Assert.Equal(dof, row.Dof);
        Assert.Equal(sum, row.SumOfSquares, 0.00006);
    }

    [Fact]
    public void F_and_its_probability_are_the_printed_ones_before_and_after_pooling()
    {
        AnovaTest Of(GaugeStudy study, AnovaSource source) => study.Rows.Single(r => r.Source == source).Test!;
        GaugeStudy unpooled = GaugeStudy.Run(SomeStudies.SixSigma, new() { PoolAbove = 0.5 }).ValueOrThrow();
        Assert.Equal((28.797, 0.00422), Rounded(Of(unpooled, AnovaSource.Part), 3));
        Assert.Equal((1.270, 0.37415), Rounded(Of(unpooled, AnovaSource.Operator), 3));
        Assert.Equal((0.974, 0.44619), Rounded(Of(unpooled, AnovaSource.Interaction), 3));
        Assert.Equal(28.17, Of(s_study, AnovaSource.Part).F, 0.006);
        Assert.Equal(8.56e-7, Of(s_study, AnovaSource.Part).Probability, 0.006e-7);
        Assert.Equal(0.308, Of(s_study, AnovaSource.Operator).Probability, 0.0006);
    }

    [Theory]
    [InlineData(StudyPart.Gauge, 0.14792656, 25.38, 50.38)]
    [InlineData(StudyPart.Repeatability, 0.14597518, 24.71, 49.71)]
    [InlineData(StudyPart.Reproducibility, 0.02394813, 0.67, 8.16)]
    [InlineData(StudyPart.Parts, 0.25365123, 74.62, 86.38)]
    public void Components_are_the_printed_ones(StudyPart part, double deviation, double contribution, double variation)
    {
        Assert.Equal(deviation, s_study[part].StandardDeviation, 6e-9);
        Assert.Equal(contribution, s_study.Contribution(part), 0.006);
        Assert.Equal(variation, s_study.StudyVariation(part), 0.006);
    }

    [Fact]
    public void Two_categories_can_be_told_apart() => Assert.Equal(2, s_study.Categories);

    private static (double F, double P) Rounded(AnovaTest test, int digits) => (Math.Round(test.F, digits), Math.Round(test.Probability, 5));
}
