using MarkReader.Metrology.Texts;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>How a study is evaluated.</summary>
public sealed record GaugeOptions
{
    public static GaugeOptions Default { get; } = new();

    /// <summary>The interaction is pooled with repeatability when the probability of its F is above this; 0.25 in AIAG's example, 0.05 in others. 1 never pools.</summary>
    public double PoolAbove { get; init; } = 0.25;

    /// <summary>What parts and operators are tested against when nothing is pooled.</summary>
    public AnovaDenominator Denominator { get; init; } = AnovaDenominator.Interaction;

    /// <summary>Whether a repeat is one photo of all parts, whose errors they share: it is then a source of its own.</summary>
    public bool Photos { get; init; }

    /// <summary>Of the intervals.</summary>
    public double Confidence { get; init; } = 0.95;
}

/// <summary>A repeatability and reproducibility study of one quantity, by analysis of variance.</summary>
/// <remarks>
/// Table, pooling and percentages as in AIAG, Measurement Systems Analysis, 4th ed. 2010, ch. III (data and results through public test suites that quote it);
/// intervals by <see cref="VarianceIntervals"/>. Parts, operators and repeats are taken as samples of many (random effects).
/// </remarks>
public sealed class GaugeStudy
{
    private readonly Dictionary<StudyPart, VarianceComponent> _components;

    private GaugeStudy(CrossedDesign design, CrossedSquares squares, GaugeOptions options, bool pooled, AnovaTable table)
    {
        Design = design;
        Squares = squares;
        Options = options;
        IsPooled = pooled;
        Rows = table.Rows(pooled);
        Size = new(design.Parts.Count, design.Operators.Count, design.Repeats);
        CrossedSquares points = pooled ? squares with { Interaction = table.PooledSquare, Repeat = table.PooledSquare } : squares;
        _components = new StudyPart[]
        {
            StudyPart.Within, StudyPart.Operator, StudyPart.Interaction, StudyPart.Parts,
        }.Concat(options.Photos ? [StudyPart.Photo] : Array.Empty<StudyPart>()).ToDictionary(p => p, p => Single(p, points));
        // Sums of parts that stand as 0 where they were negative.
        Add(StudyPart.Repeatability, StudyPart.Within, StudyPart.Photo);
        Add(StudyPart.Reproducibility, StudyPart.Operator, StudyPart.Interaction);
        Add(StudyPart.Gauge, StudyPart.Repeatability, StudyPart.Reproducibility);
        Total = this[StudyPart.Gauge].Variance + this[StudyPart.Parts].Variance;
    }

    public CrossedDesign Design { get; }

    public StudySize Size { get; }

    public GaugeOptions Options { get; }

    /// <summary>Before pooling.</summary>
    public CrossedSquares Squares { get; }

    /// <summary>The table; with a row for what was pooled.</summary>
    public IReadOnlyList<AnovaRow> Rows { get; }

    /// <summary>Whether the interaction was taken as repeatability.</summary>
    public bool IsPooled { get; }

    /// <summary>All components; without photos there is none of them and Within equals Repeatability.</summary>
    public IReadOnlyDictionary<StudyPart, VarianceComponent> Components => _components;

    public VarianceComponent this[StudyPart part] => _components[part];

    /// <summary>Variance of a reading, parts and gauge.</summary>
    public double Total { get; }

    /// <summary>Number of distinct categories, ⌊1.41·PV/GRR⌋; null when the gauge shows no scatter.</summary>
    public int? Categories => this[StudyPart.Gauge].Variance > 0 ? (int)Math.Min(1e6, Math.Floor(1.41 * this[StudyPart.Parts].StandardDeviation / this[StudyPart.Gauge].StandardDeviation)) : null;

    /// <summary>A part of the variance in % of the total; 0 when there is none.</summary>
    public double Contribution(StudyPart part) => Total > 0 ? 100 * this[part].Variance / Total : 0;

    /// <summary>A standard deviation in % of the total one; 0 when there is none.</summary>
    public double StudyVariation(StudyPart part) => Total > 0 ? 100 * Math.Sqrt(this[part].Variance / Total) : 0;

    /// <summary>Six standard deviations in % of a full tolerance width (common practice), with its interval.</summary>
    /// <param name="width">From one limit to the other, above zero, in the readings' unit.</param>
    public (double Percent, MonteCarlo.Interval Interval) OfTolerance(StudyPart part, double width)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        VarianceComponent component = this[part];
        double scale = 600 / width;
        return (scale * component.StandardDeviation, new(scale * component.DeviationInterval.Low, scale * component.DeviationInterval.High));
    }

    /// <summary>The study of these readings.</summary>
    public static Outcome<GaugeStudy> Run(IReadOnlyList<Reading> readings, GaugeOptions? options = null)
    {
        options ??= GaugeOptions.Default;
        if (options.PoolAbove is not (>= 0 and <= 1))
            return new Failure(StudyFailures.OptionInvalid, MetrologyTexts.Get("gaugeStudy.limitForPoolingNotBetween"), MetrologyTexts.Get("gaugeStudy.giveProbabilitySuchAsNever"));
        return CrossedDesign.Of(readings, options.Photos).TryGet(out CrossedDesign? design, out Failure? failure) ? Of(design, options) : failure;
    }

    private static GaugeStudy Of(CrossedDesign design, GaugeOptions options)
    {
        CrossedSquares squares = CrossedSquares.Of(design, options.Photos);
        AnovaTable table = new(squares, options.Denominator);
        return new(design, squares, options, table.Interaction is { } test && test.Probability > options.PoolAbove, table);
    }

    private VarianceComponent Single(StudyPart part, CrossedSquares points)
    {
        double estimate = GaugeModel.Terms(part, points, Size).Sum(t => t.Value);
        bool gone = part == StudyPart.Interaction && IsPooled;
        return new(part, gone ? 0 : Math.Max(0, estimate), Interval(part), !gone && estimate < 0);
    }

    private void Add(StudyPart sum, StudyPart first, StudyPart second)
    {
        double variance = this[first].Variance + (_components.TryGetValue(second, out VarianceComponent? other) ? other.Variance : 0);
        _components.Add(sum, new(sum, variance, Holding(Interval(sum), this[first].Interval, other?.Interval), false));
    }

    // A sum of variances is no less than either: what holds of a part holds of it.
    private static MonteCarlo.Interval Holding(MonteCarlo.Interval sum, MonteCarlo.Interval first, MonteCarlo.Interval? second) =>
        new(Math.Max(sum.Low, Math.Max(first.Low, second?.Low ?? 0)), Math.Max(sum.High, Math.Max(first.High, second?.High ?? 0)));

    private MonteCarlo.Interval Interval(StudyPart part) => VarianceIntervals.Of(GaugeModel.Terms(part, Squares, Size), Options.Confidence);
}
