using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Studies;
using MarkReader.Metrology.Budgets;
using MarkReader.Quantities;

namespace MarkReader.Application.Budgets;

/// <summary>The budget of an aim point in words, for a person who has never seen one.</summary>
/// <param name="Analysis">What its parts do to the whole.</param>
/// <param name="Sufficiency">Whether it is good enough for the usual tolerance of a leg.</param>
/// <param name="Enough">The same in words.</param>
/// <param name="Known">How well the point is known.</param>
/// <param name="Meaning">What the interval means and what it does not.</param>
/// <param name="Dominant">What most of it comes from.</param>
/// <param name="Adding">How parts add.</param>
/// <param name="Halving">What would halve it.</param>
/// <param name="Remedies">How the parts that must shrink are made to, one sentence each.</param>
/// <param name="Idle">What would not help; null when every part counts.</param>
/// <param name="Missing">What is not in it.</param>
public sealed record ExplainedBudget(
    BudgetAnalysis Analysis, Sufficiency Sufficiency, string Enough, string Known, string Meaning, string Dominant, string Adding, string Halving, IReadOnlyList<string> Remedies, string? Idle, string Missing)
{
    /// <summary>Parts that leave this share of the whole when they are gone are not worth the work.</summary>
    private const double Idles = 0.99;

    /// <summary>The part of the tolerance that a measurement may take up (common practice, no source).</summary>
    private const double Quarter = 0.25;

    /// <summary>The explanation; null when the report has no budget, as those of earlier versions, or one of a later version.</summary>
    /// <param name="format">How numbers are written.</param>
    public static ExplainedBudget? Of(AimReport report, RecordFormat format)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(format);
        if (ComponentReport.Read(report.Aim.Budget) is not { } budget || BudgetAnalysis.Of(budget) is not { } analysis)
            return null;
        BudgetPart first = analysis.Parts[0];
        string whole = Fine(format, analysis.Whole);
        string[] idle = [.. analysis.Parts.Where(p => p.WholeWithout.Millimetres > Idles * analysis.Whole.Millimetres).Select(p => Name(p.Source))];
        return new(
            analysis,
            SufficiencyOf(Part(report)),
            Suffices(report, format),
            BudgetTexts.Say("known", Half(report.Aim.Covariance[0][0], format), Half(report.Aim.Covariance[1][1], format), whole),
            BudgetTexts.Get("meaning"),
            BudgetTexts.Say("dominant", Percent(first.Share, format), Name(first.Source), About(first.Source), Fine(format, first.WholeWithout), whole),
            BudgetTexts.Get("adding"),
            Halve(analysis, format),
            [.. analysis.Halving.Parts.Select(s => $"{Capital(Name(s))}: {BudgetTexts.Get("less." + s)}")],
            idle.Length == 0 ? null : BudgetTexts.Say("idle", string.Join("; ", idle), whole),
            string.Join(' ', NotIn(analysis)));
    }

    /// <summary>A part's name in a few words.</summary>
    public static string Name(UncertaintySource source) => ComponentReport.Words(ComponentReport.Name(source));

    /// <summary>What a part is.</summary>
    public static string About(UncertaintySource source) => BudgetTexts.Get("about." + source);

    public static string Percent(double share, RecordFormat format) => format.Number(100 * share, Percentage.Decimals(share));

    /// <summary>A standard uncertainty with its unit.</summary>
    public static string Fine(RecordFormat format, Length length) => format.WithUnit(length.Millimetres, 4);

    // Marks of a leg whose far one is put on a point beside its aim point differ by no more than the point is beside it.
    private static double Part(AimReport report)
    {
        double[][] c = report.Aim.Covariance;
        return new Covariance2(c[0][0], c[0][1], c[1][1]).Ellipse95().SemiMajor / StudyRequest.UsualTolerance.Millimetres;
    }

    private static Sufficiency SufficiencyOf(double part) => part <= Quarter ? Sufficiency.Enough : part <= 1 ? Sufficiency.Scarce : Sufficiency.TooLittle;

    private static string Suffices(AimReport report, RecordFormat format)
    {
        double part = Part(report);
        Sufficiency sufficiency = SufficiencyOf(part);
        string words = BudgetTexts.Say(
            "enough." + sufficiency,
            format.WithUnit(part * StudyRequest.UsualTolerance.Millimetres, 3),
            Percent(part, format),
            format.Short(StudyRequest.UsualTolerance.Millimetres));
        return sufficiency == Sufficiency.Enough ? $"{words} {BudgetTexts.Say("scatter", format.WithUnit(BearableScatter(report).Millimetres, 3))}" : words;
    }

    /// <summary>The scatter of pulses along an axis with which the aim point would just be good enough.</summary>
    /// <remarks>With r = |aim − near| / |far − near|, the aim point is (1 + r)·near − r·far: (1 + r)² + r² of the pulses' variance comes to the point's.</remarks>
    public static Length BearableScatter(AimReport report)
    {
        double tolerance = StudyRequest.UsualTolerance.Millimetres, part = Part(report), r = report.Ratio;
        double left = tolerance * tolerance * ((Quarter * Quarter) - (part * part));
        return Length.FromMillimetres(Math.Sqrt(Math.Max(0, left) / Covariance2.ChiSquare95 / (((1 + r) * (1 + r)) + (r * r))));
    }

    private static IEnumerable<string> NotIn(BudgetAnalysis analysis)
    {
        bool Has(UncertaintySource source) => analysis.Parts.Any(p => p.Source == source);
        yield return BudgetTexts.Get("missing.scatter");
        if (!Has(UncertaintySource.PrintScale))
            yield return BudgetTexts.Get("missing.PrintScale");
        if (!Has(UncertaintySource.Parallax))
            yield return BudgetTexts.Get("missing.Parallax");
    }

    private static string Halve(BudgetAnalysis analysis, RecordFormat format)
    {
        BudgetHalving halving = analysis.Halving;
        string to = Percent(halving.Factor, format);
        return halving.Parts.Count == analysis.Parts.Count ? BudgetTexts.Get("halve.all")
            : halving.Parts.Count == 1 ? BudgetTexts.Say("halve.one", Name(halving.Parts[0]), to)
            : BudgetTexts.Say("halve.several", string.Join("; ", halving.Parts.Select(Name)), to);
    }

    private static string Half(double variance, RecordFormat format) => format.WithUnit(Normal95.Factor * Math.Sqrt(variance), 3);

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}

/// <summary>Whether an aim point is known well enough.</summary>
public enum Sufficiency
{
    /// <summary>Its 95 % region takes up a quarter of the tolerance or less.</summary>
    Enough,

    /// <summary>It takes up more of it.</summary>
    Scarce,

    /// <summary>It is larger than the tolerance.</summary>
    TooLittle,
}
