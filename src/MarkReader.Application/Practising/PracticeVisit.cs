using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Texts;
using MarkReader.Practice.Beams;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>A visit on a practice machine: the machine as it stands, where its gantry stands for leg 2, and what has happened.</summary>
/// <remarks>Immutable: an action gives another visit. A pulse whose beam is lost leaves it as it was.</remarks>
public sealed record PracticeVisit(PracticeMachine Machine, IReadOnlyList<VisitEvent> Events)
{
    public static PracticeVisit Begin(PracticeMachine machine) => new(machine, []);

    /// <summary>End of the gantry's travel at which leg 2 is aligned.</summary>
    public GantryEnd End { get; private init; }

    /// <summary>Does what the action says.</summary>
    /// <param name="random">The machine's scatter and that of the hand.</param>
    /// <param name="measure">How a mark is measured: from a photo, or as the machine states it.</param>
    public Outcome<PracticeVisit> Do(VisitAction action, Random random, Func<BurnMark, Outcome<MeasuredPoint>> measure)
    {
        if (LegOf(action) is not (null or VisitLeg.One or VisitLeg.Two))
            return new Failure(VisitFailures.LegUnknown, InputTexts.Get("practiceVisit.practiceMachineHasLegsAnd"), InputTexts.Get("practiceVisit.nameLegOr"));
        switch (action)
        {
            case VisitAction.Fire fire:
                return Fired(Station(fire), at => new VisitEvent.Mark(fire.Leg, fire.Path, at, fire.Leg == VisitLeg.Two ? Gantry(fire) : null), random, measure);
            case VisitAction.Survey survey:
                return Fired(PracticeStation.LegTwo(survey.X, survey.Y), at => new VisitEvent.Survey(new(survey.X, survey.Y, at)), random, measure);
            case VisitAction.Turn turn:
                return After(Machine.Turn(Leg(turn.Leg), turn.Screw, turn.Turns, random), new VisitEvent.Turn(turn.Leg, turn.Screw, turn.Turns));
            case VisitAction.Shim shim:
                return After(Machine.Shim(Corner(shim.Corner), shim.Height), new VisitEvent.Shim(shim.Corner, shim.Height));
            case VisitAction.MoveTarget move:
                return After(Machine.MoveTarget(PracticeLeg.Two, move.By), new VisitEvent.MoveTarget(move.By));
            case VisitAction.RaiseTube raise:
                return Raised(raise.Height);
            case VisitAction.Realign realign:
                return this with { End = realign.Leg == VisitLeg.Two ? realign.At : End, Events = [.. Events, new VisitEvent.Realign(realign.Leg, realign.At)] };
            default:
                throw new ArgumentException("Done and stop ask for nothing.", nameof(action));
        }
    }

    private Outcome<PracticeVisit> Raised(Length height) =>
        Machine.RaiseTube(TubeEnd.Front, height).TryGet(out PracticeMachine? front, out Failure? failure)
            ? After(front.RaiseTube(TubeEnd.Rear, height), new VisitEvent.RaiseTube(height))
            : failure;

    private Outcome<PracticeVisit> After(Outcome<PracticeMachine> changed, VisitEvent e) => changed.TryGet(out PracticeMachine? machine, out Failure? failure)
        ? this with { Machine = machine, Events = [.. Events, e] }
        : failure;

    private Outcome<PracticeVisit> Fired(PracticeStation station, Func<MeasuredPoint, VisitEvent> seen, Random random, Func<BurnMark, Outcome<MeasuredPoint>> measure) =>
        Machine.Fire(station, random).TryGet(out BurnMark? mark, out Failure? failure) && measure(mark).TryGet(out MeasuredPoint? at, out failure)
            ? this with { Events = [.. Events, seen(at)] }
            : failure;

    private PracticeStation Station(VisitAction.Fire fire) => Machine.StationAt(
        Leg(fire.Leg), Length.FromMillimetres(fire.Path), Gantry(fire));

    private Length Gantry(VisitAction.Fire fire) => fire.Gantry ?? (End == GantryEnd.Far ? Machine.Stated.LegOne.Travel : Length.Zero);

    private static PracticeLeg Leg(string name) => name == VisitLeg.One ? PracticeLeg.One : PracticeLeg.Two;

    private static string? LegOf(VisitAction action) => action switch
    {
        VisitAction.Fire fire => fire.Leg,
        VisitAction.Turn turn => turn.Leg,
        VisitAction.Realign realign => realign.Leg,
        _ => null,
    };

    private static Practice.Rails.BedCorner Corner(BedCorner corner) => Enum.Parse<Practice.Rails.BedCorner>(corner.ToString());
}
