using MarkReader.Metrology.Studies;
using MathNet.Numerics.Random;

namespace MarkReader.Metrology.Tests.Studies;

public sealed class StudyPlanTests
{
    [Fact]
    public void The_plan_takes_the_fewest_photos_that_reach_the_width_and_more_for_a_narrower_one()
    {
        StudyPlan wide = StudyPlan.For(0.6, 5, ExpectedShares.Usual).ValueOrThrow(), narrow = StudyPlan.For(0.4, 5, ExpectedShares.Usual).ValueOrThrow();
        Assert.True(wide.Best!.HalfWidth <= 0.6);
        Assert.All(wide.Rows.Where(r => r.HalfWidth <= 0.6), r => Assert.True(r.Photos >= wide.Best.Photos));
        Assert.True(narrow.Best is null || narrow.Best.Photos > wide.Best.Photos);
        // Two people say nearly nothing about people: one degree of freedom.
        Assert.True(wide.Rows[0].HalfWidth > 2);
    }

    /// <summary>What a plan promises against what studies of that size give: the median half-width.</summary>
    [Fact]
    public void Studies_of_the_planned_size_have_intervals_of_about_the_planned_width()
    {
        StudySize size = new(5, 8, 3);
        KnownComponents known = new(5, 8, 3, 4, 0.5, 0, Math.Sqrt(0.375), Math.Sqrt(0.375));
        MersenneTwister random = new(3, threadSafe: false);
        double[] widths =
        [
            .. Enumerable.Range(0, 200).Select(_ => GaugeStudy.Run(known.Draw(random), new() { Photos = true }).ValueOrThrow()[StudyPart.Gauge].DeviationInterval.Width / 2).Order(),
        ];
        Assert.Equal(StudyPlan.Of(size, ExpectedShares.Usual).HalfWidth, widths[100], 0.15 * widths[100]);
    }

    [Theory]
    [InlineData(0.01, 5)]
    [InlineData(double.NaN, 5)]
    [InlineData(0.5, 1)]
    public void Impossible_wishes_are_refused(double width, int marks)
    {
        Assert.False(StudyPlan.For(width, marks, ExpectedShares.Usual).TryGet(out _, out Quantities.Failure? failure));
        Assert.Equal(StudyFailures.OptionInvalid, failure.Code);
    }
}
