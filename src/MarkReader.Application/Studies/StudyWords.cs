using System.Globalization;
using MarkReader.Metrology.Studies;

namespace MarkReader.Application.Studies;

/// <summary>A study in words, for the command line and for paper.</summary>
public static class StudyWords
{
    /// <summary>A gauge of more than this part of the tolerance is too coarse, % (AIAG's guide; common practice).</summary>
    public const double MostPercent = 30;

    public static string Extent(StudyAnswer answer)
    {
        StudySize size = answer.U.Study.Size;
        string times = answer.Request.Readings.Photos ? $"{size.Repeats} photos each" : $"{size.Repeats} readings each";
        return $"{size.Operators} people or phones, {times}, {size.Parts} marks: {size.Readings} readings of u and v";
    }

    /// <summary>The gauge of the worse axis against the tolerance.</summary>
    public static string Result(StudyAnswer answer)
    {
        StudyAxis worse = answer.Worse;
        VarianceComponent gauge = worse.Study[StudyPart.Gauge];
        (double percent, Metrology.MonteCarlo.Interval interval) = worse.Study.OfTolerance(StudyPart.Gauge, FullWidth(answer));
        return $"Along {worse.Axis}, the worse axis, a reading has a standard deviation of {Mm(gauge.StandardDeviation)} mm ({Interval(gauge)}) over people and photos; six of them are {Percent(percent)} % ({Percent(interval.Low)} to {Percent(interval.High)} %) of the full tolerance width of {Short(FullWidth(answer))} mm.";
    }

    public static string Word(StudyAnswer answer) => Verdict(answer) switch
    {
        StudyVerdict.Fits => "Fit for the tolerance",
        StudyVerdict.TooCoarse => "Too coarse for the tolerance",
        _ => "Undecided",
    };

    public static string Claim(StudyAnswer answer) => Verdict(answer) switch
    {
        StudyVerdict.Fits => $"At most {MostPercent} % of its width, also at the interval's upper end.",
        StudyVerdict.TooCoarse => $"More than {MostPercent} % of its width, also at the interval's lower end.",
        _ => $"The interval reaches over {MostPercent} % of the tolerance's width. More people or phones narrow it most.",
    };

    /// <summary>A part in % of the gauge's variance; null for what is no part of it, or without any scatter.</summary>
    public static double? Share(GaugeStudy study, StudyPart part) =>
        part == StudyPart.Parts || study[StudyPart.Gauge].Variance == 0 ? null : 100 * study[part].Variance / study[StudyPart.Gauge].Variance;

    public static StudyVerdict Verdict(StudyAnswer answer)
    {
        Metrology.MonteCarlo.Interval interval = answer.Worse.Study.OfTolerance(StudyPart.Gauge, FullWidth(answer)).Interval;
        return interval.High <= MostPercent ? StudyVerdict.Fits : interval.Low > MostPercent ? StudyVerdict.TooCoarse : StudyVerdict.Undecided;
    }

    /// <summary>What the scatter says of the uncertainty that the program stated; null when none was stated.</summary>
    public static string? Stated(StudyAxis axis)
    {
        if (axis is not { Repeatability: { } repeat, Gauge: { } gauge })
            return null;
        string ratios = $"Along {axis.Axis}: stated {Mm(repeat.Stated)} mm; repeatability is {Ratio(repeat)} of it, the whole gauge {Ratio(gauge)}. ";
        // The repeatability's interval is the shorter one: it may show what the gauge's hides.
        return ratios + (repeat.Verdict == StatedVerdict.TooSmall || gauge.Verdict == StatedVerdict.TooSmall
            ? "The readings scatter more than was stated: the statement is too small for these photos."
            : repeat.Verdict == StatedVerdict.Larger
                ? "The stated uncertainty explains the scatter; what is the same in all photos (print, tape, flatness) does not show in it."
                : "The stated uncertainty explains the scatter.");
    }

    /// <summary>What to look at when photos scatter more than was stated; null when they do not, or mark by mark.</summary>
    /// <remarks>A shift that all marks of a photo share is what a tape above the card makes, seen from different sides.</remarks>
    public static string? Suspect(StudyAnswer answer) => answer.Axes.Any(axis =>
        axis.Gauge is { } gauge && (gauge.Verdict == StatedVerdict.TooSmall || axis.Repeatability!.Verdict == StatedVerdict.TooSmall)
        && axis.Study.Components.TryGetValue(StudyPart.Photo, out VarianceComponent? photo) && photo.Variance > 0.5 * axis.Study[StudyPart.Gauge].Variance)
        ? "Most of it is from photo to photo, all marks alike: measure how high the tape lies above the card and give it (--tape-height)."
        : null;

    /// <summary>What was done with the numbers.</summary>
    public static IEnumerable<string> Notes(StudyAnswer answer)
    {
        foreach (string note in answer.Request.Readings.Notes)
            yield return note;
        foreach (StudyAxis axis in answer.Axes)
        {
            GaugeStudy study = axis.Study;
            AnovaTest? test = study.Rows.First(r => r.Source == AnovaSource.Interaction).Test;
            if (study.IsPooled)
                yield return $"{axis.Axis}: the interaction is pooled with repeatability, its p {P(test!.Probability)} is above {Short(study.Options.PoolAbove)}; intervals come from the mean squares before pooling.";
            string[] negative = [.. study.Components.Values.Where(c => c.WasNegative).Select(c => Name(c.Part, answer.Request.Readings.Photos))];
            if (negative.Length > 0)
                yield return $"{axis.Axis}: estimated below zero and set to 0: {string.Join(", ", negative)}.";
            if (study[StudyPart.Gauge].Variance == 0)
                yield return $"{axis.Axis}: all readings of a mark are equal; they may be rounded too coarsely to show any scatter.";
        }

        if (answer.U.Study.Size.Operators < 4)
            yield return "With two or three people the share of the people, and with it the gauge, is known badly: its interval is wide.";
    }

    public static string Plan(StudyPlan plan)
    {
        if (plan.Best is { } best)
            return $"For the gauge to ±{Percent(100 * plan.Wanted)} % at 95 %: {best.Photos} photos, {best.Size.Operators} people or phones with {best.Size.Repeats} each, of {best.Size.Parts} marks.";
        PlannedStudy closest = plan.Rows.MinBy(r => r.HalfWidth)!;
        return $"±{Percent(100 * plan.Wanted)} % is not reached with {StudyPlan.MostOperators} people and {StudyPlan.MostRepeats} photos each: {closest.Size.Operators} people with {closest.Size.Repeats} each give ±{Percent(100 * closest.HalfWidth)} %.";
    }

    public static string Name(StudyPart part, bool photos) => part switch
    {
        StudyPart.Photo => "photo to photo",
        StudyPart.Within => photos ? "mark to mark in a photo" : "reading to reading",
        StudyPart.Repeatability => "repeatability",
        StudyPart.Operator => "people or phones",
        StudyPart.Interaction => "people × marks",
        StudyPart.Reproducibility => "reproducibility",
        StudyPart.Gauge => "gauge, all together",
        StudyPart.Parts => "marks' places",
        _ => "total",
    };

    public static string Name(AnovaSource source) => source switch
    {
        AnovaSource.Part => "marks",
        AnovaSource.Operator => "people or phones",
        AnovaSource.Interaction => "people × marks",
        AnovaSource.Photo => "photos of one person",
        AnovaSource.Repeatability => "repeatability",
        AnovaSource.Pooled => "pooled",
        _ => "total",
    };

    /// <summary>The components in the order in which tables list them.</summary>
    public static IReadOnlyList<StudyPart> Order(bool photos) =>
    [
        .. photos ? (StudyPart[])[StudyPart.Photo, StudyPart.Within] : [],
        StudyPart.Repeatability, StudyPart.Operator, StudyPart.Interaction, StudyPart.Reproducibility, StudyPart.Gauge, StudyPart.Parts,
    ];

    /// <summary>From one limit to the other on an axis, mm.</summary>
    public static double FullWidth(StudyAnswer answer) => 2 * answer.Request.Tolerance.Millimetres;

    public static string Mm(double mm) => mm.ToString("0.0000", CultureInfo.InvariantCulture);

    public static string P(double p) => p < 0.0001 ? "<0.0001" : p.ToString("0.0000", CultureInfo.InvariantCulture);

    public static string Percent(double percent) => percent.ToString(percent < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static string Interval(VarianceComponent c) => $"95 %: {Mm(c.DeviationInterval.Low)} to {Mm(c.DeviationInterval.High)}";

    private static string Ratio(StatedComparison c) => string.Create(CultureInfo.InvariantCulture, $"{c.Ratio:0.00} ({c.Interval.Low:0.00} to {c.Interval.High:0.00})");

    private static string Short(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}

/// <summary>Whether a gauge fits a tolerance.</summary>
public enum StudyVerdict
{
    Fits,
    Undecided,
    TooCoarse,
}
