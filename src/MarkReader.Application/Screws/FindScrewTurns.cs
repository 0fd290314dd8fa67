using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Verdicts;
using MarkReader.Application.Aiming;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Screws;

/// <summary>From a slope, or a near and a far mark, to the turns of a frame's screws that take it away.</summary>
public static class FindScrewTurns
{
    // Finer than half of its uncertainty a turn need not be; nor than a fifth of the tolerance, as the spread over the travel.
    private const double RoundingPart = 0.5, ToleranceShare = 0.2;

    // So many turns are far outside the play of a frame's springs, and the response is no longer that of a small turn.
    private const double ManyTurns = 3;

    // Part of the slope that turns of independent screws never leave.
    private const double LeftOver = 0.01;

    public static Outcome<ScrewsFinding> Run(ScrewsRequest request)
    {
        if (request.Slope.Check() is { } wrong)
            return wrong;
        if (!request.Frame.Checked().TryGet(out MirrorFrame? frame, out Failure? failure))
            return failure;
        if (!FrameResponses.Of(frame, request.Frame.Known ?? []).TryGet(out FrameResponses? responses, out failure))
            return failure;
        CheckedLeg? leg = null;
        if (request.Leg is { } input)
        {
            if (InputChecks.Between(request.Tolerance, (0.001, 100), ScrewInputFailures.ToleranceInvalid, InputTexts.Get("findScrewTurns.toleranceOnSpreadInMm"), InputTexts.Get("findScrewTurns.giveWhatApertureLeavesBeam")) is { } unsound)
                return unsound;
            if (!CheckedLeg.From(input).TryGet(out leg, out failure))
                return failure;
        }

        return SlopeOf(request.Slope, leg).TryGet(out MeasuredSlope? slope, out failure)
            ? Advise(request, responses, leg, slope)
            : failure;
    }

    private static Outcome<MeasuredSlope> SlopeOf(SlopeInput input, CheckedLeg? leg)
    {
        switch (input)
        {
            case SlopeInput.Stated stated:
                return new MeasuredSlope(new(stated.U, stated.V, Covariance2.Isotropic(stated.Uncertainty)), []);
            case SlopeInput.FromMarks when leg is null:
                return new Failure(ScrewInputFailures.PathsMissing, InputTexts.Get("findScrewTurns.twoMarksDoNotTell"), InputTexts.Get("findScrewTurns.giveNearAndFarPath"));
            case SlopeInput.FromMarks marks:
                Covariance2 covariance = Covariance2.Isotropic(marks.Uncertainty);
                return AimSolver.Solve(leg!.Leg, [new(leg.Near, new MeasuredPoint(marks.Near, covariance)), new(leg.Far, new MeasuredPoint(marks.Far, covariance))])
                    .TryGet(out AimSolution? aim, out Failure? failure) ? new MeasuredSlope(aim.Slope, aim.Warnings) : failure;
            default:
                throw new ArgumentException("Unknown kind of slope.", nameof(input));
        }
    }

    private static ScrewsFinding Advise(ScrewsRequest request, FrameResponses responses, CheckedLeg? leg, MeasuredSlope measured)
    {
        Slope slope = measured.Slope;
        IReadOnlyList<ScrewTurns> wanted = SlopeTurns.ToRemove(slope, responses.Screws);
        double? travel = leg is null ? null : (leg.Far.Path - leg.Near.Path).Millimetres / 1000;
        ScrewAdvice[] screws = [.. responses.Screws.Select((screw, i) =>
        {
            double allowed = Math.Max(
                RoundingPart * Math.Max(wanted[i].Uncertainty, responses.Habits.HandSetting),
                travel is { } length ? ToleranceShare * request.Tolerance / (Size(screw.U, screw.V) * length) : 0);
            HandTurn turn = HandTurn.Nearest(wanted[i].Turns, allowed);
            FirstTurn? first = screw.SenseKnown || turn.Turns == 0 ? null : FirstTurn.Of(turn, slope, screw, leg?.Far.Path);
            return new ScrewAdvice(screw, wanted[i], turn, first, leg is null ? null : responses.MoveAt(i, leg.Far.Path, leg.Leg.Incidence));
        })];
        Slope after = SlopeTurns.After(slope, [.. screws.Select(s => (s.Response, s.Turn.Turns))], responses.Habits.HandSetting);
        SlopeInput.FromMarks? marks = request.Slope as SlopeInput.FromMarks;
        MeasuredPoint? Mark(CardPoint at, Station station) => leg is null || marks is null
            ? null
            : Moved(new(at, Covariance2.Isotropic(marks.Uncertainty)), screws, i => responses.MoveAt(i, station.Path, leg.Leg.Incidence), responses.Habits.HandSetting);
        return new(
            request.Frame,
            slope,
            leg,
            travel is { } t ? Spread(slope, t, request.Tolerance) : null,
            screws,
            new(
                after,
                marks is null ? null : Mark(marks.Near, leg!.Near),
                marks is null ? null : Mark(marks.Far, leg!.Far),
                travel is { } metres ? Length.FromMillimetres(after.Magnitude * metres) : null),
            [.. measured.Warnings, .. Warnings(slope, screws)]);
    }

    // The mark as it would be seen: it moved by the turns, and the new one has an error of its own beside that of the old.
    private static MeasuredPoint Moved(MeasuredPoint mark, ScrewAdvice[] screws, Func<int, MeasuredVector> moveAt, double hand)
    {
        (CardVector move, Covariance2 covariance) = (default, 2 * mark.Covariance);
        for (int i = 0; i < screws.Length; i++)
        {
            double turns = screws[i].Turn.Turns;
            if (turns == 0)
                continue;
            MeasuredVector one = moveAt(i);
            move += turns * one.Vector;
            covariance += ((turns * turns) * one.Covariance) + Covariance2.Along(hand * one.Vector);
        }

        return new(mark.Point + move, covariance);
    }

    private static SlopeSpread Spread(Slope slope, double travel, double tolerance) => new(
        Length.FromMillimetres(slope.Magnitude * travel),
        Length.FromMillimetres(tolerance),
        DiscConformity.Of(new(slope.U * travel, slope.V * travel), (travel * travel) * slope.Covariance, tolerance));

    private static IEnumerable<Warning> Warnings(Slope slope, IReadOnlyList<ScrewAdvice> screws)
    {
        Slope left = SlopeTurns.After(slope, [.. screws.Select(s => (s.Response, s.Wanted.Turns))], 0);
        if (left.Magnitude > LeftOver * slope.Magnitude)
            yield return new("screwsAlike", InputTexts.Get("findScrewTurns.screwsAsDescribedMoveBeam"));
        if (screws.Any(s => Math.Abs(s.Wanted.Turns) > ManyTurns))
            yield return new("manyTurns", InputTexts.Say("findScrewTurns.moreThanTurnsAskedFor", ManyTurns));
    }

    private static double Size(double u, double v) => Math.Sqrt((u * u) + (v * v));

    private sealed record MeasuredSlope(Slope Slope, IReadOnlyList<Warning> Warnings);
}
