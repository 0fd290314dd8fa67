using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.History;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Records;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.History;

/// <summary>What was found and left at one visit, so that it can be compared with what was left and found at others.</summary>
/// <remarks>
/// The record's "found" is that before the first change of the step's own. Between visits only that compares which did not come after something else was
/// changed as well: a turn at a leg before it is allowed, and its effect taken in as uncertainty (<see cref="QuantityHistory"/>); any other change is not.
/// </remarks>
internal sealed class VisitStates
{
    private readonly VisitSetup _setup;
    private readonly IReadOnlyList<VisitEvent> _events;
    private readonly VisitAdvice _end;
    private readonly FoundStates _found;
    private readonly IReadOnlyList<RecordStep> _steps;

    private VisitStates(Visit visit, VisitAdvice end)
    {
        (_setup, _events, _end) = (visit.Setup, visit.Events, end);
        _found = new(_setup, _events, end);
        _steps = _found.Steps();
    }

    public static Outcome<HistoryVisit> Of(KeptVisit visit)
    {
        if (!AdviseVisit.Read(visit).TryGet(out Visit? read, out Failure? failure) || !VisitAdviser.Advise(read.Setup, read.Events).TryGet(out VisitAdvice? end, out failure))
            return failure;
        VisitStates states = new(read, end);
        return new HistoryVisit(visit.Entry.Id, visit.Entry.BegunAt, end.State.Machine.Verdict, HistoryQuantity.Of(read.Setup).ToDictionary(q => q, states.State));
    }

    private HistoryState State(HistoryQuantity quantity)
    {
        string[] before = quantity.Kind == HistoryKind.Slope ? [.. _setup.Legs.TakeWhile(l => l.Name != quantity.Leg).Select(l => l.Name)] : [VisitLeg.One, VisitLeg.Two];
        RecordStep step = _steps.First(s => s.Leg == quantity.Leg && s.Quantity == Recorded(quantity.Kind));
        int last = Last(e => Changes(e, quantity, before));
        bool isChanged = last >= 0;
        HistoryValue? left = last < Last(e => IsPulse(e, quantity)) ? Value(quantity, step.Left) : null;
        int? count = quantity.Kind switch
        {
            HistoryKind.Slope => _found.Found(_setup.Legs.First(l => l.Name == quantity.Leg)),
            HistoryKind.Centring => _found.FoundCentring(),
            _ => null,
        };
        // The spread is only shown: it is as the record has it.
        HistoryValue? found = !isChanged ? left
            : quantity.Kind == HistoryKind.Spread || (count is { } n && _events.Take(n).All(e => !Changes(e, quantity, before) || IsTurn(e, before))) ? step.Found is { } state ? Value(quantity, state) : null
            : null;
        return new(found, left, isChanged, Tolerance(quantity, step))
        {
            Before = !isChanged || count is null ? [] : [.. before.Where(leg => _events.Take(count.Value).Any(e => IsTurn(e, [leg]))).Select(leg => new LegBefore(leg, Arm(quantity, leg), Slope(_found.At(count.Value), leg)))],
            Ends = before.Select(leg => (leg, Slope: Slope(_end, leg))).Where(l => l.Slope is not null).ToDictionary(l => l.leg, l => l.Slope!),
        };
    }

    private int Last(Func<VisitEvent, bool> condition)
    {
        for (int i = _events.Count - 1; i >= 0; i--)
        {
            if (condition(_events[i]))
                return i;
        }

        return -1;
    }

    private static bool IsTurn(VisitEvent e, IReadOnlyCollection<string> legs) => e is VisitEvent.Turn turn && legs.Contains(turn.Leg);

    // What the marks of the step count no longer after, as advice has it; what belongs to later legs does not move it.
    private static bool Changes(VisitEvent e, HistoryQuantity quantity, string[] before)
    {
        bool isSlope = quantity.Kind == HistoryKind.Slope;
        bool Is(string leg) => leg == quantity.Leg || before.Contains(leg);
        return e switch
        {
            VisitEvent.Turn turn => Is(turn.Leg),
            VisitEvent.Disturbed disturbed => Is(disturbed.Leg),
            VisitEvent.Realign realign => isSlope ? realign.Leg == quantity.Leg : Is(realign.Leg),
            VisitEvent.Again again => isSlope ? Is(again.Step.Name()) : again.Step.Name() != VisitLeg.Three,
            VisitEvent.Shim shim => quantity.Leg != VisitLeg.One || shim.Corner is not (BedCorner.NearRight or BedCorner.FarRight),
            VisitEvent.MoveTarget => !isSlope || quantity.Leg == VisitLeg.Three,
            VisitEvent.RaiseTube => true,
            _ => false,
        };
    }

    private static bool IsPulse(VisitEvent e, HistoryQuantity quantity) => quantity.Leg is { } leg ? FoundStates.IsOn(e, leg) : e is VisitEvent.Survey;

    private static RecordQuantity Recorded(HistoryKind kind) => kind switch
    {
        HistoryKind.Slope => RecordQuantity.LegSpread,
        HistoryKind.Spread => RecordQuantity.BedSpread,
        _ => RecordQuantity.Centring,
    };

    private static HistoryValue? Value(HistoryQuantity quantity, RecordState state) => quantity.Kind == HistoryKind.Slope
        ? Of(state.Slope)
        : state.Value is { } v ? new(v.Vector.U, v.Vector.V, v.Covariance) : null;

    private static HistoryValue? Slope(VisitAdvice? advice, string leg) => advice is null ? null : Of(advice.State.Legs.GetValueOrDefault(leg)?.Slope);

    private static HistoryValue? Of(Slope? slope) => slope is { } s ? new(s.U, s.V, s.Covariance) : null;

    // Of the head's mark: the way from the leg's source mirror to the head, at its longest.
    private double Arm(HistoryQuantity quantity, string leg) => quantity.Kind == HistoryKind.Slope
        ? 1
        : _setup.Legs.SkipWhile(l => l.Name != leg).TakeWhile(l => l.Name != VisitLeg.Three).Sum(l => l.Setup.Far.Path.Millimetres) / 1000;

    private double Tolerance(HistoryQuantity quantity, RecordStep step) => quantity.Kind == HistoryKind.Slope && _setup.Legs.First(l => l.Name == quantity.Leg).Setup is var leg
        ? 1000 * step.Tolerance.Millimetres / (leg.Far.Path - leg.Near.Path).Millimetres
        : step.Tolerance.Millimetres;
}
