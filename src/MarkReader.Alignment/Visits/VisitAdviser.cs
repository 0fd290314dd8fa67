using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The next action of a visit: a function of the machine and of what has happened, in the order of the work.</summary>
/// <remarks>
/// Leg 1, leg 2, the corner survey with its cures, centring, leg 3. What a change makes stale: <see cref="VisitHistory"/>. A leg that a survey
/// has shown to be at fault is worked on again against a smaller part of the tolerance. A step that was skipped is passed over.
/// </remarks>
public static class VisitAdviser
{
    // Parts of a leg's share of the tolerance that are tried until its own marks show the slope that the survey shows.
    private static readonly double[] s_tighter = [0.5, 0.25, 0.12];

    public static Outcome<VisitAdvice> Advise(VisitSetup setup, IReadOnlyList<VisitEvent> events)
    {
        if ((VisitChecks.Setup(setup) ?? VisitChecks.Events(setup, events)) is { } wrong)
            return wrong;
        VisitHistory history = VisitHistory.Of(setup, events);
        Dictionary<string, LegStage> legs = [];
        foreach (VisitLeg leg in setup.Legs)
        {
            if (!LegStage.Of(setup, leg, history).TryGet(out LegStage? stage, out Failure? failure))
                return failure;
            legs.Add(leg.Name, stage);
        }

        return new Day(setup, history, legs).Next();
    }

    private sealed class Day(VisitSetup setup, VisitHistory history, IReadOnlyDictionary<string, LegStage> legs)
    {
        private SurveyStage? _survey;
        private CentringStage? _centring;

        public Outcome<VisitAdvice> Next()
        {
            if (setup.Bed is not null)
            {
                if (!SurveyStage.Of(setup, history).TryGet(out _survey, out Failure? failure))
                    return failure;
                bool settled = (_survey.Action is null && _survey.Again is null) || (IsSkipped(VisitStep.Survey) && _survey.State.Diagnosis?.Fit is not null);
                if (setup.Aperture is not null && settled
                    && !CentringStage.Of(setup, history, _survey.State.Diagnosis!.Fit!).TryGet(out _centring, out failure))
                    return failure;
            }

            foreach (VisitStep step in new[] { VisitStep.LegOne, VisitStep.LegTwo })
            {
                if (OnLeg(step) is { } stage)
                    return Advice(step, stage.Action!, stage.Reason, stage.Expected);
            }

            if (!IsSkipped(VisitStep.Survey) && _survey?.Again is { } again)
                return Again(again, _survey);
            if (!IsSkipped(VisitStep.Survey) && _survey?.Action is { } survey)
                return Advice(VisitStep.Survey, survey, _survey.Reason, _survey.Expected);
            if (!IsSkipped(VisitStep.Centring) && _centring?.Action is { } centre)
                return Advice(VisitStep.Centring, centre, _centring.Reason, _centring.Expected);
            if (OnLeg(VisitStep.LegThree) is { } below)
                return Advice(VisitStep.LegThree, below.Action!, below.Reason, below.Expected);
            return Advice(null, new VisitAction.Done(), VisitWords.Done(State(null)), null);
        }

        private bool IsSkipped(VisitStep step) => history.Skipped.ContainsKey(step);

        // The work on a leg; null when there is none to do.
        private LegStage? OnLeg(VisitStep step) => !IsSkipped(step) && legs.TryGetValue(step.Name(), out LegStage? stage) && stage.Action is not null ? stage : null;

        // The leg's own marks decide about its screws; where they show nothing even at the smallest part, something does not fit.
        private Outcome<VisitAdvice> Again(IReadOnlyList<SlopeFinding> slopes, SurveyStage survey)
        {
            VisitWords.SpreadWords words = new(setup.Bed!, survey.State.Greatest!.Value, survey.State.Spread);
            // A leg that was skipped stays as it is.
            foreach (SlopeFinding slope in slopes.Where(s => !IsSkipped(VisitSteps.OfLeg(SurveyStage.LegOf(s)))))
            {
                VisitLeg leg = setup.Find(SurveyStage.LegOf(slope))!;
                foreach (double tightness in s_tighter)
                {
                    if (!LegStage.Of(setup, leg, history, tightness).TryGet(out LegStage? stage, out Failure? failure))
                        return failure;
                    if (stage.Action is VisitAction.Turn || (stage.Action is VisitAction.Fire && !Surer(stage, leg, slope)))
                        return Advice(VisitSteps.OfLeg(leg.Name), stage.Action, $"{words.Slope(slope)} {stage.Reason}", stage.Expected);
                }
            }

            return survey.Otherwise is { } more
                ? Advice(VisitStep.Survey, more.Action!, more.Reason, more.Expected)
                : Advice(VisitStep.Survey, new VisitAction.Stop(), words.SlopeGone(slopes[0]), null);
        }

        // Once the leg's own marks tell its walk better than the survey does, more of them show nothing new.
        private static bool Surer(LegStage stage, VisitLeg leg, SlopeFinding slope)
        {
            if (stage.State.Slope is not { } own)
                return false;
            double travel = leg.Setup.Travel;
            return travel * travel * (own.Covariance.Uu + own.Covariance.Vv) < slope.Covariance.Uu + slope.Covariance.Vv;
        }

        private VisitAdvice Advice(VisitStep? step, VisitAction action, string reason, ExpectedPlace? expected) =>
            new(action, reason, expected, State(step), [.. history.Warnings, .. legs.Values.SelectMany(l => l.Warnings), .. _survey?.State.Diagnosis?.Warnings ?? []]);

        private VisitState State(VisitStep? step)
        {
            CentringState? centring = setup.Aperture is null ? null : _centring?.State ?? CentringStage.Open;
            Conformity[] parts = [.. legs.Values.Select(l => l.State.State.Spread), .. _survey is null ? [] : new[] { _survey.State.Spread }, .. centring is null ? [] : new[] { centring.Verdict }];
            return new(legs.ToDictionary(l => l.Key, l => l.Value.State), _survey?.State, centring, JobVerdicts.Whole(parts))
            {
                Current = step,
                IsReopened = step is { } now && history.IsReopened(now),
                Skipped = history.Skipped,
                Stale = history.Stale,
            };
        }
    }
}
