using MarkReader.Metrology.MonteCarlo;
using MathNet.Numerics.Distributions;

namespace MarkReader.Metrology.Coverage;

/// <summary>The exact interval for a probability of which k successes in n trials are known.</summary>
/// <remarks>C. J. Clopper and E. S. Pearson, "The use of confidence or fiducial limits illustrated in the case of the binomial", Biometrika 26 (1934) 404–413, doi:10.1093/biomet/26.4.404; by the quantiles of the beta distribution.</remarks>
public static class ClopperPearson
{
    /// <summary>The two-sided interval; both tails hold at most (1 − confidence)/2, so that it is never too short.</summary>
    /// <param name="successes">0 to <paramref name="trials"/>.</param>
    /// <param name="trials">At least 1.</param>
    /// <param name="confidence">Between 0 and 1, neither of them.</param>
    public static Interval Interval(int successes, int trials, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        if (confidence is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence between 0 and 1 is needed.");
        double tail = (1 - confidence) / 2;
        return new(
            successes == 0 ? 0 : Beta.InvCDF(successes, trials - successes + 1, tail),
            successes == trials ? 1 : Beta.InvCDF(successes + 1, trials - successes, 1 - tail));
    }
}
