using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Studies;

/// <summary>What observed scatter says about the uncertainty that was stated for each reading.</summary>
public enum StatedVerdict
{
    /// <summary>The whole interval of the ratio lies above 1: the readings scatter more than was stated.</summary>
    TooSmall,

    /// <summary>The interval holds 1.</summary>
    Agrees,

    /// <summary>The whole interval lies below 1: what is the same in all readings, or too much caution, is in the statement.</summary>
    Larger,
}

/// <summary>Observed standard deviation over stated standard uncertainty.</summary>
/// <param name="Stated">Root mean square of the stated standard uncertainties, above zero.</param>
/// <param name="Ratio">Observed over stated.</param>
/// <param name="Interval">Of the ratio, from that of the observed variance; the statement is taken as exact.</param>
public sealed record StatedComparison(double Stated, double Ratio, Interval Interval)
{
    public StatedVerdict Verdict => Interval.Low > 1 ? StatedVerdict.TooSmall : Interval.High < 1 ? StatedVerdict.Larger : StatedVerdict.Agrees;

    /// <summary>The comparison; null when no uncertainty was stated.</summary>
    public static StatedComparison? Of(VarianceComponent observed, double stated) => stated > 0
        ? new(stated, observed.StandardDeviation / stated, new(observed.DeviationInterval.Low / stated, observed.DeviationInterval.High / stated))
        : null;
}
