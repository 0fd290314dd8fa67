using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>A check of a printed card in words, for the command line and for pages.</summary>
public static class CardCheckWords
{
    private const int MostNamed = 2;

    /// <summary>The verdict in a sentence.</summary>
    public static Wording Verdict(CardCheckReport r)
    {
        CardErrorsReport e = r.AsDrawn;
        string without = Without(r);
        return r.Verdict switch
        {
            _ when r.ShapesDiffer => CardCheckTexts.Get("verdict.shapes"),
            _ when r.Rulers is { Agree: false } => CardCheckTexts.Word("verdict.rulers", without),
            "good" when r.SizeJudged => CardCheckTexts.Word("verdict.good", Upper(e.WorstAtMost), Limit(r), without),
            "good" => CardCheckTexts.Word("verdict.goodShape", Upper(e.WorstAtMost), Limit(r), without),
            "notGood" => CardCheckTexts.Word("verdict.notGood", Fine(Size(e.Worst)), Lower(e.WorstAtLeast), Limit(r), without),
            _ => CardCheckTexts.Word("verdict.cannotTell", Lower(e.WorstAtLeast), Upper(e.WorstAtMost), Limit(r), without),
        };
    }

    /// <summary>The verdict in a few words, with the photos that it is without.</summary>
    public static string Short(CardCheckReport r) => CardCheckTexts.Get(r is { Verdict: "good", SizeJudged: false } ? "short.goodShape" : $"short.{r.Verdict}") + Without(r);

    /// <summary>What to do, in the order in which it helps.</summary>
    public static IReadOnlyList<Wording> Advice(CardCheckReport r) => [.. r.Advice.Select(a => a is "stateRulers" && r.Rulers is { } rulers
        ? CardCheckTexts.Word("advice.stateRulers", Mm(rulers.U), Mm(rulers.V), Upper(r.Corrected!.WorstAtMost))
        : CardCheckTexts.Word($"advice.{a}", Nominal(r)))];

    /// <summary>What was found, one sentence each.</summary>
    public static IReadOnlyList<Wording> Facts(CardCheckReport r) => [.. r.ShapesDiffer ? [] : FactsOf(r), .. PhotosOf(r), .. r.ShapesDiffer ? [] : (Wording[])[CardCheckTexts.Get("fact.flat")]];

    /// <summary>How much of a photo was used.</summary>
    public static string Used(CheckedViewReport view) => !view.Used ? CardCheckTexts.Get("view.leftOut")
        : view is { Sections: > 0 and int all, SectionsUsed: { } used } ? CardCheckTexts.Say("view.used", used, all, Math.Floor(100.0 * used / all)) : "";

    private static IEnumerable<Wording> FactsOf(CardCheckReport r)
    {
        yield return CardCheckTexts.Word("fact.worst", Fine(Size(r.AsDrawn.Worst)), Upper(r.AsDrawn.WorstStandardUncertainty), r.AsDrawn.WorstTiltDegrees, Lower(r.AsDrawn.WorstAtLeast), Upper(r.AsDrawn.WorstAtMost));
        yield return CardCheckTexts.Word("fact.rms", Fine(r.AsDrawn.Rms), Upper(r.AsDrawn.RmsStandardUncertainty));
        yield return CardCheckTexts.Word("fact.parts", Fine(r.PrintPart), Fine(r.BendPart));
        yield return CardCheckTexts.Word(r.Stretch.Shown ? "fact.stretch" : "fact.noStretch", Rounded(100 * r.Stretch.Value, 3), Above(100 * r.Stretch.StandardUncertainty, 3));
        yield return CardCheckTexts.Word(r.SkewMrad.Shown ? "fact.skew" : "fact.noSkew", Rounded(r.SkewMrad.Value, 2), Above(r.SkewMrad.StandardUncertainty, 2));
        yield return CardCheckTexts.Word(r.Bend.Shown ? "fact.bend" : "fact.noBend", Fine(r.Bend.Value), Upper(r.Bend.StandardUncertainty));
        yield return CardCheckTexts.Word("fact.ink", Fine(r.InkSpread.Value), Fine(r.PrintFault));
        if (r.Rulers is not { } rulers)
        {
            yield return CardCheckTexts.Get("fact.noSize");
        }
        else if (rulers.Agree)
        {
            yield return CardCheckTexts.Word("fact.size", Fine(rulers.PrintedU), Fine(rulers.PrintedV), Upper(rulers.PrintedStandardUncertainty), Mm(rulers.NominalU));
            yield return CardCheckTexts.Word("fact.corrected", Upper(r.Corrected!.WorstAtMost), CardCheckTexts.Get($"corrected.{r.Corrected.Verdict}"));
        }
        else
        {
            yield return CardCheckTexts.Word("fact.rulersDiffer", Rounded(100 * rulers.StretchDifference, 3), Above(100 * rulers.DifferenceStandardUncertainty, 3));
        }
    }

    private static IEnumerable<Wording> PhotosOf(CardCheckReport r)
    {
        foreach (CheckedViewReport view in r.Views.Where(v => v is { Used: true, Differs: true }))
            yield return CardCheckTexts.Word("fact.differs", view.Name, view.Sections!.Value - view.SectionsUsed!.Value, view.Sections.Value);
        foreach (Wording left in LeftOut(r))
            yield return left;
        foreach (Cameras.RefusedPhotoReport photo in r.Refused)
            yield return CardCheckTexts.Word("fact.refused", photo.Name, photo.Message, photo.Hint);
    }

    /// <summary>The photos that did not fit the others: whoever reads the verdict should know of them.</summary>
    public static IEnumerable<Wording> LeftOut(CardCheckReport r) => r.Views.Where(v => !v.Used).Select(v => CardCheckTexts.Word("fact.dropped", v.Name, v.ResidualPx));

    /// <summary>The picture in words.</summary>
    public static Wording Picture(CardCheckReport r) => CardCheckTexts.Word(
        "picture.alt", Fine(r.AsDrawn.Zone.Max(Size)), Fine(Size(r.AsDrawn.Zone[r.AsDrawn.Zone.Count / 2])), Limit(r));

    // The photos that did not fit, behind the verdict's first words; a colon in a file's name does not end them. Where the others do not fit each other either, they are not told apart.
    private static string Without(CardCheckReport r)
    {
        string[] left = [.. r.Views.Where(v => !v.Used && !r.ShapesDiffer).Select(v => v.Name.Replace(": ", ":\u00a0", StringComparison.Ordinal))];
        return left.Length == 0 ? ""
            : left.Length <= MostNamed ? CardCheckTexts.Say("verdict.without", string.Join(", ", left))
            : CardCheckTexts.Say("verdict.withoutMore", string.Join(", ", left.Take(MostNamed)), left.Length - MostNamed);
    }

    internal static double Size(CardErrorReport e) => Math.Sqrt((e.ErrorU * e.ErrorU) + (e.ErrorV * e.ErrorV));

    // Rounded up, so that what is said to be most is.
    private static SaidLength Upper(double mm) => Fine(Above(mm, 3));

    // And down what is said to be least.
    private static SaidLength Lower(double mm) => Fine(Math.Floor(1000 * mm) / 1000);

    private static double Above(double value, int places) => Math.Ceiling(value * Math.Pow(10, places)) / Math.Pow(10, places);

    // Without the sign of a zero.
    private static double Rounded(double value, int places) => Math.Round(value, places) + 0.0;

    private static SaidLength Fine(double mm) => new(mm, "0.000");

    private static SaidLength Mm(double mm) => new(mm);

    private static SaidLength Limit(CardCheckReport r) => new(r.Limit);

    // Both rulers of a card are of one length.
    private static SaidLength Nominal(CardCheckReport r) => new(r.Rulers?.NominalU ?? r.Card.RulerLength);
}
