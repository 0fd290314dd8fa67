using MathNet.Numerics;

namespace MarkReader.Alignment.History;

/// <summary>Whether a quantity is steady, drifts or jumped between visits.</summary>
/// <remarks>
/// Three tests look for a change: χ² of all changes against zero; χ² of a constant rate (2 degrees of freedom); the largest fall of χ² that one change can take
/// away when it is fitted alone, its probability times the number of changes. A level of 5 % is shared by the three, so that a steady quantity is
/// called steady in at least 95 of 100 histories, however the tests depend on each other (Bonferroni). Then a pattern is looked for: a rate, or a jump, that a
/// test found and that leaves no more than chance does (χ² at 1 %). Both have two parameters; when both do, the smaller rest decides if the odds
/// are ten to one under normal errors, else none. The levels and the odds are common practice, without a source.
/// The rest: JCGM 100:2008, 5.1 and 5.2 (covariance of a difference), generalised least squares as in <see cref="HistoryFit"/>.
/// </remarks>
public static class HistoryTest
{
    /// <summary>Probability of calling a steady quantity anything else, at most.</summary>
    public const double Level = 0.05;

    /// <summary>Probability at which what a pattern leaves is no longer chance.</summary>
    public const double RestLevel = 0.01;

    /// <summary>Fewest changes between visits for a verdict.</summary>
    public const int FewestChanges = 2;

    /// <summary>Most changes that are tested: the work grows with the third power.</summary>
    public const int MostChanges = 200;

    private const int Tests = 3;

    private static readonly double s_clear = 2 * Math.Log(10);

    /// <param name="changes">In the order of time, at most <see cref="MostChanges"/>; covariances not zero.</param>
    public static HistoryFinding Of(IReadOnlyList<HistoryChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(changes.Count, MostChanges, nameof(changes));
        int missing = Math.Max(0, FewestChanges - changes.Count);
        if (changes.Count == 0)
            return new(HistoryVerdict.TooFew, 0, missing, 1, null, null, null);
        HistoryFit fit = new(changes);
        HistoryFit.Part rate = fit.Rate();
        (HistoryFit.Part jump, int at) = Enumerable.Range(0, changes.Count).Select(i => (fit.Jump(i), i)).MaxBy(j => j.Item1.Taken);
        double all = Above(fit.ChiSquare, changes.Count), byRate = Above(rate.Taken, 1), byJump = changes.Count * Above(jump.Taken, 1);
        double probability = Math.Min(1, Tests * Math.Min(all, Math.Min(byRate, byJump)));
        bool rateFits = Tests * byRate <= Level && IsChance(rate, changes.Count), jumpFits = Tests * byJump <= Level && IsChance(jump, changes.Count);
        HistoryVerdict verdict = probability > Level
            ? missing > 0 ? HistoryVerdict.TooFew : HistoryVerdict.Steady
            : missing > 0 ? HistoryVerdict.Changed : Pattern(rateFits, jumpFits, jump.LeftOver - rate.LeftOver);
        return new(verdict, changes.Count, missing, probability, rate.Size, jump.Size, at);
    }

    private static HistoryVerdict Pattern(bool rateFits, bool jumpFits, double inFavourOfRate) => (rateFits, jumpFits) switch
    {
        (false, false) => HistoryVerdict.Unsteady,
        (true, false) => HistoryVerdict.Drifting,
        (false, true) => HistoryVerdict.Jumped,
        _ when Math.Abs(inFavourOfRate) < s_clear => HistoryVerdict.Changed,
        _ => inFavourOfRate > 0 ? HistoryVerdict.Drifting : HistoryVerdict.Jumped,
    };

    private static bool IsChance(HistoryFit.Part part, int changes) => changes == 1 || Above(part.LeftOver, changes - 1) > RestLevel;

    // Of χ² with an even number of degrees of freedom, twice this.
    private static double Above(double chiSquare, int pairs) => pairs == 1 ? Math.Exp(-chiSquare / 2) : SpecialFunctions.GammaUpperRegularized(pairs, chiSquare / 2);
}
