using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Texts;
using MarkReader.Application.VisitLog;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>Pulses on the practice machine of a visit that is kept.</summary>
/// <remarks>
/// The machine is worked out anew from the events that count: an event that was taken back was never done. Chance is that of the machine's number and of the
/// event's, or for a pulse of the visit's version: a request that is repeated gives the same photo, the next pulse another one.
/// </remarks>
public static class PracticePulses
{
    private const int Step = 7919;

    /// <summary>Fires the pulse that is asked for next and photographs its mark.</summary>
    /// <returns>A JPEG; MARK_OFF_CARD or a failure of the machine when there is no mark to photograph; NO_PULSE_NOW when something else comes next.</returns>
    public static Outcome<byte[]> Fire(KeptVisit visit)
    {
        if (visit.Practice is not { } request)
            return new Failure(PractisingFailures.NotPractice, InputTexts.Word("practicePulses.visitRealMachine", visit.Entry.Id), InputTexts.Get("practicePulses.firePulseOnMachineWith"));
        if (!AdviseVisit.Run(visit.FileBytes()).TryGet(out VisitAdvice? advice, out Failure? failure)
            || !AdviseVisit.Read(visit).TryGet(out Visit? read, out failure)
            || !Stand(request, visit, read).TryGet(out PracticeVisit? now, out failure))
            return failure;
        if (advice.Action is not (VisitAction.Fire or VisitAction.Survey))
            return new Failure(PractisingFailures.NoPulseNow, InputTexts.Get("practicePulses.noPulseAskedForNow"), InputTexts.Get("practicePulses.doFirstWhatVisitAsks"));
        Random random = Chance(request, visit.Entry.Version, 1);
        byte[]? photo = null;
        Outcome<MeasuredPoint> Take(BurnMark mark)
        {
            if (!PulsePhoto.Take(PulsePhoto.Cards, mark, random).TryGet(out photo, out Failure? wrong))
                return wrong;
            return mark.Measured;
        }

        return now.Do(advice.Action, random, Take).TryGet(out _, out failure) ? photo! : failure;
    }

    /// <summary>The true spread of the marks over the bed as the machine stands; null where the beam is lost. For the end of a practice, never for the adviser.</summary>
    public static Length? TrueSpread(KeptVisit visit) =>
        visit.Practice is { } request && AdviseVisit.Read(visit).TryGet(out Visit? read, out _) && Stand(request, visit, read).TryGet(out PracticeVisit? now, out _)
            && now.Machine.BedSpread().TryGet(out MarkSpread? spread, out _)
            ? spread.Greatest
            : null;

    private static Outcome<PracticeVisit> Stand(PracticeRequest request, KeptVisit visit, Visit read)
    {
        if (!PracticeMachineFile.Draw(request).TryGet(out PracticeMachine? machine, out Failure? failure))
            return failure;
        PracticeVisit now = PracticeVisit.Begin(machine);
        foreach ((KeptEvent kept, VisitEvent e) in visit.Events.Zip(read.Events))
        {
            if (Done(e) is { } action && !now.Do(action, Chance(request, kept.Number, 0), mark => mark.Measured).TryGet(out now!, out failure))
                return StepWords.Name(failure with { What = $"{new SaidEvent(1)}: {failure.What}" }, [(kept.Number, kept.Text)]);
        }

        return now;
    }

    // A mark changes nothing on the machine.
    private static VisitAction? Done(VisitEvent e) => e switch
    {
        VisitEvent.Turn turn => new VisitAction.Turn(turn.Leg, turn.Screw, turn.Turns),
        VisitEvent.Shim shim => new VisitAction.Shim(shim.Corner, shim.Height),
        VisitEvent.MoveTarget move => new VisitAction.MoveTarget(move.By),
        VisitEvent.RaiseTube raise => new VisitAction.RaiseTube(raise.Height),
        VisitEvent.Realign realign => new VisitAction.Realign(realign.Leg, realign.At),
        _ => null,
    };

    private static Random Chance(PracticeRequest request, long number, int kind) => new(unchecked((int)((request.Seed * 2L * Step) + (number * 2) + kind)));
}
