using MarkReader.Alignment.Survey;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Survey;

/// <summary>Rates over simulated machines; the legs are left with slopes as alignment leaves them.</summary>
public sealed class TwistRatesTests
{
    private const int Machines = 3000;

    // Marks of 0.05 mm at four corners: the twist is known to 0.1 mm.
    private const double MarkUncertainty = 0.05, TwistUncertainty = 2 * MarkUncertainty;

    [Theory]
    [InlineData(0)]
    [InlineData(0.15)]
    [InlineData(3)]
    public void False_twist_is_found_in_at_most_5_percent(double walkLeft)
    {
        MersenneTwister random = new(21, threadSafe: false);
        int twisted = Enumerable.Range(0, Machines).Count(_ =>
            Diagnose(Left(random, walkLeft), random).Findings.Any(f => f.Fault == SurveyFault.Twist));
        // The test's level is 4 %, give or take three standard deviations of the count.
        Assert.InRange(twisted, 0.029 * Machines, 0.05 * Machines);
    }

    [Fact]
    public void A_level_machine_has_any_finding_in_at_most_5_percent()
    {
        MersenneTwister random = new(22, threadSafe: false);
        int found = Enumerable.Range(0, Machines).Count(_ => Diagnose(new(), random).Findings.Count > 0);
        Assert.InRange(found, 0.03 * Machines, 0.06 * Machines);
    }

    /// <summary>Twist of three times its uncertainty up to 1 mm; told from slope: it is found, as the first finding, at its corner and with its sign.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    public void Twist_above_three_times_its_uncertainty_is_told_from_slope_in_95_percent(double walkLeft)
    {
        MersenneTwister random = new(23, threadSafe: false);
        int told = 0, corner = 0;
        for (int i = 0; i < Machines; i++)
        {
            double height = ((3 * TwistUncertainty) + (random.NextDouble() * (1 - (3 * TwistUncertainty)))) * (random.Next(2) == 0 ? 1 : -1);
            Surveys machine = Left(random, walkLeft) with { Corner = BedCorners.All[random.Next(4)], Height = height };
            if (Diagnose(machine, random).First is TwistFinding twist)
            {
                told++;
                corner += twist.Corner == machine.Corner && twist.IsHigh == height > 0 ? 1 : 0;
            }
        }

        Assert.True(told >= 0.95 * Machines, $"told {told} of {Machines}");
        Assert.True(corner >= 0.90 * Machines, $"right corner {corner} of {Machines}");
    }

    [Fact]
    public void Slope_without_twist_is_told_from_twist_in_95_percent()
    {
        MersenneTwister random = new(24, threadSafe: false);
        int told = Enumerable.Range(0, Machines).Count(_ =>
        {
            double walk = 0.4 + random.NextDouble(), bearing = 2 * Math.PI * random.NextDouble();
            Surveys machine = new(walk * Math.Cos(bearing), walk * Math.Sin(bearing));
            return Diagnose(machine, random) is { First: SlopeFinding { Leg: 1 } } d && d.Findings.All(f => f.Fault != SurveyFault.Twist);
        });
        Assert.True(told >= 0.95 * Machines, $"told {told} of {Machines}");
    }

    private static Surveys Left(MersenneTwister random, double walk)
    {
        double Walk() => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1) * walk;
        return new(Walk(), Walk(), Walk(), Walk());
    }

    private static SurveyDiagnosis Diagnose(Surveys machine, MersenneTwister random) =>
        CornerSurvey.Diagnose(Surveys.Bed, machine.Marks(Surveys.Corners, MarkUncertainty, random)).ValueOrThrow();
}
