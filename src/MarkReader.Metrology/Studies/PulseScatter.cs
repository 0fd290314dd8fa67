using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Texts;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>How far marks of repeated pulses at one station scatter.</summary>
/// <remarks>The marks are taken as independent and normally distributed about one place.</remarks>
public sealed class PulseScatter
{
    /// <summary>Fewest pulses, and most.</summary>
    public const int LeastPulses = 3, MostPulses = 10_000;

    private PulseScatter(IReadOnlyList<MeasuredPoint> marks, CardPoint mean, Covariance2 observed, Covariance2 measurement)
    {
        Marks = marks;
        Mean = mean;
        Observed = observed;
        Measurement = measurement;
        U = AxisScatter.Of(observed.Uu, measurement.Uu, marks.Count - 1);
        V = AxisScatter.Of(observed.Vv, measurement.Vv, marks.Count - 1);
        // Degrees of freedom of a trace: G. E. P. Box, Ann. Math. Stat. 25 (1954) 290–302.
        double trace = observed.Uu + observed.Vv, squares = (observed.Uu * observed.Uu) + (2 * observed.Uv * observed.Uv) + (observed.Vv * observed.Vv);
        double dof = squares > 0 ? (marks.Count - 1) * trace * trace / squares : 2 * (marks.Count - 1);
        Component = AxisScatter.Of(trace / 2, (measurement.Uu + measurement.Vv) / 2, dof);
        Outlier = PulseOutlier.Of(marks, mean, observed);
    }

    /// <summary>The marks, each with that part of its uncertainty that differs from mark to mark.</summary>
    public IReadOnlyList<MeasuredPoint> Marks { get; }

    public CardPoint Mean { get; }

    /// <summary>Sample covariance of the marks' places, mm².</summary>
    public Covariance2 Observed { get; }

    /// <summary>Mean of the marks' own covariances.</summary>
    public Covariance2 Measurement { get; }

    /// <summary>Along u.</summary>
    public AxisScatter U { get; }

    /// <summary>Along v.</summary>
    public AxisScatter V { get; }

    /// <summary>Of either component, root mean square over the two: what a visit takes as the type A component of a mark (its pulseScatter).</summary>
    public AxisScatter Component { get; }

    /// <summary>Standard deviations along the principal axes, and the direction of the larger.</summary>
    public Ellipse Principal => Observed.Ellipse(1);

    /// <summary>The mark that lies farthest out for its number; null when there are too few to tell.</summary>
    public PulseOutlier? Outlier { get; }

    /// <summary>Whether no mark differs from another: such marks were rounded or are copies, and tell nothing of the scatter.</summary>
    public bool IsStill => Marks.All(m => m.Point == Marks[0].Point);

    /// <summary>The axis along which marks scatter clearly more, more than twice as far (common practice, no source); null when neither does, or when the marks' own uncertainty explains all scatter.</summary>
    public AxisScatter? LargerAxis
    {
        get
        {
            (AxisScatter larger, AxisScatter smaller) = U.Corrected >= V.Corrected ? (U, V) : (V, U);
            return !IsStill && Component.Corrected > 0 && larger.Corrected > 2 * smaller.Corrected ? larger : null;
        }
    }

    /// <summary>
    /// The value to put down as a machine's pulseScatter, which is one for both axes: that of the larger axis where they clearly differ, else both together;
    /// where the marks' own uncertainty explains all scatter, the interval's upper end; 0 when the marks tell nothing.
    /// </summary>
    public Length ForVisits => Length.FromMillimetres(IsStill ? 0 : LargerAxis?.Corrected ?? (Component.Corrected > 0 ? Component.Corrected : Component.CorrectedInterval.High));

    /// <summary>Beam positional stability along u (ISO 11670): four standard deviations.</summary>
    public Length PositionalStabilityU => Length.FromMillimetres(4 * U.Corrected);

    /// <summary>The same along v.</summary>
    public Length PositionalStabilityV => Length.FromMillimetres(4 * V.Corrected);

    /// <summary>Both axes together, 2√2·√(su² + sv²); the form is from memory of ISO 11670, not read there.</summary>
    public Length PositionalStability => Length.FromMillimetres(2 * Math.Sqrt(2) * Math.Sqrt((U.Corrected * U.Corrected) + (V.Corrected * V.Corrected)));

    /// <summary>Angular stability along u and v, two standard deviations of the angle, when all scatter is taken as turning about the path's beginning; the form is from memory of ISO 11670.</summary>
    public (Angle U, Angle V) AngularStability(Length path) => (Turn(U, path), Turn(V, path));

    /// <summary>The scatter of these marks.</summary>
    public static Outcome<PulseScatter> Of(IReadOnlyList<MeasuredPoint> marks)
    {
        if (marks.Count < LeastPulses)
            return new Failure(StudyFailures.TooFewPulses, MetrologyTexts.Word("pulseScatter.tooFewMarks", marks.Count), MetrologyTexts.Get("pulseScatter.giveMarksAtLeastThree"));
        if (marks.Count > MostPulses)
            return new Failure(StudyFailures.ReadingInvalid, MetrologyTexts.Word("pulseScatter.thereMoreThanMarks", MostPulses), MetrologyTexts.Get("pulseScatter.giveFewer"));
        int n = marks.Count;
        CardPoint mean = new(marks.Average(m => m.Point.U), marks.Average(m => m.Point.V));
        CardVector[] d = [.. marks.Select(m => m.Point - mean)];
        Covariance2 observed = new(d.Sum(x => x.U * x.U) / (n - 1), d.Sum(x => x.U * x.V) / (n - 1), d.Sum(x => x.V * x.V) / (n - 1));
        return new PulseScatter(marks, mean, observed, 1.0 / n * marks.Select(m => m.Covariance).Aggregate((a, b) => a + b));
    }

    private static Angle Turn(AxisScatter axis, Length path)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(path.Millimetres);
        return Angle.FromRadians(2 * axis.Corrected / path.Millimetres);
    }
}

/// <summary>Scatter along one axis, mm.</summary>
/// <param name="Observed">Standard deviation of the marks.</param>
/// <param name="Interval">Its 95 % confidence interval (χ²).</param>
/// <param name="Corrected">With the measurement's own uncertainty taken off in squares; 0 where that is the larger.</param>
/// <param name="CorrectedInterval">The interval with the same taken off; the measurement's uncertainty is taken as known.</param>
/// <param name="Dof">Degrees of freedom.</param>
public sealed record AxisScatter(double Observed, Interval Interval, double Corrected, Interval CorrectedInterval, double Dof)
{
    internal static AxisScatter Of(double variance, double own, double dof)
    {
        Interval interval = VarianceIntervals.Of(new MeanSquare(variance, dof));
        double Less(double v) => Math.Sqrt(Math.Max(0, v - own));
        return new(Math.Sqrt(variance), new(Math.Sqrt(interval.Low), Math.Sqrt(interval.High)), Less(variance), new(Less(interval.Low), Less(interval.High)), dof);
    }
}
