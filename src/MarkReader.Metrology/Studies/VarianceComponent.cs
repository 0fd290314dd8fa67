using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Studies;

/// <summary>An estimated part of the variance.</summary>
/// <param name="Variance">At least 0, in the square of the readings' unit.</param>
/// <param name="Interval">The confidence interval of the variance; from the mean squares before pooling, so that the data's own choice to pool does not narrow it.</param>
/// <param name="WasNegative">Whether the estimate was below zero and stands as 0.</param>
public sealed record VarianceComponent(StudyPart Part, double Variance, Interval Interval, bool WasNegative)
{
    public double StandardDeviation => Math.Sqrt(Variance);

    /// <summary>The interval of the standard deviation.</summary>
    public Interval DeviationInterval => new(Math.Sqrt(Interval.Low), Math.Sqrt(Interval.High));
}
