using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Texts;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>How many pulses a standard deviation needs.</summary>
/// <param name="Wanted">Half-width of its 95 % interval, as a part of it.</param>
/// <param name="Pulses">Fewest pulses that reach it, when both axes scatter alike and are taken together.</param>
/// <param name="Factors">The interval that they give, as factors of the standard deviation.</param>
public sealed record PulsePlan(double Wanted, int Pulses, Interval Factors)
{
    /// <param name="wanted">0.05 to 1.</param>
    public static Outcome<PulsePlan> For(double wanted)
    {
        if (wanted is not (>= 0.05 and <= 1))
            return new Failure(StudyFailures.OptionInvalid, MetrologyTexts.Get("pulsePlan.wantedHalfWidthNotBetween"), MetrologyTexts.Get("pulsePlan.giveAsPartStandardDeviation"));
        for (int n = PulseScatter.LeastPulses; ; n++)
        {
            Interval factors = FactorsOf(n);
            if (factors.Width / 2 <= wanted)
                return new PulsePlan(wanted, n, factors);
        }
    }

    /// <summary>The interval that so many pulses give, as factors of the standard deviation.</summary>
    /// <param name="pulses">Two at least.</param>
    public static Interval FactorsOf(int pulses)
    {
        // Two axes have twice the degrees of freedom of one.
        Interval variance = VarianceIntervals.Of(new MeanSquare(1, 2 * (pulses - 1)));
        return new(Math.Sqrt(variance.Low), Math.Sqrt(variance.High));
    }
}
