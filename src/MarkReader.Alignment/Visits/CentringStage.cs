using MarkReader.Alignment.Centring;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>Centring within a visit, once the marks over the bed agree.</summary>
/// <param name="Action">What to do; null when the steady mark is centred.</param>
internal sealed record CentringStage(VisitAction? Action, string Reason, ExpectedPlace? Expected, CentringState State)
{
    private const int MostMarks = 12;

    // Part of the tolerance by which a stack of washers may be too high.
    private const double MostOver = 0.5;

    /// <summary>Nothing is measured yet.</summary>
    public static CentringState Open { get; } = new(new(Verdict.Undecided, 0.5, 1), null);

    /// <param name="fit">The survey, within its tolerance.</param>
    public static Outcome<CentringStage> Of(VisitSetup setup, VisitHistory history, SurveyFit fit)
    {
        VisitAperture aperture = setup.Aperture!;
        if (Steady(fit, history) is not { } steady)
            return new CentringStage(new VisitAction.Survey(Length.Zero, Length.Zero), VisitWords.FreshMark, null, Open);
        if (!ApertureCentring.Advise(steady, aperture.Centre, aperture.Tolerance).TryGet(out CentringAdvice? advice, out Failure? failure))
            return failure;
        CentringState state = new(advice.Verdict, advice.Offset);
        if (advice.Verdict.Verdict == Verdict.Within)
            return new CentringStage(null, VisitWords.Centred(advice.Offset, aperture), null, state);
        switch (advice.Steps is [var step, ..] ? step : null)
        {
            case MovePlate move:
                return Move(new(Hundredths(move.Distance.Value.Millimetres), 0), VisitWords.Sideways);
            case ShimTarget shim when Height(setup, shim.Height.Value) is { } height:
                return Move(new(0, height.Millimetres), VisitWords.TooHigh);
            case ShimTarget shim when advice.Verdict.Verdict == Verdict.Outside:
                return new CentringStage(new VisitAction.Stop(), VisitWords.NoStack(shim.Height.Value), null, state);
            case RaiseTube raise:
                return new CentringStage(new VisitAction.RaiseTube(Length.FromMillimetres(Hundredths(raise.BeamRise.Value.Millimetres))), VisitWords.TooLow(advice.Offset), null, state);
            default:
                int marks = history.Steady.Count;
                return marks >= MostMarks
                    ? new CentringStage(new VisitAction.Stop(), VisitWords.NotCentred(marks, aperture), null, state)
                    : new CentringStage(new VisitAction.Survey(Length.Zero, Length.Zero), VisitWords.CentringOpen(advice.Offset, aperture, advice.Verdict), NearLeft(new(0, 0)), state);
        }

        CentringStage Move(CardVector by, Func<MeasuredVector, CardVector, string> words) => new(
            new VisitAction.MoveTarget(by),
            words(advice.Offset, by),
            NearLeft(by),
            state);

        // The mark there once the target is moved.
        ExpectedPlace NearLeft(CardVector by)
        {
            MeasuredPoint at = fit.At(BedCorner.NearLeft);
            return new(new(at.Point - by, at.Covariance + SurveyStage.Usual(history.Survey)), []);
        }
    }

    /// <summary>The middle of the marks over the bed as the target stands now: the fresh marks, each less its own place's distance from the middle.</summary>
    private static MeasuredPoint? Steady(SurveyFit fit, VisitHistory history)
    {
        MeasuredPoint middle = fit.Mean();
        IReadOnlyList<SurveyMark> fresh = history.Steady;
        if (!history.IsMoved)
            return middle;
        if (fresh.Count == 0)
            return null;
        (double u, double v, double uu, double uv, double vv) = (0, 0, 0, 0, 0);
        foreach (SurveyMark mark in fresh)
        {
            CardVector off = fit.At(mark.X, mark.Y).Point - middle.Point;
            (u, v) = (u + mark.Mark.Point.U - off.U, v + mark.Mark.Point.V - off.V);
            (uu, uv, vv) = (uu + mark.Mark.Covariance.Uu, uv + mark.Mark.Covariance.Uv, vv + mark.Mark.Covariance.Vv);
        }

        // The fit's own share is that of its middle: the marks' distances from it are known about as well.
        double n = fresh.Count;
        return new(new(u / n, v / n), new Covariance2(uu / (n * n), uv / (n * n), vv / (n * n)) + middle.Covariance);
    }

    /// <summary>The height that the stock makes; null when it makes none that fits.</summary>
    /// <remarks>Not much too high: a mark too low asks for the tube, after which all is aligned again. One still too high asks for another washer.</remarks>
    private static Length? Height(VisitSetup setup, Length wanted)
    {
        if (setup.Stock.Count == 0)
            return Length.FromMillimetres(Hundredths(wanted.Millimetres));
        double most = wanted.Millimetres + (MostOver * setup.Aperture!.Tolerance.Millimetres), aimed = wanted.Millimetres;
        while (aimed > 0 && StackSearch.Best(setup.Stock, Length.FromMillimetres(aimed), Length.FromMillimetres(0.1)).TryGet(out StackAdvice? stack, out _))
        {
            double height = stack.Stack.Height.Millimetres;
            if (height <= most)
                return height > 0 ? stack.Stack.Height : null;
            aimed -= Math.Max(0.1, (height - most) / 2);
        }

        return null;
    }

    private static double Hundredths(double value) => Math.Round(value, 2);
}
