using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Practising;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;
using MarkReader.Trials.Machines;
using MarkReader.Trials.Scores;

namespace MarkReader.Trials.Methods;

/// <summary>A machine brought into alignment by the adviser.</summary>
internal static class AdvisedVisit
{
    private const int MostActions = 300;

    /// <param name="seen">Told of every piece of advice and of the visit as it stood.</param>
    public static (PracticeVisit Visit, VisitAdvice Last) Play(TrialMachine trial, Random random, Action<PracticeVisit, VisitAdvice>? seen = null)
    {
        PracticeVisit visit = PracticeVisit.Begin(trial.Machine);
        for (int i = 0; ; i++)
        {
            VisitAdvice advice = VisitAdviser.Advise(trial.Setup, visit.Events).ValueOrThrow();
            seen?.Invoke(visit, advice);
            if (advice.Action is VisitAction.Done or VisitAction.Stop || i == MostActions)
                return (visit, advice);
            if (!visit.Do(advice.Action, random, mark => mark.Measured).TryGet(out PracticeVisit? next, out _))
                return (visit, advice);
            visit = next;
        }
    }

    public static TrialResult Run(TrialMachine trial)
    {
        List<GivenVerdict> verdicts = [];
        TwistTold? told = null;
        (PracticeVisit visit, VisitAdvice last) = Play(trial, trial.Chance(3), (at, advice) =>
        {
            Judge(at.Machine, advice.State, verdicts);
            if (told is null && advice.State.Survey is { Diagnosis: { HasEnoughData: true } diagnosis, Marks: >= 4 })
                told = Told(at.Machine, diagnosis);
        });
        int Pulses(string leg) => visit.Events.Count(e => e is VisitEvent.Mark m && m.Leg == leg);
        int Turns(string leg) => visit.Events.Count(e => e is VisitEvent.Turn t && t.Leg == leg);
        return new(
            Ending.Of(trial.Machine),
            Ending.Of(visit.Machine),
            last.Action is VisitAction.Done ? null : last.Reason,
            [Pulses(VisitLeg.One), Pulses(VisitLeg.Two)],
            [Turns(VisitLeg.One), Turns(VisitLeg.Two)],
            visit.Events.OfType<VisitEvent.Survey>().Count(),
            verdicts,
            told);
    }

    // Every verdict that a user could have read, beside the truth at that time.
    private static void Judge(PracticeMachine machine, VisitState state, List<GivenVerdict> verdicts)
    {
        foreach ((string name, PracticeLeg leg) in new[] { (VisitLeg.One, PracticeLeg.One), (VisitLeg.Two, PracticeLeg.Two) })
        {
            if (state.Legs[name].Slope is not null && state.Survey is { Marks: 0 } && machine.LegSpread(leg, stations: 2).TryGet(out MarkSpread? spread, out _))
                verdicts.Add(new("leg", state.Legs[name].State.Verdict, spread.Greatest <= TrialMachine.Tolerance));
        }

        if (state.Survey is { Greatest: not null } survey && machine.BedSpread(side: 2).TryGet(out MarkSpread? bed, out _))
            verdicts.Add(new("bed", survey.Spread.Verdict, bed.Greatest <= TrialMachine.Tolerance));
    }

    private static TwistTold? Told(PracticeMachine machine, SurveyDiagnosis diagnosis)
    {
        double Height(Length x, Length y) => machine.TrueMark(PracticeStation.LegTwo(x, y)).ValueOrThrow().Place.V;
        (Length right, Length far) = (machine.Stated.LegTwo.Travel, machine.Stated.LegOne.Travel);
        double twist = Height(right, far) - Height(Length.Zero, far) - Height(right, Length.Zero) + Height(Length.Zero, Length.Zero);
        return new(twist, diagnosis.Twist!.Value.Uncertainty, diagnosis.Findings.Any(f => f is TwistFinding));
    }
}
