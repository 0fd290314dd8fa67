using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Aiming;

public sealed class RailStraightnessTests
{
    private static readonly BeamLine s_beam = new(1, 0.006, -0.5, -0.004);

    [Fact]
    public void Bow_of_exact_marks_is_that_of_the_rail()
    {
        // A parabola of height 0.3 along u and −0.1 along v half-way between 80 and 480 mm.
        Observation[] marks = [.. new double[] { 80, 180, 280, 380, 480 }.Select(p =>
        {
            double part = (p - 80) / 400;
            return Some.Mark(p, 1 + (0.006 * p) + (1.2 * part * (1 - part)), -0.4 * part * (1 - part), 0.02);
        })];
        Straightness straightness = RailStraightness.Of(Leg.Square, marks).ValueOrThrow();
        Assert.Equal(0.3, straightness.Bow.U, 1e-6);
        Assert.Equal(-0.1, straightness.Bow.V, 1e-6);
        Assert.True(straightness.IsBent);
        Assert.Equal(4, straightness.Rest.DegreesOfFreedom);
        Assert.Equal(0, straightness.Rest.ChiSquare, 1e-6);
    }

    /// <summary>Three marks of scatter σ: the middle one against the mean of the outer two, σ·√1.5.</summary>
    [Fact]
    public void Uncertainty_of_three_marks_is_the_closed_form() => Assert.Equal(
        0.02 * Math.Sqrt(1.5), Math.Sqrt(RailStraightness.Of(Leg.Square, [Some.Mark(80, 1, 0, 0.02), Some.Mark(280, 1, 0, 0.02), Some.Mark(480, 1, 0, 0.02)]).ValueOrThrow().Covariance.Vv), 1e-9);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 45)]
    public void A_straight_rail_is_called_bent_in_about_1_percent(double pathUncertainty, double incidence)
    {
        SimulatedLeg leg = new(new MersenneTwister(33, threadSafe: false), 0.05, pathUncertainty, incidence);
        double[] paths = [80, 180, 280, 380, 480];
        const int trials = 1000;
        int bent = Enumerable.Range(0, trials).Count(_ => RailStraightness.Of(leg.Leg, leg.Marks(s_beam, leg.Paths(paths), paths)).ValueOrThrow().IsBent);
        Assert.InRange(bent, 1, 22);
    }

    [Fact]
    public void Two_stations_say_nothing_about_a_bend()
    {
        Assert.False(RailStraightness.Of(Leg.Square, [Some.Mark(80, 0, 0), Some.Mark(480, 0, 0), Some.Mark(480, 0, 0)]).TryGet(out _, out Failure? failure));
        Assert.Equal("STRAIGHTNESS_STATIONS", failure.Code.Name);
    }
}
