using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Aiming;

/// <summary>Whether one of a leg's marks does not belong to the line of the others.</summary>
/// <remarks>
/// Each mark is left out in turn. The fall of χ² is the squared distance of the mark from what the others predict, weighted with the covariance of that
/// difference: χ² with 2 degrees of freedom when the mark belongs to them (R. D. Cook and S. Weisberg, Residuals and Influence in Regression, Chapman and Hall
/// 1982, 2.2.2; errors that marks share are taken in). The level is divided by the number of marks tested (Bonferroni).
/// </remarks>
public static class OutlierTest
{
    /// <summary>Probability of suspecting a mark among marks that all belong together.</summary>
    public const double Level = 0.01;

    /// <summary>Most marks that are tested.</summary>
    public const int MostMarks = 100;

    // The runner-up's χ² must be this much larger: odds of 19 to 1 under normal errors.
    private static readonly double s_clear = 2 * Math.Log(19);

    /// <param name="observations">Three marks or more.</param>
    public static Outcome<OutlierReport> Of(Leg leg, IReadOnlyList<Observation> observations)
    {
        if (observations.Count is < 3 or > MostMarks)
            return new Failure(AimingFailures.OutlierMarkCount, AlignmentTexts.Word("outlierTest.marksCannotBeTestedFor", observations.Count), AlignmentTexts.Get("outlierTest.giveMarksOneLeg"));
        if (!AimSolver.Solve(leg, observations).TryGet(out AimSolution? all, out Failure? failure))
            return failure;
        MarkTest[] tests = [.. observations.Select((o, i) => new MarkTest(o, Fall(leg, [.. observations.Where((_, j) => j != i)], all.Fit.ChiSquare)))];
        MarkTest[] sorted = [.. tests.Where(t => t.Fall is not null).OrderByDescending(t => t.Fall)];
        if (sorted.Length == 0 || sorted[0].Probability * sorted.Length > Level)
            return new OutlierReport(tests, false, null);
        // A mark that cannot be left out may be the wrong one as well.
        bool clear = sorted.Length == tests.Length && sorted[0].Fall - sorted[1].Fall > s_clear;
        return new OutlierReport(tests, true, clear ? sorted[0].Observation : null);
    }

    // Null when the others do not make a line.
    private static double? Fall(Leg leg, IReadOnlyList<Observation> others, double chiSquare) =>
        AimSolver.Solve(leg, others).TryGet(out AimSolution? solution, out _) ? Math.Max(0, chiSquare - solution.Fit.ChiSquare) : null;
}

/// <summary>The test of one mark.</summary>
/// <param name="Fall">By how much χ² falls when the mark is left out; null when the others alone make no line.</param>
public sealed record MarkTest(Observation Observation, double? Fall)
{
    /// <summary>Of a fall at least as large when the mark belongs to the others.</summary>
    public double? Probability => Fall is { } fall ? Math.Exp(-fall / 2) : null;
}

/// <summary>The marks of a leg, tested one against the others.</summary>
/// <param name="Marks">In the order of the observations.</param>
/// <param name="Suspected">Whether the marks do not belong together.</param>
/// <param name="Outlier">The mark that does not fit; null when there is none, or when it cannot be told which (three marks, for example, only say that one is wrong).</param>
public sealed record OutlierReport(IReadOnlyList<MarkTest> Marks, bool Suspected, Observation? Outlier);
