using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Estimates;
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
                return wrong with { Message = $"leg {leg.Name}: {wrong.Message}" };
        }

        return Bed(setup) ?? Aperture(setup) ?? (setup.Stock.Count == 0 ? null : StockChecks.All(setup.Stock, Length.Zero, Length.Zero));
    }

    public static Failure? Events(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        if (events.Count > MostEvents)
            return new(VisitFailures.TooManyEvents, $"the visit has {events.Count} events", $"give at most {MostEvents}; begin a new visit");
        return events.Select((e, i) => Event(setup, e, i + 1)).FirstOrDefault(f => f is not null);
    }

    private static Failure? Bed(VisitSetup setup)
    {
        if (setup.Bed is not { } bed)
            return null;
        if (setup.Find(VisitLeg.Two) is null)
            return new(VisitFailures.BedInvalid, "a bed is given but no leg 2, whose marks a corner survey continues", "give leg 2, or leave the bed out");
        return SurveyFailures.Check(bed.Travels, [])
            ?? InputChecks.Between(bed.Tolerance.Millimetres, (0.01, 100), VisitFailures.BedInvalid, "the tolerance of the spread over the bed in mm", "say how far apart two marks over the bed may lie, for example 0.5 mm");
    }

    private static Failure? Aperture(VisitSetup setup)
    {
        if (setup.Aperture is not { } aperture)
            return null;
        if (setup.Bed is null)
            return new(VisitFailures.ApertureInvalid, "an aperture is given but no bed", "give the bed's travels: the beam is centred when its marks over the bed agree");
        return InputChecks.Between(aperture.Tolerance.Millimetres, (0.01, 100), VisitFailures.ApertureInvalid, "the tolerance of centring in mm", "say how far from the aperture's centre the beam may pass, for example 0.5 mm")
            ?? InputChecks.Between((aperture.Centre.Point - CardPoint.Origin).Magnitude, (0, 50), VisitFailures.ApertureInvalid, "the aperture's centre in the card frame, mm from its origin", "give its u and v on the head's card in mm");
    }

    private static Failure? Event(VisitSetup setup, VisitEvent e, int number)
    {
        Failure Wrong(string what, string hint) => new(VisitFailures.EventInvalid, $"event {number} {what}", hint);
        switch (e)
        {
            case VisitEvent.Mark mark:
                return Leg(setup, mark.Leg, number) ?? Place(mark.At.Point);
            case VisitEvent.Turn turn:
                return Leg(setup, turn.Leg, number);
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
                return SurveyFailures.Check(setup.Bed!.Travels, [survey.Seen]) is { } off ? off with { Message = $"event {number}: {off.Message}" } : Place(survey.Seen.Mark.Point);
            case VisitEvent.Shim shim:
                return Math.Abs(shim.Height.Millimetres) <= MostShim ? null : Wrong($"is a shim of {InputChecks.Text(shim.Height.Millimetres)} mm", "give its height in mm, at most 20; negative when shims were taken away");
            case VisitEvent.MoveTarget move:
                return move.By.Magnitude <= MostMove ? null : Wrong("moves the target by more than 50 mm", "give u and v in mm");
            case VisitEvent.RaiseTube raise:
                return Math.Abs(raise.Height.Millimetres) <= MostRise ? null : Wrong("raises the tube by more than 100 mm", "give the height in mm");
            default:
                return null;
        }

        Failure? Step(VisitStep step) => VisitSteps.Of(setup).Contains(step)
            ? null
            : Wrong($"belongs to the step {step.Name()}, which the machine does not ask for", $"its steps are {string.Join(", ", VisitSteps.Of(setup).Select(s => s.Name()))}");

        Failure? Place(CardPoint at) => Math.Abs(at.U) <= FarthestMark && Math.Abs(at.V) <= FarthestMark
            ? null
            : Wrong($"is a mark at ({InputChecks.Text(at.U)}, {InputChecks.Text(at.V)}) mm", "give u and v in the card frame, at most 300 mm from its origin");
    }

    private static Failure? Leg(VisitSetup setup, string name, int number) => setup.Find(name) is null
        ? new(VisitFailures.LegUnknown, $"event {number} belongs to leg {(name.Length > 20 ? name[..20] : name)}, which the machine does not have", $"the machine's legs are {string.Join(", ", setup.Legs.Select(l => l.Name))}")
        : null;
}
