using CsCheck;
using MarkReader.Alignment.Centring;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Centring;

public sealed class ApertureCentringTests
{
    private static readonly TubeSupports s_supports = new(MeasuredLength.FromMillimetres(200, 2), MeasuredLength.FromMillimetres(1000, 2));

    [Fact]
    public void A_mark_to_the_right_and_too_high_moves_the_plate_and_shims_the_target()
    {
        CentringAdvice advice = Advise(1.2, 0.8);
        Assert.Equal(Verdict.Outside, advice.Verdict.Verdict);
        Assert.Equal(2, advice.Steps.Count);
        Assert.Equal(1.2, Assert.IsType<MovePlate>(advice.Steps[0]).Distance.Value.Millimetres, 1e-12);
        Assert.Equal(0.8, Assert.IsType<ShimTarget>(advice.Steps[1]).Height.Value.Millimetres, 1e-12);
        Assert.Equal(0.05 * Math.Sqrt(2), ((ShimTarget)advice.Steps[1]).Height.Uncertainty.Millimetres, 1e-12);
        Assert.All(advice.Steps, s => Assert.Equal([JobStep.LegThree], s.Stale));
        Assert.Equal(0, advice.Expected.Vector.Magnitude, 1e-12);
    }

    [Fact]
    public void A_mark_too_low_raises_the_tube_s_end_and_makes_both_legs_stale()
    {
        CentringAdvice advice = Advise(0, -2);
        RaiseTube raise = Assert.IsType<RaiseTube>(Assert.Single(advice.Steps));
        Assert.Equal(2, raise.BeamRise.Value.Millimetres, 1e-12);
        // (1000 − 200)/1000 of the rise; the beam tilts by 2 mm in 1000 mm.
        Assert.Equal(1.6, raise.Height!.Value.Millimetres, 1e-12);
        Assert.Equal(2, raise.Tilt.Milliradians, 1e-5);
        Assert.Equal([JobStep.LegOne, JobStep.LegTwo, JobStep.Survey, JobStep.Centring, JobStep.LegThree], raise.Stale);
    }

    [Fact]
    public void Without_the_supports_the_whole_tube_is_raised_by_the_beam_s_rise()
    {
        RaiseTube raise = Assert.IsType<RaiseTube>(Assert.Single(ApertureCentring.Advise(Some.Point(0, -2), Some.Point(0, 0), Some.Mm(0.5)).ValueOrThrow().Steps));
        Assert.Null(raise.Height);
        Assert.Equal(Angle.Zero, raise.Tilt);
    }

    /// <summary>The line through the raised front support and the fixed rear one, at mirror one.</summary>
    [Fact]
    public void The_front_support_raised_as_advised_raises_the_beam_at_mirror_one_as_wanted() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[60, 1500], Gen.Double[0.1, 10]).Sample((front, between, rise) =>
        {
            TubeSupports supports = new(MeasuredLength.FromMillimetres(front, 0), MeasuredLength.FromMillimetres(front + between, 0));
            double h = supports.FrontRise(MeasuredLength.FromMillimetres(rise, 0)).Value.Millimetres;
            double slope = -h / between, atMirror = h - (slope * front);
            return Math.Abs(atMirror - rise) < 1e-9 && Math.Abs(supports.Tilt(Some.Mm(rise)).Radians - Math.Atan(-slope)) < 1e-12;
        });

    [Fact]
    public void Uncertainties_of_rise_and_supports_go_into_the_height()
    {
        MeasuredLength h = s_supports.FrontRise(MeasuredLength.FromMillimetres(2, 0.1));
        double By(Func<double, double> height) => (height(1e-4) - height(-1e-4)) / 2e-4;
        double front = By(d => (2 * (1000 - 200 - d)) / 1000), rear = By(d => 2 * (800 + d) / (1000 + d));
        Assert.Equal(Math.Sqrt((0.08 * 0.08) + (4 * front * front) + (4 * rear * rear)), h.Uncertainty.Millimetres, 1e-9);
    }

    [Fact]
    public void A_mark_within_the_tolerance_asks_for_nothing()
    {
        CentringAdvice advice = Advise(0.1, -0.1);
        Assert.Equal(Verdict.Within, advice.Verdict.Verdict);
        Assert.Empty(advice.Steps);
    }

    [Fact]
    public void An_offset_that_is_not_significant_asks_for_no_step_but_is_undecided()
    {
        CentringAdvice advice = ApertureCentring.Advise(Some.Point(0.3, -0.3, 0.3), Some.Point(0, 0, 0), Some.Mm(0.5), s_supports).ValueOrThrow();
        Assert.Equal(Verdict.Undecided, advice.Verdict.Verdict);
        Assert.Empty(advice.Steps);
    }

    [Theory]
    [InlineData("CENTRING_OFFSET_INVALID", 1e6, 0.5, 200, 1000)]
    [InlineData("CENTRING_TOLERANCE_INVALID", 1, 0, 200, 1000)]
    [InlineData("TUBE_SUPPORTS_INVALID", 1, 0.5, -5, 1000)]
    [InlineData("TUBE_SUPPORTS_INVALID", 1, 0.5, 1000, 200)]
    [InlineData("TUBE_SUPPORTS_INVALID", 1, 0.5, 200, 220)]
    public void Impossible_numbers_are_refused(string code, double offset, double tolerance, double front, double rear)
    {
        TubeSupports supports = new(MeasuredLength.FromMillimetres(front, 0), MeasuredLength.FromMillimetres(rear, 0));
        Assert.False(ApertureCentring.Advise(Some.Point(offset, 0), Some.Point(0, 0), Some.Mm(tolerance), supports).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    private static CentringAdvice Advise(double u, double v) =>
        ApertureCentring.Advise(Some.Point(u + 3, v - 1, 0.05), Some.Point(3, -1, 0.05), Some.Mm(0.5), s_supports).ValueOrThrow();
}
