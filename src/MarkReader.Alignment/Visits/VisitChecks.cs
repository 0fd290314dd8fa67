using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
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
            return new(VisitFailures.LegsInvalid, "the machine's legs are not one to three with the names 1, 2 and 3", "give each leg once: 1 from mirror one to mirror two, 2 from mirror two to the head, 3 below the head");
        foreach (VisitLeg leg in setup.Legs)
        {
            if (LegSetupChecks.Setup(leg.Setup) is { } wrong)
                return wrong with { What = $"leg {leg.Name}: {wrong.What}" };
        }

        return Bed(setup) ?? Aperture(setup) ?? (setup.Stock.Count == 0 ? null : StockChecks.All(setup.Stock, Length.Zero, Length.Zero));
    }

    public static Failure? Events(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        if (events.Count > MostEvents)
            return new(VisitFailures.TooManyEvents, $"the visit has {events.Count} events", $"give at most {MostEvents}; begin a new visit");
        Dictionary<string, LegModel> models = setup.Legs.ToDictionary(l => l.Name, l => l.Setup.Model);
        return events.Select((e, i) => Event(setup, models, e, i + 1)).FirstOrDefault(f => f is not null);
    }

    private static Failure? Bed(VisitSetup setup)
    {
        if (setup.Bed is not { } bed)
            return null;
        if (setup.Find(VisitLeg.Two) is null)
            return new(VisitFailures.BedInvalid, "a bed is given but no leg 2, whose marks a corner survey continues", "give leg 2, or leave the bed out");
        return SurveyFailures.Check(bed.Travels, [])
            ?? InputChecks.Lengths(bed.Tolerance.Millimetres, (0.01, 100), VisitFailures.BedInvalid, "the tolerance of the spread over the bed", $"say how far apart two marks over the bed may lie, for example {InputChecks.Mm(0.5)}");
    }

    private static Failure? Aperture(VisitSetup setup)
    {
        if (setup.Aperture is not { } aperture)
            return null;
        if (setup.Bed is null)
            return new(VisitFailures.ApertureInvalid, "an aperture is given but no bed", "give the bed's travels: the beam is centred when its marks over the bed agree");
        return InputChecks.Lengths(aperture.Tolerance.Millimetres, (0.01, 100), VisitFailures.ApertureInvalid, "the tolerance of centring", $"say how far from the aperture's centre the beam may pass, for example {InputChecks.Mm(0.5)}")
            ?? InputChecks.Between((aperture.Centre.Point - CardPoint.Origin).Magnitude, (0, 50), VisitFailures.ApertureInvalid, "the aperture's centre in the card frame, mm from its origin", "give its u and v on the head's card in mm");
    }

    private static Failure? Event(VisitSetup setup, Dictionary<string, LegModel> models, VisitEvent e, int number)
    {
        Failure Wrong(Wording what, Wording hint) => new(VisitFailures.EventInvalid, $"{new SaidEvent(number)} {what}", hint);
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
                return Wrong("belongs to a corner survey, but the machine has no bed", "give the bed's travels: \"bed\": {\"x\": 500, \"y\": 400}");
            case VisitEvent.Survey survey:
                return SurveyFailures.Check(setup.Bed!.Travels, [survey.Seen]) is { } off ? off with { What = $"{new SaidEvent(number)}: {off.What}" } : Place(survey.Seen.Mark.Point);
            case VisitEvent.Shim shim:
                return Math.Abs(shim.Height.Millimetres) <= MostShim ? null : Wrong($"is a shim of {InputChecks.Mm(shim.Height.Millimetres)}", $"give its height, at most {InputChecks.Mm(MostShim)}; negative when shims were taken away");
            case VisitEvent.MoveTarget move:
                return move.By.Magnitude <= MostMove ? null : Wrong($"moves the target by more than {InputChecks.Mm(MostMove)}", $"give u and v in {Wording.Unit}");
            case VisitEvent.RaiseTube raise:
                return Math.Abs(raise.Height.Millimetres) <= MostRise ? null : Wrong($"raises the tube by more than {InputChecks.Mm(MostRise)}", $"give the height in {Wording.Unit}");
            default:
                return null;
        }

        Failure? Step(VisitStep step) => VisitSteps.Of(setup).Contains(step)
            ? null
            : Wrong($"belongs to the step {step.Name()}, which the machine does not ask for", $"its steps are {string.Join(", ", VisitSteps.Of(setup).Select(s => s.Name()))}");

        Failure? Place(CardPoint at) => Math.Abs(at.U) <= FarthestMark && Math.Abs(at.V) <= FarthestMark
            ? null
            : Wrong($"is a mark at ({InputChecks.Bare(at.U)}, {InputChecks.Bare(at.V)}) {Wording.Unit}", $"give u and v in the card frame, at most {InputChecks.Mm(FarthestMark)} from its origin");
    }

    private static Failure? Leg(VisitSetup setup, string name, int number) => setup.Find(name) is null
        ? new(VisitFailures.LegUnknown, $"{new SaidEvent(number)} belongs to leg {(name.Length > 20 ? name[..20] : name)}, which the machine does not have", $"the machine's legs are {string.Join(", ", setup.Legs.Select(l => l.Name))}")
        : null;
}
