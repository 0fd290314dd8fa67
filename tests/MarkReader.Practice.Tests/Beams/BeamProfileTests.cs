using CsCheck;
using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Practice.Tests.Beams;

/// <summary>D² = 2w²·ln(F/Fth): Liu, Opt. Lett. 7, 196 (1982).</summary>
public sealed class BeamProfileTests
{
    [Theory]
    [InlineData(1.5, 0.900517)]
    [InlineData(2, 1.177410)]
    [InlineData(Math.E, 1.414214)]
    [InlineData(5, 1.794123)]
    [InlineData(10, 2.145966)]
    public void The_mark_of_a_Gaussian_beam_is_as_wide_as_Liu_says(double overThreshold, double diameterOverRadius)
    {
        const double W = 2.5, Threshold = 15;
        double energy = overThreshold * Threshold * Math.PI * W * W / 2; // peak fluence 2E/(πw²)
        Assert.Equal(diameterOverRadius, Profile(BeamMode.Gaussian).MarkDiameter(W, energy, Threshold) / W, 1e-6);
    }

    [Fact]
    public void At_the_edge_of_a_ring_mode_s_mark_the_fluence_is_the_threshold_and_falls_outwards() =>
        Gen.Select(Gen.Double[0.5, 5], Gen.Double[1.02, 200], Gen.Double[1, 50]).Sample((w, over, threshold) =>
        {
            double energy = over * Math.E * threshold * Math.PI * w * w / 2; // the crest's fluence is 2E/(πw²)/e
            double radius = Profile(BeamMode.Ring).MarkDiameter(w, energy, threshold) / 2;
            double Fluence(double r) => 2 * energy / (Math.PI * w * w) * (2 * r * r / (w * w)) * Math.Exp(-2 * r * r / (w * w));
            return Math.Abs((Fluence(radius) / threshold) - 1) < 1e-9 && Fluence(1.001 * radius) < threshold && radius > w / Math.Sqrt(2);
        });

    [Theory]
    [InlineData(BeamMode.Gaussian, 0.999)]
    [InlineData(BeamMode.Ring, 2.71)]
    public void A_pulse_below_the_threshold_leaves_no_mark(BeamMode mode, double overThreshold)
    {
        BeamProfile profile = Profile(mode);
        Assert.Equal(0, profile.MarkDiameter(2.5, overThreshold * 15 * Math.PI * 2.5 * 2.5 / 2, 15));
        PracticeMachine weak = Some.Straight() with { Beam = profile, Pulse = new(Energy: overThreshold * 15 * Math.PI * 2.5 * 2.5 / 2, Threshold: 15) };
        Assert.False(weak.TrueMark(Some.One(100)).TryGet(out _, out Failure? failure));
        Assert.Equal(PracticeFailures.PulseTooWeak, failure.Code);
        PracticeMachine strong = weak with { Pulse = weak.Pulse with { Energy = 3 * weak.Pulse.Energy } };
        Assert.True(strong.TrueMark(Some.One(100)).ValueOrThrow().Diameter.Millimetres > 1);
    }

    [Fact]
    public void The_beam_widens_along_its_path()
    {
        BeamProfile profile = new(BeamMode.Gaussian, Some.Mm(2.5), Some.Mrad(1.349634));
        // 10.6 µm, M² = 1, waist of 2.5 mm: half-divergence 1.349634 mrad and w(1 m) = 2.841041 mm.
        Assert.Equal(2.841041, profile.RadiusAfter(Some.Mm(1000)).Millimetres, 1e-6);
        PracticeMachine machine = Some.Straight();
        BeamPassage passage = machine.PassageAt(BeamPlace.Tape, Some.Two(500, 400)).ValueOrThrow();
        Assert.Equal(machine.Beam.RadiusAfter(Some.Mm(150 + 480 + 560)).Millimetres, passage.BeamRadius.Millimetres, 1e-12);
    }

    [Fact]
    public void On_tape_at_45_degrees_the_fluence_is_less_by_the_cosine()
    {
        PracticeMachine square = Some.Straight(), tilted = Some.Straight(incidenceOne: 45);
        PracticeMachine weaker = square with { Pulse = square.Pulse with { Energy = square.Pulse.Energy * Math.Sqrt(0.5) } };
        Assert.Equal(
            weaker.TrueMark(Some.One(100)).ValueOrThrow().Diameter.Millimetres, tilted.TrueMark(Some.One(100)).ValueOrThrow().Diameter.Millimetres, 1e-12);
    }

    private static BeamProfile Profile(BeamMode mode) => new(mode, Some.Mm(2.5), Angle.Zero);
}
