using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The corner survey within a visit.</summary>
/// <param name="Action">What to do; null when the spread over the bed is within its tolerance, and when <paramref name="Again"/> names slopes.</param>
/// <param name="Again">Slopes of legs that are to be brought nearer to zero than their part, in the order of the work.</param>
/// <param name="Otherwise">What to do when those legs' own marks show nothing to do; else null.</param>
internal sealed record SurveyStage(VisitAction? Action, string Reason, ExpectedPlace? Expected, SurveyState State, IReadOnlyList<SlopeFinding>? Again = null, SurveyStage? Otherwise = null)
{
    // Of one survey: marks that agree, marks at all.
    private const int MostMarks = 24, MostAtAll = 48, MostShims = 6;

    // With that many marks the likeliest cause is cured, also a less certain one.
    private const double LastLevel = 0.05;

    // With fewer marks the work stops only for a fault less probable by chance than this.
    private const int FewMarks = 8;
    private const double Clear = 1e-3;

    // A fault below this part of the tolerance is not what keeps the marks apart.
    private const double LeastPart = 0.25;

    // Part of the tolerance that is kept for bows of the rails where only the corners are measured.
    private const double BowShare = 0.08;

    // Of a shim, mm of mark for one mm.
    private const double WeakestResponse = -0.25;

    // A cure is worth its work when the spread is more likely outside than within; the more marks have not decided it, the sooner.
    private const double CureBelow = 0.5, CureBelowAtMost = 0.9, SoonerByMark = 0.05;

    private static readonly Conformity s_open = new(Verdict.Undecided, 0.5, 1);

    public static Outcome<SurveyStage> Of(VisitSetup setup, VisitHistory history)
    {
        VisitBed bed = setup.Bed!;
        IReadOnlyList<SurveyMark> marks = SurveyRepeats.Kept(history.Survey);
        SurveyOptions options = SurveyOptions.Default with { Response = history.Response };
        if (marks.Count >= MostMarks)
            options = options with { TwistLevel = LastLevel, SlopeLevel = LastLevel };
        if (!CornerSurvey.Diagnose(bed.Travels, marks, options).TryGet(out SurveyDiagnosis? diagnosis, out Failure? failure))
            return failure;
        SurveyState open = new(marks.Count, s_open, null, marks.Count == 0 ? null : diagnosis, history.Response);
        if (history.Survey.Count >= MostAtAll)
            return new SurveyStage(new VisitAction.Stop(), VisitWords.Unsteady(history.Survey.Count), null, open);
        if (diagnosis.Fit is not { } fit)
            return new SurveyStage(Fire(diagnosis.NextPlace!.Value), VisitWords.Corner(diagnosis.NextPlace.Value, marks.Count), null, open);
        if (SurveyRepeats.Torn(marks) is { } torn)
            return new SurveyStage(Fire(torn), VisitWords.Torn(torn), null, open);

        SpreadAdvice spread = Spread(bed, fit, marks);
        Length greatest = Length.FromMillimetres(fit.Differences().Max(d => d.Vector.Magnitude));
        SurveyState state = new(marks.Count, spread.Verdict, greatest, diagnosis, history.Response);
        if (spread.Verdict.Verdict == Verdict.Within)
            return new SurveyStage(null, VisitWords.Within(bed, greatest), null, state);

        VisitWords.SpreadWords words = new(bed, greatest, spread.Verdict);
        // No twist of a frame moves marks sideways: rather is one of them wrong.
        if (diagnosis.Warnings.Any(w => w.Code == CornerSurvey.Skewed) && SurveyRepeats.Single(bed.Travels, marks, history.End) is { } single)
            return new SurveyStage(Fire(bed.Travels.Place(single)), words.Skewed(single), new(WithPulse(fit.At(single), marks), []), state);
        SurveyFinding[] causes = [.. diagnosis.Findings.Where(f => f.Effect >= LeastPart * bed.Tolerance.Millimetres)];
        BedCorner corner = spread.Next ?? Rarest(bed, fit, marks);
        SurveyStage? more = marks.Count < MostMarks ? new(Fire(bed.Travels.Place(corner)), words.Repeat(corner), new(WithPulse(fit.At(corner), marks), []), state) : null;
        bool unlikely = spread.Verdict.Probability < Math.Min(CureBelowAtMost, CureBelow + (SoonerByMark * Math.Max(0, marks.Count - 4)));
        if (causes.Length == 0 || (more is not null && !unlikely))
            return more ?? new SurveyStage(new VisitAction.Stop(), words.NotSettling(marks.Count), null, state);
        SurveyStage cure = Cure(setup, history, diagnosis, causes, words, state);
        return cure.Action is VisitAction.Stop && more is not null && (!unlikely || (marks.Count < FewMarks && causes[0].Probability > Clear)) ? more : cure with { Otherwise = more };
    }

    /// <summary>Within against the smaller limit where only corners are measured, since they do not show what bent rails do between them; outside against the whole tolerance.</summary>
    internal static SpreadAdvice Spread(VisitBed bed, SurveyFit fit, IReadOnlyList<SurveyMark> marks)
    {
        SpreadAdvice whole = SurveyPlan.Spread(bed.Travels, marks, bed.Tolerance, Usual(marks));
        if (fit.Terms.Count > 4)
            return whole;
        SpreadAdvice less = SurveyPlan.Spread(bed.Travels, marks, (1 - BowShare) * bed.Tolerance, Usual(marks));
        Verdict verdict = less.Verdict.Verdict == Verdict.Within ? Verdict.Within
            : whole.Verdict.Verdict == Verdict.Outside ? Verdict.Outside
            : Verdict.Undecided;
        return new(new(verdict, less.Verdict.Probability, whole.Verdict.OutsideLevel), verdict == Verdict.Undecided ? less.Next ?? whole.Next : null);
    }

    private static SurveyStage Cure(VisitSetup setup, VisitHistory history, SurveyDiagnosis diagnosis, SurveyFinding[] causes, VisitWords.SpreadWords words, SurveyState state)
    {
        // Leg 1 before leg 2, whose marks a turn of mirror one makes stale.
        SlopeFinding[] slopes = [.. causes.OfType<SlopeFinding>().OrderBy(s => s.Leg)];
        if (causes[0] is not TwistFinding first)
            return Slopes(setup, slopes, words, state);

        TwistFinding twist = AtOddCorner(first, history.End);
        ShimResponse response = Usable(history.Response);
        SurveyCure cure = SurveyOutlook.Cure(twist, response);
        if (history.Shims >= MostShims || cure is CheckFrame)
            return new(new VisitAction.Stop(), words.CheckFrame(twist), null, state);
        Length there = history.ShimsAt(twist.Corner);
        if (cure is RealignLeg && there > Length.Zero)
        {
            Length less = Length.FromMillimetres(Math.Min(there.Millimetres, Math.Abs(twist.Height.Value / response.Mean)));
            return new(new VisitAction.Shim(twist.Corner, -less), words.Unshim(twist, less), null, state);
        }

        if (cure is RealignLeg realign)
            return new(new VisitAction.Realign(VisitLeg.Two, realign.Gantry), words.Realign(twist, realign.Gantry), null, state);
        ShimCorner shim = (ShimCorner)cure;
        if (Stack(setup, shim.Height.Value) is not { } height)
            return slopes.Length > 0 ? Slopes(setup, slopes, words, state) : new(new VisitAction.Stop(), words.NoStack(twist, shim), null, state);
        MeasuredPoint after = SurveyOutlook.After(diagnosis.Fit!, shim with { Height = new(height, Length.Zero) }, response)[shim.Corner];
        return new(new VisitAction.Shim(shim.Corner, height), words.Shim(twist, shim, height), new(WithPulse(after, history.Survey), []), state);
    }

    private static SurveyStage Slopes(VisitSetup setup, SlopeFinding[] slopes, VisitWords.SpreadWords words, SurveyState state) =>
        slopes.FirstOrDefault(s => setup.Find(LegOf(s)) is null) is { } missing
            ? new(new VisitAction.Stop(), words.LegMissing(missing), null, state)
            : new(null, words.Slope(slopes[0]), null, state, slopes);

    // With leg 1 aligned, and leg 2 at one end of the gantry's travel, the corner that stands out is the right one at the other end.
    private static TwistFinding AtOddCorner(TwistFinding twist, GantryEnd aligned)
    {
        BedCorner odd = aligned == GantryEnd.Near ? BedCorner.FarRight : BedCorner.NearRight;
        return twist with { Corner = odd, Height = twist.Height with { Value = CornerChoice.Sign(odd) * CornerChoice.Sign(twist.Corner) * twist.Height.Value } };
    }

    // A twist that shows is one that shims act on: a weak response is learned by a higher shim, not taken for none.
    private static ShimResponse Usable(ShimResponse learned)
    {
        double mean = Math.Min(learned.Mean, WeakestResponse);
        return learned.IsKnown && learned.Mean < 0 ? learned : new(mean, -mean / 2);
    }

    /// <summary>The height that the stock makes; null when it leaves the corner no better than before.</summary>
    private static Length? Stack(VisitSetup setup, Length wanted)
    {
        if (setup.Stock.Count == 0)
            return Length.FromMillimetres(Math.Round(20 * wanted.Millimetres) / 20);
        Length tolerance = Length.FromMillimetres(Math.Min(0.1, 0.25 * wanted.Millimetres));
        return StackSearch.Best(setup.Stock, wanted, tolerance).TryGet(out StackAdvice? stack, out _) && stack.Stack.Pieces > 0 ? stack.Stack.Height : null;
    }

    private static VisitAction.Survey Fire((Length X, Length Y) place) => new(place.X, place.Y);

    // The corner with the fewest marks, among such the one whose mark lies farthest from the others' middle.
    private static BedCorner Rarest(VisitBed bed, SurveyFit fit, IReadOnlyList<SurveyMark> marks)
    {
        CardPoint middle = fit.Mean().Point;
        return BedCorners.All.OrderBy(c => marks.Count(m => (m.X, m.Y) == bed.Travels.Place(c))).ThenByDescending(c => fit.At(c).Point.DistanceTo(middle)).First();
    }

    internal static string LegOf(SlopeFinding slope) => slope.Leg == 1 ? VisitLeg.One : VisitLeg.Two;

    // A pulse more is as good as the marks were on the average.
    internal static Covariance2 Usual(IReadOnlyList<SurveyMark> marks) => (1.0 / marks.Count) * marks.Select(m => m.Mark.Covariance).Aggregate((a, b) => a + b);

    private static MeasuredPoint WithPulse(MeasuredPoint at, IReadOnlyList<SurveyMark> marks) => at with { Covariance = at.Covariance + Usual(marks) };
}
