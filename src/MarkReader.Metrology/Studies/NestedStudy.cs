using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Texts;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>Repeated readings of one occasion (a day).</summary>
/// <param name="StandardDeviation">Of the single readings.</param>
public sealed record NestedOccasion(double Mean, double StandardDeviation);

/// <summary>Three levels of scatter: readings of one day, days of one run, runs of one check standard.</summary>
/// <remarks>NIST/SEMATECH e-Handbook of Statistical Methods, 2.4.4: level 1 repeatability, level 2 reproducibility from day to day, level 3 stability from run to run.</remarks>
public sealed record NestedStudy
{
    private NestedStudy(MeanSquare repeatability, MeanSquare days, MeanSquare runs, int readings, int daysOfRun)
    {
        (Repeatability, Days, Runs) = (repeatability, days, runs);
        WeightedSquare[] day = [new(1, days), new(-1.0 / readings, repeatability)], run = [new(1, runs), new(-1.0 / daysOfRun, days)];
        (DayVariance, RunVariance) = (Math.Max(0, day.Sum(t => t.Value)), Math.Max(0, run.Sum(t => t.Value)));
        (DayInterval, RunInterval) = (VarianceIntervals.Of(day), VarianceIntervals.Of(run));
    }

    /// <summary>s1².</summary>
    public MeanSquare Repeatability { get; }

    /// <summary>s2²: between daily means.</summary>
    public MeanSquare Days { get; }

    /// <summary>s3²: between means of runs.</summary>
    public MeanSquare Runs { get; }

    /// <summary>s2² − s1²/readings, not below 0.</summary>
    public double DayVariance { get; }

    public Interval DayInterval { get; }

    /// <summary>s3² − s2²/days, not below 0.</summary>
    public double RunVariance { get; }

    public Interval RunInterval { get; }

    /// <summary>The study of several check standards.</summary>
    /// <param name="standards">Standards, their runs, the days of each run; as many everywhere, at least two runs and two days.</param>
    /// <param name="readings">Readings of a day, at least two.</param>
    public static Outcome<NestedStudy> Run(IReadOnlyList<IReadOnlyList<IReadOnlyList<NestedOccasion>>> standards, int readings)
    {
        int runs = standards.Count == 0 ? 0 : standards[0].Count, days = runs == 0 ? 0 : standards[0][0].Count;
        if (runs < 2 || days < 2 || readings < 2)
            return new Failure(StudyFailures.TooSmall, MetrologyTexts.Get("nestedStudy.nestedStudyNeedsTwoRuns"), MetrologyTexts.Get("nestedStudy.addReadingsDaysOrRuns"));
        if (standards.Any(s => s.Count != runs || s.Any(r => r.Count != days)))
            return new Failure(StudyFailures.Unbalanced, MetrologyTexts.Get("nestedStudy.notEveryStandardHasAs"), MetrologyTexts.Get("nestedStudy.leaveOutWhatNotComplete"));
        NestedOccasion[] all = [.. standards.SelectMany(s => s).SelectMany(r => r)];
        if (!all.All(d => double.IsFinite(d.Mean) && d.StandardDeviation is >= 0 and < double.PositiveInfinity))
            return new Failure(StudyFailures.ReadingInvalid, MetrologyTexts.Get("nestedStudy.meanOrStandardDeviationNot"), MetrologyTexts.Get("nestedStudy.giveBothForEveryDay"));
        return new NestedStudy(
            new(all.Average(d => d.StandardDeviation * d.StandardDeviation), all.Length * (readings - 1)),
            Pooled(standards.SelectMany(s => s).Select(r => r.Select(d => d.Mean))),
            Pooled(standards.Select(s => s.Select(r => r.Average(d => d.Mean)))),
            readings,
            days);
    }

    private static MeanSquare Pooled(IEnumerable<IEnumerable<double>> groups)
    {
        (double sum, int dof) = (0, 0);
        foreach (double[] group in groups.Select(g => g.ToArray()))
        {
            double mean = group.Average();
            sum += group.Sum(x => (x - mean) * (x - mean));
            dof += group.Length - 1;
        }

        return new(sum / dof, dof);
    }
}
