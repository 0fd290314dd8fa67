using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Visits;

/// <summary>The next action of a visit: a function of the machine and of what has happened, in the order of the work.</summary>
/// <remarks>
/// Leg 1, leg 2, the corner survey with its cures, centring, leg 3. What a change makes stale: <see cref="VisitHistory"/>. A leg that a survey
/// has shown to be at fault is worked on again against a smaller part of the tolerance.
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
                if (setup.Aperture is not null && _survey.Action is null && _survey.Again is null
                    && !CentringStage.Of(setup, history, _survey.State.Diagnosis!.Fit!).TryGet(out _centring, out failure))
                    return failure;
            }

            foreach (string leg in new[] { VisitLeg.One, VisitLeg.Two })
            {
                if (legs.TryGetValue(leg, out LegStage? stage) && stage.Action is { } onLeg)
                    return Advice(onLeg, stage.Reason, stage.Expected);
            }

            if (_survey?.Again is { } again)
                return Again(again, _survey);
            if (_survey?.Action is { } survey)
                return Advice(survey, _survey.Reason, _survey.Expected);
            if (_centring?.Action is { } centre)
                return Advice(centre, _centring.Reason, _centring.Expected);
            if (legs.TryGetValue(VisitLeg.Three, out LegStage? three) && three.Action is { } below)
                return Advice(below, three.Reason, three.Expected);
            return Advice(new VisitAction.Done(), VisitWords.Done(State()), null);
        }

        // The leg's own marks decide about its screws; where they show nothing even at the smallest part, something does not fit.
        private Outcome<VisitAdvice> Again(IReadOnlyList<SlopeFinding> slopes, SurveyStage survey)
        {
            VisitWords.SpreadWords words = new(setup.Bed!, survey.State.Greatest!.Value, survey.State.Spread);
            foreach (SlopeFinding slope in slopes)
            {
                VisitLeg leg = setup.Find(SurveyStage.LegOf(slope))!;
                foreach (double tightness in s_tighter)
                {
                    if (!LegStage.Of(setup, leg, history, tightness).TryGet(out LegStage? stage, out Failure? failure))
                        return failure;
                    if (stage.Action is VisitAction.Turn || (stage.Action is VisitAction.Fire && !Surer(stage, leg, slope)))
                        return Advice(stage.Action, $"{words.Slope(slope)} {stage.Reason}", stage.Expected);
                }
            }

            return survey.Otherwise is { } more
                ? Advice(more.Action!, more.Reason, more.Expected)
                : Advice(new VisitAction.Stop(), words.SlopeGone(slopes[0]), null);
        }

        // Once the leg's own marks tell its walk better than the survey does, more of them show nothing new.
        private static bool Surer(LegStage stage, VisitLeg leg, SlopeFinding slope)
        {
            if (stage.State.Slope is not { } own)
                return false;
            double travel = leg.Setup.Travel;
            return travel * travel * (own.Covariance.Uu + own.Covariance.Vv) < slope.Covariance.Uu + slope.Covariance.Vv;
        }

        private VisitAdvice Advice(VisitAction action, string reason, ExpectedPlace? expected) =>
            new(action, reason, expected, State(), [.. history.Warnings, .. legs.Values.SelectMany(l => l.Warnings), .. _survey?.State.Diagnosis?.Warnings ?? []]);

        private VisitState State()
        {
            CentringState? centring = setup.Aperture is null ? null : _centring?.State ?? CentringStage.Open;
            Conformity[] parts = [.. legs.Values.Select(l => l.State.State.Spread), .. _survey is null ? [] : new[] { _survey.State.Spread }, .. centring is null ? [] : new[] { centring.Verdict }];
            return new(legs.ToDictionary(l => l.Key, l => l.Value.State), _survey?.State, centring, JobVerdicts.Whole(parts));
        }
    }
}
