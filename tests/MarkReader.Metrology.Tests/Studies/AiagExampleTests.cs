using MarkReader.Metrology.Studies;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>The worked example of AIAG's manual; published results as quoted in public test suites and a statistics package's printout, further digits recomputed.</summary>
public sealed class AiagExampleTests
{
    private static readonly GaugeStudy s_study = GaugeStudy.Run(SomeStudies.Aiag).ValueOrThrow();

    [Theory]
    [InlineData(AnovaSource.Operator, 2, 3.1673, 1.58363)]
    [InlineData(AnovaSource.Part, 9, 88.3619, 9.81799)]
    [InlineData(AnovaSource.Interaction, 18, 0.3590, 0.01994)]
    [InlineData(AnovaSource.Repeatability, 60, 2.7589, 0.04598)]
    [InlineData(AnovaSource.Pooled, 78, 3.1179, 0.03997)]
    [InlineData(AnovaSource.Total, 89, 94.6471, 1.06345)]
    public void The_table_is_the_printed_one(AnovaSource source, double dof, double sum, double mean)
    {
        AnovaRow row = s_study.Rows.Single(r => r.Source == source);
        Assert.Equal(dof, row.Dof);
        Assert.Equal(sum, row.SumOfSquares, 0.00006);
        Assert.Equal(mean, row.MeanSquare, 0.000006);
    }

    [Fact]
    public void The_interaction_is_pooled_and_parts_and_appraisers_tested_against_what_is_pooled()
    {
        Assert.True(s_study.IsPooled);
        AnovaTest interaction = Test(s_study, AnovaSource.Interaction);
        Assert.Equal(0.433721, interaction.F, 5e-7);
        Assert.Equal(0.974106, interaction.Probability, 5e-7);
        Assert.Equal(245.6139, Test(s_study, AnovaSource.Part).F, 5e-5);
        Assert.Equal(39.6172, Test(s_study, AnovaSource.Operator).F, 5e-5);
        Assert.Equal([AnovaSource.Pooled], Test(s_study, AnovaSource.Operator).Against);
    }

    [Theory]
    [InlineData(AnovaDenominator.Interaction, 79.406, 492.291)]
    [InlineData(AnovaDenominator.Repeatability, 34.440, 213.517)]
    public void Without_pooling_the_denominator_is_the_one_that_was_chosen(AnovaDenominator denominator, double appraiser, double part)
    {
        GaugeStudy study = GaugeStudy.Run(SomeStudies.Aiag, new() { PoolAbove = 1, Denominator = denominator }).ValueOrThrow();
        Assert.Equal(appraiser, Test(study, AnovaSource.Operator).F, 0.0005);
        Assert.Equal(part, Test(study, AnovaSource.Part).F, 0.0005);
        Assert.Equal(denominator.ToString(), Test(study, AnovaSource.Part).Against.Single().ToString());
    }

    [Theory]
    [InlineData(StudyPart.Repeatability, 0.03997, 0.199933, 18.42, 3.39)]
    [InlineData(StudyPart.Reproducibility, 0.05146, 0.226838, 20.90, 4.37)]
    [InlineData(StudyPart.Gauge, 0.09143, 0.302372, 27.86, 7.76)]
    [InlineData(StudyPart.Parts, 1.08645, 1.042327, 96.04, 92.24)]
    public void Components_and_percentages_are_the_printed_ones(StudyPart part, double variance, double deviation, double variation, double contribution)
    {
        Assert.Equal(variance, s_study[part].Variance, 0.000006);
        Assert.Equal(deviation, s_study[part].StandardDeviation, 6e-7);
        Assert.Equal(variation, s_study.StudyVariation(part), 0.006);
        Assert.Equal(contribution, s_study.Contribution(part), 0.006);
    }

    [Fact]
    public void Four_categories_can_be_told_apart() => Assert.Equal(4, s_study.Categories);

    [Fact]
    public void Not_pooled_the_negative_interaction_stands_as_zero_and_is_said_to()
    {
        GaugeStudy study = GaugeStudy.Run(SomeStudies.Aiag, new() { PoolAbove = 1 }).ValueOrThrow();
        Assert.False(study.IsPooled);
        Assert.True(study[StudyPart.Interaction] is { Variance: 0, WasNegative: true });
        Assert.Equal(0.0981051, study[StudyPart.Gauge].Variance, 5e-8);
        Assert.Equal(1.1867773, study.Total, 5e-8);
        Assert.Equal(28.75155, study.StudyVariation(StudyPart.Gauge), 5e-6);
    }

    /// <summary>The average-and-range method, an independent way of the same manual, prints GRR 0.306 and appraiser 0.230: it must lie in the intervals.</summary>
    [Fact]
    public void The_average_and_range_method_agrees_within_the_intervals()
    {
        Assert.InRange(0.306, s_study[StudyPart.Gauge].DeviationInterval.Low, s_study[StudyPart.Gauge].DeviationInterval.High);
        Assert.InRange(0.230, s_study[StudyPart.Reproducibility].DeviationInterval.Low, s_study[StudyPart.Reproducibility].DeviationInterval.High);
        Assert.InRange(0.202, s_study[StudyPart.Repeatability].DeviationInterval.Low, s_study[StudyPart.Repeatability].DeviationInterval.High);
    }

    /// <summary>Six standard deviations against the full width (common practice): 6·0.302372/4.</summary>
    [Fact]
    public void The_part_of_a_tolerance_is_six_standard_deviations_over_its_width() =>
        Assert.Equal(45.356, s_study.OfTolerance(StudyPart.Gauge, 4).Percent, 5e-4);

    /// <summary>2.758933 over the χ² quantiles with 60 degrees of freedom, 83.2977 and 40.4817 (NIST/SEMATECH e-Handbook, 1.3.6.7.4).</summary>
    [Fact]
    public void The_interval_of_repeatability_is_that_of_chi_square()
    {
        Assert.Equal(2.758933 / 83.2977, s_study[StudyPart.Repeatability].Interval.Low, 2e-6);
        Assert.Equal(2.758933 / 40.4817, s_study[StudyPart.Repeatability].Interval.High, 2e-6);
    }

    private static AnovaTest Test(GaugeStudy study, AnovaSource source) => study.Rows.Single(r => r.Source == source).Test!;
}
