using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>Checks of a visit. Each returns the first thing that is wrong, or null.</summary>
internal static class VisitChecks
{
    public const int MostEvents = 2000;

    private const double FarthestMark = 300, MostShim = 20, MostMove = 50, MostRise = 100;

    private static readonly string[] s_names = [VisitLeg.One, VisitLeg.Two, VisitLeg.Three];

    public static Failure? Setup(VisitSetup setup)
    {
        if (setup.Legs.Count == 0 || setup.Legs.Any(l => !s_names.Contains(l.Name)) || setup.Legs.DistinctBy(l => l.Name).Count() != setup.Legs.Count)
            return new(VisitFailures.LegsInvalid, AlignmentTexts.Get("visitChecks.machineLegsNotOneThree"), AlignmentTexts.Get("visitChecks.giveEachLegOnceFrom"));
        foreach (VisitLeg leg in setup.Legs)
        {
            if (LegSetupChecks.Setup(leg.Setup) is { } wrong)
                return wrong with { What = AlignmentTexts.Word("visitChecks.leg", leg.Name, wrong.What) };
        }

        return Bed(setup) ?? Aperture(setup) ?? (setup.Stock.Count == 0 ? null : StockChecks.All(setup.Stock, Length.Zero, Length.Zero));
    }

    public static Failure? Events(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        if (events.Count > MostEvents)
            return new(VisitFailures.TooManyEvents, AlignmentTexts.Word("visitChecks.visitHasEvents", events.Count), AlignmentTexts.Word("visitChecks.giveAtMostBeginNew", MostEvents));
        Dictionary<string, LegModel> models = setup.Legs.ToDictionary(l => l.Name, l => l.Setup.Model);
        return events.Select((e, i) => Event(setup, models, e, i + 1)).FirstOrDefault(f => f is not null);
    }

    private static Failure? Bed(VisitSetup setup)
    {
        if (setup.Bed is not { } bed)
            return null;
        if (setup.Find(VisitLeg.Two) is null)
            return new(VisitFailures.BedInvalid, AlignmentTexts.Get("visitChecks.bedGivenButNoLeg"), AlignmentTexts.Get("visitChecks.giveLegOrLeaveBed"));
        return SurveyFailures.Check(bed.Travels, [])
            ?? InputChecks.Lengths(bed.Tolerance.Millimetres, (0.01, 100), VisitFailures.BedInvalid, AlignmentTexts.Get("visitChecks.toleranceSpreadOverBed"), AlignmentTexts.Word("visitChecks.sayHowFarApartTwo", InputChecks.Mm(0.5)));
    }

    private static Failure? Aperture(VisitSetup setup)
    {
        if (setup.Aperture is not { } aperture)
            return null;
        if (setup.Bed is null)
            return new(VisitFailures.ApertureInvalid, AlignmentTexts.Get("visitChecks.apertureGivenButNoBed"), AlignmentTexts.Get("visitChecks.giveBedTravelsBeamCentred"));
        return InputChecks.Lengths(aperture.Tolerance.Millimetres, (0.01, 100), VisitFailures.ApertureInvalid, AlignmentTexts.Get("visitChecks.toleranceCentring"), AlignmentTexts.Word("visitChecks.sayHowFarFromAperture", InputChecks.Mm(0.5)))
            ?? InputChecks.Between((aperture.Centre.Point - CardPoint.Origin).Magnitude, (0, 50), VisitFailures.ApertureInvalid, AlignmentTexts.Get("visitChecks.apertureCentreInCardFrame"), AlignmentTexts.Get("visitChecks.giveUAndVOn"));
    }

    private static Failure? Event(VisitSetup setup, Dictionary<string, LegModel> models, VisitEvent e, int number)
    {
        Failure Wrong(Wording what, Wording hint) => new(VisitFailures.EventInvalid, AlignmentTexts.Word("visitChecks.event", new SaidEvent(number), what), hint);
        switch (e)
        {
            case VisitEvent.Mark mark:
                return Leg(setup, mark.Leg, number) ?? Place(mark.At.Point) ?? LegSetupChecks.Event(models[mark.Leg], new LegEvent.Mark(mark.Path, mark.At), $"{new SaidEvent(number)}");
            case VisitEvent.Turn turn:
                return Leg(setup, turn.Leg, number) ?? LegSetupChecks.Event(models[turn.Leg], new LegEvent.Turn(turn.Screw, turn.Turns), $"{new SaidEvent(number)}");
            case VisitEvent.Realign realign:
                return Leg(setup, realign.Leg, number);
            case VisitEvent.Disturbed disturbed:
                return Leg(setup, disturbed.Leg, number);
            case VisitEvent.Skip skip:
                return Step(skip.Step);
            case VisitEvent.Again again:
                return Step(again.Step);
            case VisitEvent.Survey or VisitEvent.Shim when setup.Bed is null:
                return Wrong(AlignmentTexts.Get("visitChecks.belongsCornerSurveyButMachine"), AlignmentTexts.Get("visitChecks.giveBedTravelsBedX"));
            case VisitEvent.Survey survey:
                return SurveyFailures.Check(setup.Bed!.Travels, [survey.Seen]) is { } off ? off with { What = $"{new SaidEvent(number)}: {off.What}" } : Place(survey.Seen.Mark.Point);
            case VisitEvent.Shim shim:
                return Math.Abs(shim.Height.Millimetres) <= MostShim ? null : Wrong(AlignmentTexts.Word("visitChecks.shim", InputChecks.Mm(shim.Height.Millimetres)), AlignmentTexts.Word("visitChecks.giveHeightAtMostNegative", InputChecks.Mm(MostShim)));
            case VisitEvent.MoveTarget move:
                return move.By.Magnitude <= MostMove ? null : Wrong(AlignmentTexts.Word("visitChecks.movesTargetByMoreThan", InputChecks.Mm(MostMove)), AlignmentTexts.Word("visitChecks.giveUAndVIn2", Wording.Unit));
            case VisitEvent.RaiseTube raise:
                return Math.Abs(raise.Height.Millimetres) <= MostRise ? null : Wrong(AlignmentTexts.Word("visitChecks.raisesTubeByMoreThan", InputChecks.Mm(MostRise)), AlignmentTexts.Word("visitChecks.giveHeightIn", Wording.Unit));
            default:
                return null;
        }

        Failure? Step(VisitStep step) => VisitSteps.Of(setup).Contains(step)
            ? null
            : Wrong(AlignmentTexts.Word("visitChecks.belongsStepWhichMachineDoes", step.Name()), AlignmentTexts.Word("visitChecks.steps", string.Join(", ", VisitSteps.Of(setup).Select(s => s.Name()))));

        Failure? Place(CardPoint at) => Math.Abs(at.U) <= FarthestMark && Math.Abs(at.V) <= FarthestMark
            ? null
            : Wrong(AlignmentTexts.Word("visitChecks.markAt", InputChecks.Bare(at.U), InputChecks.Bare(at.V), Wording.Unit), AlignmentTexts.Word("visitChecks.giveUAndVIn", InputChecks.Mm(FarthestMark)));
    }

    private static Failure? Leg(VisitSetup setup, string name, int number) => setup.Find(name) is null
        ? new(VisitFailures.LegUnknown, AlignmentTexts.Word("visitChecks.belongsLegWhichMachineDoes", new SaidEvent(number), name.Length > 20 ? name[..20] : name), AlignmentTexts.Word("visitChecks.machineLegs", string.Join(", ", setup.Legs.Select(l => l.Name))))
        : null;
}
