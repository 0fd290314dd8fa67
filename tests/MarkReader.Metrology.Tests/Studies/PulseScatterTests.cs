using CsCheck;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Metrology.Tests.Studies;

public sealed class PulseScatterTests
{
    private static readonly Covariance2 s_none = Covariance2.Isotropic(0);

    /// <summary>By hand: deviations ±1 and ±2 on two axes, five marks; χ² with 4 degrees of freedom 0.4844 and 11.1433 (NIST/SEMATECH e-Handbook, 1.3.6.7.4).</summary>
    [Fact]
    public void Standard_deviations_axes_and_stability_are_those_worked_out_by_hand()
    {
        PulseScatter scatter = PulseScatter.Of([At(1, 0), At(-1, 0), At(0, 2), At(0, -2), At(0, 0)]).ValueOrThrow();
        Assert.Equal(Math.Sqrt(0.5), scatter.U.Observed, 1e-12);
        Assert.Equal(Math.Sqrt(2), scatter.V.Observed, 1e-12);
        Assert.Equal(Math.Sqrt(2 / 11.1433), scatter.U.Interval.Low, 1e-5);
        Assert.Equal(Math.Sqrt(2 / 0.4844), scatter.U.Interval.High, 2e-4);
        Assert.Equal(Math.Sqrt(1.25), scatter.Component.Observed, 1e-12);
        Assert.Equal(Math.Sqrt(2), scatter.Principal.SemiMajor, 1e-12);
        Assert.Equal(90, Math.Abs(scatter.Principal.Direction.Degrees), 1e-9);
        Assert.Equal(4 * Math.Sqrt(2), scatter.PositionalStabilityV.Millimetres, 1e-12);
        // Axes that scatter alike: 2√2·√(2s²) = 4s, so that the two forms agree.
        Assert.Equal(2 * Math.Sqrt(2 * 2.5), scatter.PositionalStability.Millimetres, 1e-12);
        Assert.Equal(2 * Math.Sqrt(2) / 500, scatter.AngularStability(Length.FromMillimetres(500)).V.Radians, 1e-12);
    }

    [Fact]
    public void The_photos_own_uncertainty_is_taken_off_in_squares_and_never_below_zero()
    {
        MeasuredPoint[] marks = [.. new[] { (1, 0), (-1, 0), (0, 2), (0, -2), (0, 0) }.Select(p => new MeasuredPoint(new(p.Item1, p.Item2), new(0.25, 0, 9)))];
        PulseScatter scatter = PulseScatter.Of(marks).ValueOrThrow();
        Assert.Equal(0.5, scatter.U.Corrected, 1e-12);
        Assert.Equal(0, scatter.V.Corrected);
        Assert.Equal(0, scatter.Component.Corrected);
        // Nothing is left of the estimate: what visits take is then the upper end, not nothing.
        Assert.Equal(scatter.Component.CorrectedInterval.High, scatter.ForVisits.Millimetres, 1e-12);
        Assert.True(scatter.ForVisits > Length.Zero);
    }

    /// <summary>By hand: deviations ±1 and ±3 on two axes, five marks: standard deviations √0.5 and √4.5; both together √2.5.</summary>
    [Fact]
    public void Visits_take_the_larger_axis_only_where_the_axes_clearly_differ()
    {
        Assert.Equal(Math.Sqrt(4.5), PulseScatter.Of([At(1, 0), At(-1, 0), At(0, 3), At(0, -3), At(0, 0)]).ValueOrThrow().ForVisits.Millimetres, 1e-12);
        // ±1 and ±2 differ by a factor of 2 and not more.
        PulseScatter alike = PulseScatter.Of([At(1, 0), At(-1, 0), At(0, 2), At(0, -2), At(0, 0)]).ValueOrThrow();
        Assert.Null(alike.LargerAxis);
        Assert.Equal(Math.Sqrt(1.25), alike.ForVisits.Millimetres, 1e-12);
    }

    [Fact]
    public void Readings_that_do_not_differ_tell_nothing()
    {
        // The mean of three tenths is not a tenth to the last bit.
        PulseScatter still = PulseScatter.Of([At(0.1, 0.7), At(0.1, 0.7), At(0.1, 0.7)]).ValueOrThrow();
        Assert.True(still.IsStill);
        Assert.Equal(Length.Zero, still.ForVisits);
        Assert.False(PulseScatter.Of([At(0.1, 0.7), At(0.1, 0.7), At(0.1, 0.701)]).ValueOrThrow().IsStill);
    }

    [Theory]
    [InlineData(0.05, 0.05, 0, 10)]
    [InlineData(0.09, 0.03, 0, 10)]
    [InlineData(0.05, 0.05, 0.03, 20)]
    [InlineData(0.10, 0.02, 0, 5)]
    public void Intervals_hold_the_true_scatter_at_their_confidence(double su, double sv, double photo, int n)
    {
        const int Trials = 4000;
        MersenneTwister random = new(42, threadSafe: false);
        (int u, int component, int flagged) = (0, 0, 0);
        for (int trial = 0; trial < Trials; trial++)
        {
            double Gauss(double sd) => Normal.Sample(random, 0, 1) * sd;
            PulseScatter scatter = PulseScatter.Of([.. Enumerable.Range(0, n).Select(_ => new MeasuredPoint(new(7 + Gauss(su) + Gauss(photo), Gauss(sv) + Gauss(photo)), Covariance2.Isotropic(photo)))]).ValueOrThrow();
            double both = Math.Sqrt(((su * su) + (sv * sv)) / 2);
            u += scatter.U.CorrectedInterval.Low <= su && su <= scatter.U.CorrectedInterval.High ? 1 : 0;
            component += scatter.Component.CorrectedInterval.Low <= both && both <= scatter.Component.CorrectedInterval.High ? 1 : 0;
            flagged += scatter.Outlier is { StandsOut: true } ? 1 : 0;
        }

        Assert.InRange(u / (double)Trials, 0.9395, 0.9605);
        Assert.InRange(component / (double)Trials, 0.925, 0.97);
        Assert.InRange(flagged / (double)Trials, 0, 0.062);
    }

    [Fact]
    public void A_mark_far_from_the_others_is_hinted_at()
    {
        MeasuredPoint[] marks = [At(0.03, 0.01), At(-0.02, 0.04), At(0.01, -0.05), At(-0.04, -0.01), At(0.6, 0.5), At(0.02, 0.03), At(-0.01, -0.02), At(0.05, 0)];
        PulseOutlier outlier = PulseScatter.Of(marks).ValueOrThrow().Outlier!;
        Assert.True(outlier is { Index: 4, StandsOut: true });
        Assert.False(PulseScatter.Of([.. marks.Where((_, i) => i != 4)]).ValueOrThrow().Outlier!.StandsOut);
    }

    /// <summary>s² of n marks against χ²: the smallest n with (√(ν/χ²₀.₀₂₅) − √(ν/χ²₀.₉₇₅))/2 at most the width, ν = 2(n − 1); with ν = 30 that is (√(30/16.7908) − √(30/46.9792))/2 = 0.2688 (table of NIST/SEMATECH e-Handbook, 1.3.6.7.4).</summary>
    [Fact]
    public void The_number_of_pulses_is_the_smallest_that_gives_the_width()
    {
        PulsePlan plan = PulsePlan.For(0.2689).ValueOrThrow();
        Assert.Equal(16, plan.Pulses);
        Assert.Equal(0.2688, plan.Factors.Width / 2, 0.00006);
        Assert.Equal(plan.Factors, PulsePlan.FactorsOf(16));
        Assert.Equal(17, PulsePlan.For(0.2685).ValueOrThrow().Pulses);
        Assert.False(PulsePlan.For(0).TryGet(out _, out _));
    }

    /// <summary>Turning the tape turns the axes and leaves what visits take as it is.</summary>
    [Fact]
    public void The_component_does_not_depend_on_how_the_tape_is_turned()
    {
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-1, 1].Array[10, 30]).Sample((turn, places) =>
        {
            (double c, double s) = (Math.Cos(turn), Math.Sin(turn));
            MeasuredPoint[] marks = [.. places.Chunk(2).Where(p => p.Length == 2).Select(p => At(p[0], 0.3 * p[1]))];
            MeasuredPoint[] turned = [.. marks.Select(m => At((c * m.Point.U) - (s * m.Point.V), (s * m.Point.U) + (c * m.Point.V)))];
            (PulseScatter one, PulseScatter other) = (PulseScatter.Of(marks).ValueOrThrow(), PulseScatter.Of(turned).ValueOrThrow());
            Assert.Equal(one.Component.Observed, other.Component.Observed, 1e-9);
            Assert.Equal(one.Component.Interval.High, other.Component.Interval.High, 1e-7);
            Assert.Equal(one.Principal.SemiMajor, other.Principal.SemiMajor, 1e-9);
        }, iter: 200);
    }

    [Fact]
    public void Two_pulses_are_refused()
    {
        Assert.False(PulseScatter.Of([At(0, 0), At(1, 0)]).TryGet(out _, out Failure? failure));
        Assert.Equal(StudyFailures.TooFewPulses, failure.Code);
    }

    private static MeasuredPoint At(double u, double v) => new(new(u, v), s_none);
}
