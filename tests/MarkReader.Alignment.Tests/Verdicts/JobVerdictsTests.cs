using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Verdicts;

public sealed class JobVerdictsTests
{
    [Fact]
    public void A_leg_s_walk_is_its_slope_times_the_travel()
    {
        // 1 mrad over 400 mm is 0.4 mm; 0.1 mrad is 0.04 mm.
        Conformity leg = JobVerdicts.Leg(new(0.6, 0.8, Covariance2.Isotropic(0.1)), Some.Mm(400), Some.Mm(0.5));
        Conformity walk = DiscConformity.Of(new(0.24, 0.32), Covariance2.Isotropic(0.04), 0.5);
        Assert.Equal(walk.Verdict, leg.Verdict);
        Assert.Equal(walk.Probability, leg.Probability, 1e-12);
        Assert.Equal(
            DiscConformity.Of(new(0.6, 0.8), Covariance2.Isotropic(0.1), 1.5), JobVerdicts.Slope(new(0.6, 0.8, Covariance2.Isotropic(0.1)), Angle.FromMilliradians(1.5)));
    }

    [Fact]
    public void Centring_counts_the_errors_of_mark_and_centre()
    {
        Conformity both = JobVerdicts.Centring(Some.Point(3, 1, 0.3), Some.Point(2, 1, 0.4), Some.Mm(1.5));
        Assert.Equal(DiscConformity.Of(new(1, 0), Covariance2.Isotropic(0.5), 1.5).Probability, both.Probability, 1e-12);
    }

    [Fact]
    public void The_whole_is_within_only_when_every_part_is()
    {
        Conformity within = new(Verdict.Within, 0.99, 1), undecided = new(Verdict.Undecided, 0.6, 1), outside = new(Verdict.Outside, 0.001, 0.004), barely = new(Verdict.Outside, 0.01, 0.02);
        Assert.Equal(Verdict.Within, JobVerdicts.Whole([within, within]).Verdict);
        Assert.Equal(0.98, JobVerdicts.Whole([within, within]).Probability, 1e-12);
        Assert.Equal(Verdict.Undecided, JobVerdicts.Whole([within, undecided]).Verdict);
        Assert.Equal(Verdict.Outside, JobVerdicts.Whole([within, undecided, outside]).Verdict);
        Assert.Equal(Verdict.Undecided, JobVerdicts.Whole([within, barely]).Verdict);
        Assert.Equal(0, JobVerdicts.Whole([outside, outside]).Probability);
    }

    /// <summary>Five parts, each exactly on its limit from the inside or one just outside: the machine's verdict errs in at most 2.5 % either way.</summary>
    [Fact]
    public void Of_machines_on_the_limit_at_most_2_5_percent_are_called_within_or_outside()
    {
        MersenneTwister random = new(13, threadSafe: false);
        const int trials = 5_000;
        int calledWithin = 0, calledOutside = 0;
        for (int i = 0; i < trials; i++)
        {
            // One part is outside, if barely; the others are far inside.
            calledWithin += Machine([1, 0.2, 0.1, 0, 0]) == Verdict.Within ? 1 : 0;
            // All parts are inside, if barely.
            calledOutside += Machine([1, 1, 1, 1, 1]) == Verdict.Outside ? 1 : 0;
        }

        int most = (int)((0.025 * trials) + (3 * Math.Sqrt(0.025 * 0.975 * trials)));
        Assert.InRange(calledWithin, 0, most);
        Assert.InRange(calledOutside, 0, most);

        Verdict Machine(double[] truths) => JobVerdicts.Whole([.. truths.Select(t => ScalarConformity.AtMost(Normal.Sample(random, t, 0.1), 0.1, 1))]).Verdict;
    }

    [Fact]
    public void A_spread_is_outside_when_one_difference_is_clearly_outside()
    {
        MeasuredVector small = new(new(0.05, 0), Covariance2.Isotropic(0.05)), large = new(new(0.9, 0), Covariance2.Isotropic(0.05));
        Assert.Equal(Verdict.Within, JobVerdicts.Spread([small, small, small], Some.Mm(0.5)).Verdict);
        Assert.Equal(Verdict.Outside, JobVerdicts.Spread([small, large, small], Some.Mm(0.5)).Verdict);
    }
}
