using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;

namespace MarkReader.Application.Records;

/// <summary>What each step was like before anything was changed at it, and what it is like at the end.</summary>
internal sealed class FoundStates(VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice end)
{
    // Each costs advice of its own.
    private const int MostLooks = 60;

    private readonly Dictionary<int, VisitAdvice?> _looks = [];

    public IReadOnlyList<RecordStep> Steps()
    {
        List<RecordStep> steps = [.. setup.Legs.Select(Leg)];
        if (setup.Bed is { } bed)
            steps.Add(new(RecordQuantity.BedSpread, null, bed.Tolerance, First(Bed, e => e is VisitEvent.Survey), Bed(end) ?? Open(end.State.Survey!.Spread), Skipped(VisitStep.Survey)));
        if (setup.Aperture is { } aperture)
            steps.Add(new(RecordQuantity.Centring, null, aperture.Tolerance, First(Centring, e => e is VisitEvent.Survey), Centring(end) ?? Open(end.State.Centring!.Verdict), Skipped(VisitStep.Centring)));
        return steps;
    }

    /// <summary>How many of the events had happened when the leg was as found; null when it was not measured before the first change to it.</summary>
    public int? Found(VisitLeg leg) => Moments(e => IsOn(e, leg.Name), e => e is VisitEvent.Turn turn && turn.Leg == leg.Name)
        .Cast<int?>().FirstOrDefault(n => At(n!.Value)?.State.Legs[leg.Name].Slope is not null);

    /// <summary>The same of the steady mark.</summary>
    public int? FoundCentring() => Moments(e => e is VisitEvent.Survey, _ => false).Cast<int?>().FirstOrDefault(n => At(n!.Value) is { } advice && Centring(advice) is not null);

    private RecordStep Leg(VisitLeg leg)
    {
        RecordState? found = Found(leg) is { } n ? State(leg, At(n)!) : null;
        return new(RecordQuantity.LegSpread, leg.Name, leg.Setup.Tolerance, found, State(leg, end), VisitSteps.Find(leg.Name) is { } step ? Skipped(step) : null);
    }

    private string? Skipped(VisitStep step) => end.State.Skipped.GetValueOrDefault(step);

    private static RecordState State(VisitLeg leg, VisitAdvice advice)
    {
        LegState state = advice.State.Legs[leg.Name].State;
        double metres = (leg.Setup.Far.Path - leg.Setup.Near.Path).Millimetres / 1000;
        MeasuredVector? walk = state.Slope is { } s ? new(new(metres * s.U, metres * s.V), metres * metres * s.Covariance) : null;
        return new(state.Spread, walk, state.Slope, state.Aim);
    }

    private static RecordState? Bed(VisitAdvice advice) => advice.State.Survey is { Greatest: not null, Diagnosis.Fit: { } fit } survey
        ? new(survey.Spread, fit.Differences().MaxBy(d => d.Vector.Magnitude)!, null, null)
        : null;

    private static RecordState? Centring(VisitAdvice advice) => advice.State.Centring is { Offset: { } offset } centring ? new(centring.Verdict, offset, null, null) : null;

    private static RecordState Open(Conformity conformity) => new(conformity, null, null, null);

    private RecordState? First(Func<VisitAdvice, RecordState?> state, Func<VisitEvent, bool> pulse) =>
        Moments(pulse, _ => false).Select(n => At(n) is { } advice ? state(advice) : null).FirstOrDefault(s => s is not null);

    // Just before each change that follows a pulse of the step, up to the first change of the step's own; without changes, the end.
    private IEnumerable<int> Moments(Func<VisitEvent, bool> isPulse, Func<VisitEvent, bool> isOwn)
    {
        bool fresh = false;
        for (int i = 0; i < events.Count; i++)
        {
            fresh |= isPulse(events[i]);
            if (!IsChange(events[i]))
                continue;
            if (fresh)
                yield return i;
            fresh = false;
            if (isOwn(events[i]))
                yield break;
        }

        if (fresh)
            yield return events.Count;
    }

    private static bool IsChange(VisitEvent e) => e is VisitEvent.Turn or VisitEvent.Shim or VisitEvent.MoveTarget or VisitEvent.RaiseTube or VisitEvent.Realign or VisitEvent.Disturbed or VisitEvent.Again;

    public static bool IsOn(VisitEvent e, string leg) => e is VisitEvent.Mark mark ? mark.Leg == leg : e is VisitEvent.Survey && leg == VisitLeg.Two;

    /// <summary>The advice when so many of the events had happened; null when it cannot be had.</summary>
    public VisitAdvice? At(int count)
    {
        if (count == events.Count)
            return end;
        if (!_looks.TryGetValue(count, out VisitAdvice? advice) && _looks.Count < MostLooks)
        {
            advice = VisitAdviser.Advise(setup, [.. events.Take(count)]).TryGet(out VisitAdvice? then, out _) ? then : null;
            _looks.Add(count, advice);
        }

        return advice;
    }
}
