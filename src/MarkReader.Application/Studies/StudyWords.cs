using System.Globalization;
using MarkReader.Application.Records;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>A study in words, for the command line and for paper.</summary>
public static class StudyWords
{
    /// <summary>A gauge of more than this part of the tolerance is too coarse, % (AIAG's guide; common practice).</summary>
    public const double MostPercent = 30;

    public static string Extent(StudyAnswer answer)
    {
        StudySize size = answer.U.Study.Size;
        string times = answer.Request.Readings.Photos ? StudyTexts.Say("studyWords.photosEach", size.Repeats) : StudyTexts.Say("studyWords.readingsEach", size.Repeats);
        return StudyTexts.Say("studyWords.peopleOrPhonesMarksReadings", size.Operators, times, size.Parts, size.Readings);
    }

    /// <summary>The gauge of the worse axis against the tolerance.</summary>
    public static string Result(StudyAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        StudyAxis worse = answer.Worse;
        VarianceComponent gauge = worse.Study[StudyPart.Gauge];
        (double percent, Metrology.MonteCarlo.Interval interval) = worse.Study.OfTolerance(StudyPart.Gauge, FullWidth(answer));
        return StudyTexts.Say("studyWords.alongWorseAxisReadingHas", worse.Axis, n.Fine(gauge.StandardDeviation), Interval(gauge, n), n.Percent(percent), n.Percent(interval.Low), n.Percent(interval.High), n.Short(FullWidth(answer)), n.Unit);
    }

    public static string Word(StudyAnswer answer) => Verdict(answer) switch
    {
        StudyVerdict.Fits => StudyTexts.Get("studyWords.fitForTolerance"),
        StudyVerdict.TooCoarse => StudyTexts.Get("studyWords.tooCoarseForTolerance"),
        _ => StudyTexts.Get("studyWords.undecided"),
    };

    public static string Claim(StudyAnswer answer) => Verdict(answer) switch
    {
        StudyVerdict.Fits => StudyTexts.Say("studyWords.atMostWidthAlsoAt", MostPercent),
        StudyVerdict.TooCoarse => StudyTexts.Say("studyWords.moreThanWidthAlsoAt", MostPercent),
        _ => StudyTexts.Say("studyWords.intervalReachesOverToleranceWidth", MostPercent),
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
    public static string? Stated(StudyAxis axis, RecordFormat? format = null)
    {
        if (axis is not { Repeatability: { } repeat, Gauge: { } gauge })
            return null;
        StudyNumbers n = new(format);
        string ratios = StudyTexts.Say("studyWords.alongStatedMmRepeatabilityWhole", axis.Axis, n.Fine(repeat.Stated), Ratio(repeat, n), Ratio(gauge, n), n.Unit);
        // The repeatability's interval is the shorter one: it may show what the gauge's hides.
        return ratios + (repeat.Verdict == StatedVerdict.TooSmall || gauge.Verdict == StatedVerdict.TooSmall
            ? StudyTexts.Get("studyWords.readingsScatterMoreThanWas")
            : repeat.Verdict == StatedVerdict.Larger
                ? StudyTexts.Get("studyWords.statedUncertaintyExplainsScatterWhat")
                : StudyTexts.Get("studyWords.statedUncertaintyExplainsScatter"));
    }

    /// <summary>What to look at when photos scatter more than was stated; null when they do not, or mark by mark.</summary>
    /// <remarks>A shift that all marks of a photo share is what a tape above the card makes, seen from different sides.</remarks>
    public static string? Suspect(StudyAnswer answer) => answer.Axes.Any(axis =>
        axis.Gauge is { } gauge && (gauge.Verdict == StatedVerdict.TooSmall || axis.Repeatability!.Verdict == StatedVerdict.TooSmall)
        && axis.Study.Components.TryGetValue(StudyPart.Photo, out VarianceComponent? photo) && photo.Variance > 0.5 * axis.Study[StudyPart.Gauge].Variance)
        ? StudyTexts.Get("studyWords.mostFromPhotoPhotoAll")
        : null;

    /// <summary>What was done with the numbers.</summary>
    public static IEnumerable<string> Notes(StudyAnswer answer, RecordFormat? format = null)
    {
        StudyNumbers n = new(format);
        foreach (Wording note in answer.Request.Readings.Notes)
            yield return n.Said(note);
        foreach (StudyAxis axis in answer.Axes)
        {
            GaugeStudy study = axis.Study;
            AnovaTest? test = study.Rows.First(r => r.Source == AnovaSource.Interaction).Test;
            if (study.IsPooled)
                yield return StudyTexts.Say("studyWords.interactionPooledWithRepeatabilityP", axis.Axis, n.P(test!.Probability), n.Plain(study.Options.PoolAbove));
            string[] negative = [.. study.Components.Values.Where(c => c.WasNegative).Select(c => Name(c.Part, answer.Request.Readings.Photos))];
            if (negative.Length > 0)
                yield return StudyTexts.Say("studyWords.estimatedBelowZeroAndSet", axis.Axis, string.Join(", ", negative));
            if (study[StudyPart.Gauge].Variance == 0)
                yield return StudyTexts.Say("studyWords.allReadingsMarkEqualThey", axis.Axis);
        }

        if (answer.U.Study.Size.Operators < 4)
            yield return StudyTexts.Get("studyWords.withTwoOrThreePeople");
    }

    public static string Plan(StudyPlan plan)
    {
        if (plan.Best is { } best)
            return StudyTexts.Say("studyWords.forGaugeAtPhotosPeople", Percent(100 * plan.Wanted), best.Photos, best.Size.Operators, best.Size.Repeats, best.Size.Parts);
        PlannedStudy closest = plan.Rows.MinBy(r => r.HalfWidth)!;
        return StudyTexts.Say("studyWords.notReachedWithPeopleAnd", Percent(100 * plan.Wanted), StudyPlan.MostOperators, StudyPlan.MostRepeats, closest.Size.Operators, closest.Size.Repeats, Percent(100 * closest.HalfWidth));
    }

    public static string Name(StudyPart part, bool photos) => part switch
    {
        StudyPart.Photo => StudyTexts.Get("studyWords.photoPhoto"),
        StudyPart.Within => photos ? StudyTexts.Get("studyWords.markMarkInPhoto") : StudyTexts.Get("studyWords.readingReading"),
        StudyPart.Repeatability => StudyTexts.Get("studyWords.repeatability"),
        StudyPart.Operator => StudyTexts.Get("studyWords.peopleOrPhones"),
        StudyPart.Interaction => StudyTexts.Get("studyWords.peopleMarks"),
        StudyPart.Reproducibility => StudyTexts.Get("studyWords.reproducibility"),
        StudyPart.Gauge => StudyTexts.Get("studyWords.gaugeAllTogether"),
        StudyPart.Parts => StudyTexts.Get("studyWords.marksPlaces"),
        _ => StudyTexts.Get("studyWords.total"),
    };

    public static string Name(AnovaSource source) => source switch
    {
        AnovaSource.Part => StudyTexts.Get("studyWords.marks"),
        AnovaSource.Operator => StudyTexts.Get("studyWords.peopleOrPhones"),
        AnovaSource.Interaction => StudyTexts.Get("studyWords.peopleMarks"),
        AnovaSource.Photo => StudyTexts.Get("studyWords.photosOnePerson"),
        AnovaSource.Repeatability => StudyTexts.Get("studyWords.repeatability"),
        AnovaSource.Pooled => StudyTexts.Get("studyWords.pooled"),
        _ => StudyTexts.Get("studyWords.total"),
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

    private static string Interval(VarianceComponent c, StudyNumbers n) => StudyTexts.Say("studyWords.to", n.Fine(c.DeviationInterval.Low), n.Fine(c.DeviationInterval.High));

    private static string Ratio(StatedComparison c, StudyNumbers n) => StudyTexts.Say("studyWords.to2", n.Number(c.Ratio, 2), n.Number(c.Interval.Low, 2), n.Number(c.Interval.High, 2));
}

/// <summary>Whether a gauge fits a tolerance.</summary>
public enum StudyVerdict
{
    Fits,
    Undecided,
    TooCoarse,
}
