using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Tests.Visits;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Texts;

/// <summary>Every sentence of the adviser, each with numbers that are rounded, negative or beyond a thousand somewhere.</summary>
internal static class EverySentence
{
    private static readonly (Length X, Length Y) s_place = (Some.Mm(1234.56), Some.Mm(0.04));
    private static readonly Conformity s_verdict = new(Verdict.Undecided, 0.4567, 1);
    private static readonly VisitBed s_bed = new(new Bed(Some.Mm(500), Some.Mm(400)), Some.Mm(0.255));
    private static readonly VisitAperture s_aperture = new(Some.Point(0, 0), Some.Mm(1.5));

    public static IEnumerable<string> All() => [.. Leg(), .. Visit(), .. Centring(), .. Spread(), .. Turns()];

    private static IEnumerable<string> Leg()
    {
        LegSetup setup = SomeVisit.Leg("1", 80, 480, 45).Setup;
        AdviceWords words = new(setup);
        LegState open = new(s_verdict, null, null), known = new(new(Verdict.Within, 0.999, 1), new(1.2345, -2, Covariance2.Isotropic(0.1)), null);
        ScrewResponse sure = new("A", -0.04, 12.345, Covariance2.Isotropic(1), 0.99, Angle.FromDegrees(5)), unsure = sure with { SenseProbability = 0.5 };
        Misfit misfit = new(3, new(480, Some.Point(1, 2)), new(-1.5, 0.25, 1, 0, 1), 0.001, [], MisfitReading.Doubtful);
        yield return AdviceWords.FirstMark;
        yield return AdviceWords.FirstMarkAgain;
        yield return words.SlopeOpen(80);
        yield return words.SlopeOpen(480);
        yield return words.SlopeOpen(1234.56);
        yield return words.SeeTurns(80, [new("A", 0.5), new("B", -0.25), new("A", 1)]);
        yield return words.Undecided(80, open);
        yield return words.Undecided(480, known);
        yield return words.Within(known);
        yield return words.Turn(sure, true, known);
        yield return words.Turn(sure, false, known);
        yield return words.Turn(unsure, false, open);
        yield return words.Doubtful(misfit);
        yield return words.Contradiction(misfit);
        yield return words.Contradiction(misfit with { Turned = ["A", "B"] });
        yield return words.NoScrewHelps(known);
        yield return words.NotSettling(24);
        yield return AdviceWords.UnlikeFrame("A");
        yield return words.LeftOut(misfit);
    }

    private static IEnumerable<string> Visit()
    {
        VisitState state = new(new Dictionary<string, VisitLegState>(), null, null, s_verdict);
        SurveyState survey = new(4, s_verdict, Some.Mm(0.125), null, ShimResponse.Prior);
        CentringState centring = new(s_verdict, new(new(0.3, -0.4), Covariance2.Isotropic(0.1)));
        yield return VisitWords.FreshMark;
        yield return VisitWords.Corner(s_place, 0);
        yield return VisitWords.Corner(s_place, 2);
        yield return VisitWords.Torn(s_place);
        yield return VisitWords.Unsteady(48);
        yield return VisitWords.Within(s_bed, Some.Mm(0.204));
        yield return VisitWords.Done(state);
        yield return VisitWords.Done(state with { Survey = survey, Centring = centring });
        yield return VisitWords.Done(state with
        {
            Survey = survey,
            Skipped = new Dictionary<VisitStep, string> { [VisitStep.LegOne] = "no {access}", [VisitStep.Survey] = "late", [VisitStep.Centring] = "dark" },
        });
        foreach (VisitAdvice advice in (VisitAdvice[])
        [
            SomeVisit.Advise(SomeVisit.Whole),
            SomeVisit.Advise(SomeVisit.Machine, new VisitEvent.Mark("2", 60, Some.Point(0, 0)) { Gantry = Some.Mm(300) }),
            SomeVisit.Advise(SomeVisit.Machine, [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 5, nearLeft: 3)]),
        ])
        {
            yield return advice.Reason;
            foreach (Warning warning in advice.Warnings)
                yield return warning.Message;
        }
    }

    private static IEnumerable<string> Centring()
    {
        MeasuredVector offset = new(new(0.756, -1.234), Covariance2.Isotropic(0.1));
        yield return VisitWords.Centred(offset, s_aperture);
        yield return VisitWords.Sideways(offset, new(-0.76, 0));
        yield return VisitWords.Sideways(offset with { Vector = new(-2, 0) }, new(2, 0));
        yield return VisitWords.TooHigh(offset with { Vector = new(0, 1.5) }, new(0, 1.55));
        yield return VisitWords.NoStack(Some.Mm(0.125));
        yield return VisitWords.TooLow(offset);
        yield return VisitWords.CentringOpen(offset, s_aperture, s_verdict);
        yield return VisitWords.NotCentred(12, s_aperture);
    }

    private static IEnumerable<string> Spread()
    {
        VisitWords.SpreadWords words = new(s_bed, Some.Mm(1.204), s_verdict);
        SlopeFinding one = new(1, new(0.004, -1.5), Covariance2.Isotropic(0.1), new(0, -3), 0.01), two = one with { Leg = 2, Walk = new(0, 0.5) };
        TwistFinding high = new(BedCorner.FarRight, new(0.904, 0.1), new Dictionary<BedCorner, double>(), 0.01), low = high with { Corner = BedCorner.NearRight, Height = new(-0.904, 0.1) };
        ShimCorner shim = new(BedCorner.FarRight, MeasuredLength.FromMillimetres(0.876, 0.1));
        foreach (BedCorner corner in BedCorners.All)
            yield return words.Repeat(corner);
        yield return words.Skewed(BedCorner.NearLeft);
        yield return words.NotSettling(24);
        yield return words.Slope(one);
        yield return words.Slope(two);
        yield return words.SlopeGone(two);
        yield return words.LegMissing(one);
        yield return words.Realign(low, GantryEnd.Far);
        yield return words.Realign(low, GantryEnd.Near);
        yield return words.Shim(high, shim, Some.Mm(0.9));
        yield return words.Unshim(high, Some.Mm(0.35));
        yield return words.CheckFrame(low);
        yield return words.NoStack(high, shim);
    }

    private static IEnumerable<string> Turns()
    {
        foreach (double turns in (double[])[0, 0.1875, -0.125, 1, -1.125, 2, 0.078125, -3.0390625])
        {
            yield return HandTurn.Nearest(turns, 0).Text;
            yield return HandTurn.Nearest(turns, 0).Size;
        }
    }
}
