using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Aiming;

public sealed class OutlierTestTests
{
    private static readonly BeamLine s_beam = new(1, 0.005, -0.5, -0.003);

    [Theory]
    [InlineData(0, 0, new double[] { 80, 280, 480 })]
    [InlineData(2, 45, new double[] { 80, 80, 280, 480, 480 })]
    [InlineData(1, 0, new double[] { 80, 80, 80, 480 })]
    public void Marks_that_belong_together_are_suspected_in_about_1_percent(double pathUncertainty, double incidence, double[] paths)
    {
        SimulatedLeg leg = new(new MersenneTwister(31, threadSafe: false), 0.05, pathUncertainty, incidence);
        const int trials = 1000;
        int suspected = Enumerable.Range(0, trials).Count(_ => Report(leg, leg.Marks(s_beam, leg.Paths(paths), paths)).Suspected);
        Assert.InRange(suspected, 0, (0.01 * trials) + 10);
    }

    [Fact]
    public void A_mark_seven_deviations_off_is_found_and_named()
    {
        double[] paths = [80, 80, 280, 480, 480];
        SimulatedLeg leg = new(new MersenneTwister(32, threadSafe: false), 0.05, 1);
        int named = 0;
        for (int i = 0; i < 300; i++)
        {
            Observation[] marks = leg.Marks(s_beam, leg.Paths(paths), paths);
            marks[i % 5] = marks[i % 5] with { Place = marks[i % 5].Place + new CardVector(0.3, 0.3) };
            named += ReferenceEquals(Report(leg, marks).Outlier, marks[i % 5]) ? 1 : 0;
        }

        Assert.InRange(named, 240, 300);
    }

    /// <summary>Closed form for three marks at one station and one far one: the mark left out against the mean of its two neighbours.</summary>
    [Fact]
    public void The_fall_of_chi_square_is_the_distance_from_what_the_others_predict()
    {
        Observation[] marks = [Some.Mark(80, 1, 0, 0.1), Some.Mark(80, 1.2, 0, 0.1), Some.Mark(80, 2, 0, 0.1), Some.Mark(480, 3, 0, 0.1)];
        OutlierReport report = OutlierTest.Of(Leg.Square, marks).ValueOrThrow();
        Assert.Equal(4, report.Marks.Count);
        Assert.Equal(0.9 * 0.9 / (0.01 * 1.5), report.Marks[2].Fall!.Value, 1e-6);
        Assert.Equal(Math.Exp(-0.81 / 0.03), report.Marks[2].Probability!.Value, 1e-15);
        Assert.Null(report.Marks[3].Fall);
        Assert.Null(report.Marks[3].Probability);
    }

    [Fact]
    public void Of_three_marks_it_cannot_be_told_which_is_wrong()
    {
        OutlierReport report = OutlierTest.Of(Leg.Square, [Some.Mark(80, 0, 0), Some.Mark(280, 1, 0), Some.Mark(480, 0, 0)]).ValueOrThrow();
        Assert.True(report.Suspected);
        Assert.Null(report.Outlier);
        Assert.Equal(3, report.Marks.Count(m => m.Fall is not null));
    }

    [Fact]
    public void Two_marks_cannot_be_tested()
    {
        Assert.False(OutlierTest.Of(Leg.Square, [Some.Mark(80, 0, 0), Some.Mark(480, 0, 0)]).TryGet(out _, out Failure? failure));
        Assert.Equal("OUTLIER_MARK_COUNT", failure.Code.Name);
    }

    private static OutlierReport Report(SimulatedLeg leg, Observation[] marks) => OutlierTest.Of(leg.Leg, marks).ValueOrThrow();
}
