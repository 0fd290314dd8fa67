using MarkReader.Alignment.Estimates;
using MathNet.Numerics.Distributions;

namespace MarkReader.Alignment.Verdicts;

/// <summary>A normally distributed value against one limit or two (JCGM 106:2012, 7.3 and 7.4).</summary>
public static class ScalarConformity
{
    /// <param name="value">The measured value.</param>
    /// <param name="uncertainty">Its standard uncertainty, zero or more, in the same unit.</param>
    /// <param name="lower">The lower limit; minus infinity for none.</param>
    /// <param name="upper">The upper limit; plus infinity for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not one, the uncertainty is negative, or the limits are in the wrong order.</exception>
    public static Conformity Of(double value, double uncertainty, double lower, double upper)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "The value must be a finite number.");
        if (!(uncertainty >= 0 && double.IsFinite(uncertainty)))
            throw new ArgumentOutOfRangeException(nameof(uncertainty), uncertainty, "The uncertainty must be zero or more.");
        if (!(lower < upper))
            throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper limit must be above the lower one.");
        if (uncertainty == 0)
            return value >= lower && value <= upper ? new(Verdict.Within, 1, 1) : new(Verdict.Outside, 0, 0);

        double probability = BivariateNormal.NormalBetween((lower - value) / uncertainty, (upper - value) / uncertainty);
        double beyond = Math.Max(lower - value, value - upper) / uncertainty;
        // The true value that is most easily taken for one outside lies on the limit; the other limit adds what errs that way.
        double level = beyond <= 0 ? 1 : Normal.CDF(0, 1, -beyond) + Normal.CDF(0, 1, -beyond - ((upper - lower) / uncertainty));
        double guard = DecisionRule.GuardBand(uncertainty);
        Verdict verdict = value >= lower + guard && value <= upper - guard ? Verdict.Within
            : level <= DecisionRule.LargestError ? Verdict.Outside
            : Verdict.Undecided;
        return new(verdict, probability, level);
    }

    /// <summary>A value that may not exceed an upper limit.</summary>
    public static Conformity AtMost(double value, double uncertainty, double upper) => Of(value, uncertainty, double.NegativeInfinity, upper);

    /// <summary>A value that may not fall below a lower limit, such as the transmitted part of the power.</summary>
    public static Conformity AtLeast(double value, double uncertainty, double lower) => Of(value, uncertainty, lower, double.PositiveInfinity);
}
