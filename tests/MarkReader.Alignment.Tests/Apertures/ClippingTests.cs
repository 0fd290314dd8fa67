using CsCheck;
using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Apertures;

public sealed class ClippingTests
{
    /// <summary>
    /// With an exact beam radius the mean has a closed form: the offset's round error u widens the beam to σ² = w²/4 + u² (two independent
    /// normal displacements add), so the mean is that of a beam of radius √(w² + 4u²).
    /// </summary>
    [Theory]
    [InlineData(9, 3.5, 4, 0.5)]
    [InlineData(5, 3, 0, 0.4)]
    [InlineData(3, 3, 2, 1)]
    public void Mean_over_the_offset_s_uncertainty_is_that_of_a_widened_beam(double a, double w, double d, double u)
    {
        TransmittedPower power = Clipping.Through(Aperture(a, w, 0, d, u)).ValueOrThrow();
        double expected = GaussianClipping.Transmitted(a, Math.Sqrt((w * w) + (4 * u * u)), d);
        Assert.Equal(expected, power.Mean, 4 * power.Uncertainty / Math.Sqrt(20_000));
    }

    /// <summary>
    /// JCGM 101:2008, 9.4: near the centre the loss is δ = k·(U² + V²), whose mean is 2ku² and whose standard deviation is 2ku², where first order gives zero.
    /// k follows from T ≈ T0 − (2d²/w²)(2a²/w²)·exp(−2a²/w²).
    /// </summary>
    [Fact]
    public void A_centred_aperture_has_a_loss_and_an_uncertainty_that_first_order_does_not_see()
    {
        (double a, double w, double u) = (4, 3, 0.05);
        double k = 4 * a * a / Math.Pow(w, 4) * Math.Exp(-2 * a * a / (w * w));
        TransmittedPower power = Clipping.Through(Aperture(a, w, 0, 0, u)).ValueOrThrow();
        Assert.Equal(2 * k * u * u, power.AtEstimate - power.Mean, 0.05 * 2 * k * u * u);
        Assert.Equal(2 * k * u * u, power.Uncertainty, 0.05 * 2 * k * u * u);
        Assert.Equal(power.AtEstimate - (k * u * u * 5.991), power.AtLeast, 0.1 * k * u * u * 5.991);
        // The loss is k·u² times a χ² of 2 degrees of freedom, whose 97.5 % and 2.5 % quantiles are 7.378 and 0.0506.
        Assert.Equal(power.AtEstimate - (k * u * u * 7.378), power.Low, 0.1 * k * u * u * 7.378);
        Assert.Equal(power.AtEstimate - (k * u * u * 0.0506), power.High, 0.2 * k * u * u * 0.0506);
    }

    /// <summary>Far from the centre first order holds: u(T) = |∂T/∂d|·u.</summary>
    [Fact]
    public void At_the_rim_the_uncertainty_is_that_of_first_order()
    {
        TransmittedPower power = Clipping.Through(Aperture(5, 3, 0, 5, 0.02)).ValueOrThrow();
        double slope = (GaussianClipping.Transmitted(5, 3, 5.001) - GaussianClipping.Transmitted(5, 3, 4.999)) / 0.002;
        Assert.Equal(Math.Abs(slope) * 0.02, power.Uncertainty, 0.03 * Math.Abs(slope) * 0.02);
    }

    [Fact]
    public void Uncertainty_of_the_beam_s_radius_is_propagated()
    {
        TransmittedPower power = Clipping.Through(Aperture(4, 3, 0.06, 0, 0)).ValueOrThrow();
        double slope = (GaussianClipping.Transmitted(4, 3.01, 0) - GaussianClipping.Transmitted(4, 2.99, 0)) / 0.02;
        Assert.Equal(Math.Abs(slope) * 0.06, power.Uncertainty, 0.05 * Math.Abs(slope) * 0.06);
    }

    [Fact]
    public void Two_equal_apertures_in_line_pass_what_one_passes() => Gen.Select(Gen.Double[1, 9], Gen.Double[1, 4], Gen.Double[0, 4]).Sample((a, w, d) =>
    {
        BeamAperture one = Aperture(a, w, 0, d, 0);
        return Math.Abs(AtEstimate(one, one) - GaussianClipping.Transmitted(a, w, d)) < 1e-9;
    });

    [Fact]
    public void A_row_passes_no_more_than_its_tightest_aperture_and_no_less_than_all_losses_leave() =>
        Gen.Select(Gen.Double[1, 9], Gen.Double[1, 4], Gen.Double[0, 4], Gen.Double[1, 9], Gen.Double[0, 4]).Sample((a, w, d, other, away) =>
        {
            BeamAperture one = Aperture(a, w, 0, d, 0), two = new("two", Some.Mm(other), MeasuredLength.Exact(Some.Mm(w)), new(new(-away, 0), new(0, 0, 0)));
            double t = AtEstimate(one, two), first = GaussianClipping.Transmitted(a, w, d), second = GaussianClipping.Transmitted(other, w, away);
            return t <= Math.Min(first, second) + 1e-9 && t >= first + second - 1 - 1e-9 && Math.Abs(AtEstimate(two, one) - t) < 1e-9;
        });

    /// <summary>Two openings that overlap in a lens: the part of random rays that passes both.</summary>
    [Fact]
    public void A_row_is_the_part_of_rays_that_pass_all()
    {
        BeamAperture[] row =
        [
            new("hole", Some.Mm(3), MeasuredLength.Exact(Some.Mm(2.5)), new(new(1, 0.5), new(0, 0, 0))),
            new("lens", Some.Mm(4), MeasuredLength.Exact(Some.Mm(2.5)), new(new(-1.5, 1), new(0, 0, 0))),
            new("nozzle", Some.Mm(1.5), MeasuredLength.Exact(Some.Mm(1)), new(new(0.1, -0.2), new(0, 0, 0))),
        ];
        MathNet.Numerics.Random.MersenneTwister random = new(6, threadSafe: false);
        const int rays = 400_000;
        int passed = 0;
        for (int i = 0; i < rays; i++)
        {
            CardVector place = new(MathNet.Numerics.Distributions.Normal.Sample(random, 0, 0.5), MathNet.Numerics.Distributions.Normal.Sample(random, 0, 0.5));
            if (row.All(r => (r.Offset.Point + (r.BeamRadius.Value.Millimetres * place)).DistanceTo(CardPoint.Origin) <= r.Radius.Millimetres))
                passed++;
        }

        Assert.Equal(passed / (double)rays, AtEstimate(row), 0.003);
    }

    [Fact]
    public void A_row_s_estimate_and_mean_belong_together()
    {
        BeamAperture one = Aperture(4, 3, 0.05, 1, 0.1);
        TransmittedPower single = Clipping.Through(one).ValueOrThrow();
        TransmittedPower row = Clipping.Through([one, Aperture(60, 3, 0.05, 1, 0.1)]).ValueOrThrow();
        Assert.Equal(single.AtEstimate, row.AtEstimate, 1e-9);
        Assert.Equal(single.Mean, row.Mean, 4 * single.Uncertainty / Math.Sqrt(4_000));
        Assert.Equal(single.Uncertainty, row.Uncertainty, 0.06 * single.Uncertainty);
        Assert.Equal(single.AtLeast, row.AtLeast, 0.3 * single.Uncertainty);
    }

    [Fact]
    public void The_same_question_has_the_same_answer() => Assert.Equal(
        Clipping.Through(Aperture(4, 3, 0.1, 1, 0.2)).ValueOrThrow(), Clipping.Through(Aperture(4, 3, 0.1, 1, 0.2)).ValueOrThrow());

    [Theory]
    [InlineData("APERTURE_RADIUS", 0, 3, 0.1, 0)]
    [InlineData("APERTURE_RADIUS", 1e6, 3, 0.1, 0)]
    [InlineData("BEAM_RADIUS", 5, 0, 0, 0)]
    [InlineData("BEAM_RADIUS_UNCERTAIN", 5, 3, 1, 0)]
    [InlineData("BEAM_RADIUS_UNCERTAIN", 5, 3, -1, 0)]
    [InlineData("APERTURE_OFFSET", 5, 3, 0.1, 1e9)]
    public void Impossible_numbers_are_refused(string code, double a, double w, double uw, double d)
    {
        Assert.False(Clipping.Through(Aperture(a, w, uw, d, 0.1)).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Fact]
    public void No_apertures_or_nine_are_refused()
    {
        Assert.False(Clipping.Through([]).TryGet(out _, out _));
        Assert.False(Clipping.Through([.. Enumerable.Repeat(Aperture(5, 3, 0, 0, 0), 9)]).TryGet(out _, out _));
    }

    private static double AtEstimate(params BeamAperture[] row) => ApertureRow.Transmitted(
        [.. row.Select(r => (W: r.BeamRadius.Value.Millimetres, r)).Select(x => new ApertureRow.Disc(
            -2 * x.r.Offset.Point.U / x.W, -2 * x.r.Offset.Point.V / x.W, 2 * x.r.Radius.Millimetres / x.W))]);

    private static BeamAperture Aperture(double a, double w, double uw, double d, double u) =>
        new("hole", Some.Mm(a), MeasuredLength.FromMillimetres(w, uw), Some.Point(d, 0, u));
}
