using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Texts;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>The next action on one leg: a function of the leg and of what has happened on it.</summary>
/// <remarks>
/// Near and far mark; then the screws that the slope asks for, each once, before the next pulse; then the mark that tells most.
/// Which screws, and whether a pulse is worth more than a turn: by the chance of a spread inside the tolerance (<see cref="TurnPlan"/>).
/// Done when the 95 % region of the slope lies in the tolerance and a mark after the last turn says so (<see cref="DecisionRule"/>).
/// </remarks>
public static class LegAdviser
{
    /// <summary>A leg that is not decided after so many pulses without a fresh start does not settle.</summary>
    public const int MostPulses = 40;

    // A mark's standard uncertainty until one has been measured, mm.
    private const double UsualMark = 0.05;

    // Senses less probable than this are not named among the places of the next mark.
    private const double BranchThatCounts = 0.05;

    // A slope less well known than this over the travel (mm, or three tolerances) is measured before anything is turned.
    private const double OpenSpread = 1;

    public static Outcome<LegAdvice> Advise(LegSetup setup, IReadOnlyList<LegEvent> events)
    {
        if (LegSetupChecks.Setup(setup) is { } wrong)
            return wrong;
        LegModel model = setup.Model;
        if (LegSetupChecks.Events(model, events) is { } wrongEvent)
            return wrongEvent;
        double[] ends = [setup.Near.Path.Millimetres, setup.Far.Path.Millimetres];
        ScrewFilter.Result result = ScrewFilter.After(model, events, ends);
        return Plausible(result)
            ? new Step(setup, events, result).Advice()
            : new Failure(AdviceFailures.BeamImplausible, AlignmentTexts.Get("legAdviser.marksPutBeamWhereNo"), AlignmentTexts.Get("legAdviser.checkMarksTheirPathLengths"));
    }

    private static bool Plausible(ScrewFilter.Result result) => result.Now.Hypotheses.Concat(result.AtMark.Hypotheses).All(h =>
        h.State.Mean.All(double.IsFinite) && double.IsFinite(SlopeBelief.Of(h.State).Uncertainty)
        && (h.Weight < 1e-3 || SlopeBelief.Of(h.State).Magnitude < 300));

    private sealed class Step(LegSetup setup, IReadOnlyList<LegEvent> events, ScrewFilter.Result result)
    {
        private readonly TurnPlan _plan = new(setup);
        private readonly AdviceWords _words = new(setup);
        private readonly double[] _stations = [setup.Near.Path.Millimetres, setup.Far.Path.Millimetres];
        private readonly LegEvent.Mark[] _marks = [.. events.OfType<LegEvent.Mark>()];

        public LegAdvice Advice()
        {
            LegState state = LegStateOf.Result(setup, result, Open(result.Now));
            (LegAction action, string reason) = Action(state);
            return new(action, reason, Expected(action), state, result.Now.Responses(), [.. Warnings()]);
        }

        private (LegAction Action, string Reason) Action(LegState state)
        {
            if (!events.Reverse().TakeWhile(e => e is not LegEvent.Disturbed).Any(e => e is LegEvent.Mark))
                return (new LegAction.Fire(_stations[0]), _marks.Length == 0 ? AdviceWords.FirstMark : AdviceWords.FirstMarkAgain);
            Misfit? misfit = result.Misfits.LastOrDefault(m => m.Event == events.Count - 1);
            if (misfit?.Reading == MisfitReading.Contradiction)
                return (new LegAction.Stop(), _words.Contradiction(misfit));
            if (misfit?.Reading == MisfitReading.Doubtful)
                return (new LegAction.Fire(misfit.Mark.Path), _words.Doubtful(misfit));
            if (state.Verdict == Verdict.Within)
                return (new LegAction.Done(), _words.Within(state));
            if (PulsesSinceStart() is >= MostPulses and int pulses)
                return (new LegAction.Stop(), _words.NotSettling(pulses));
            Covariance2 usual = UsualCovariance();
            (double path, SlopeBelief afterPulse) = NextStation.Best(result.AtMark, _stations, usual);
            if (Open(result.AtMark))
                return (new LegAction.Fire(path), _words.SlopeOpen(path));
            if (_plan.Next(result, _plan.Screws(result.AtMark, afterPulse)) is { } turn)
            {
                ScrewResponse response = result.Now.Responses()[turn.Screw];
                return (new LegAction.Turn(response.Screw, turn.Turns) { GoesBeyond = turn.OneSided }, _words.Turn(response, turn.OneSided, state));
            }

            if (state.Verdict == Verdict.Outside && result.TurnedSince.Count == 0)
                return (new LegAction.Stop(), TurnPlan.IsTooFine(result.Now) ? _words.TooFine(state) : _words.NoScrewHelps(state));
            (path, _) = NextStation.Best(result.Now, _stations, usual);
            return (new LegAction.Fire(path), result.TurnedSince.Count > 0 ? _words.SeeTurns(path, result.TurnedSince) : _words.Undecided(path, state));
        }

        // The work on the leg starts anew where its beam was disturbed and where something did not fit.
        private int PulsesSinceStart()
        {
            int start = Math.Max(
                result.Misfits.LastOrDefault(m => m.Reading == MisfitReading.Contradiction)?.Event ?? 0,
                events.Select((e, i) => e is LegEvent.Disturbed ? i : 0).Max());
            return events.Skip(start).OfType<LegEvent.Mark>().Count();
        }

        private IEnumerable<Warning> Warnings()
        {
            foreach (string screw in result.Now.UnlikeTheirFrame())
                yield return new("screwUnlikeFrame", AdviceWords.UnlikeFrame(screw));
            foreach (Misfit outlier in result.Misfits.Where(m => m.Reading == MisfitReading.Outlier))
                yield return new("markLeftOut", _words.LeftOut(outlier));
        }

        private bool Open(Belief belief) =>
            _marks.Length < 2 || SlopeBelief.Of(belief.Likeliest.State).Uncertainty * setup.Travel > Math.Max(OpenSpread, 3 * setup.Tolerance.Millimetres);

        private Covariance2 UsualCovariance() => _marks.Length == 0
            ? Covariance2.Isotropic(UsualMark)
            : 1.0 / _marks.Length * _marks.Select(m => m.At.Covariance).Aggregate((a, b) => a + b);

        private NextMark? Expected(LegAction action)
        {
            // Before two stations have told the slope, a forecast would only repeat the prior.
            Belief? then = action switch
            {
                LegAction.Fire when !Open(result.AtMark) => result.Now,
                LegAction.Turn turn => result.Now.Turned(result.Now.Model.IndexOf(turn.Screw), turn.Turns),
                _ => null,
            };
            if (then is null)
                return null;
            Covariance2 usual = UsualCovariance();
            double path = action is LegAction.Fire fire ? fire.Path : NextStation.Best(then, _stations, usual).Path;
            MeasuredPoint Mark(MarkForecast f) => new(new(f.U, f.V), f.Covariance + usual);
            // Senses of screws that were not turned make no difference.
            HashSet<int> turned = [.. result.TurnedSince.Select(t => t.Screw).Append((action as LegAction.Turn)?.Screw).OfType<string>().Select(then.Model.IndexOf)];
            return new(path, Mark(then.Forecast(path)), [.. then.Hypotheses
                .GroupBy(h => string.Join(',', turned.Order().Select(j => h.Senses[j])))
                .Select(alike => new NextMarkBranch(alike.Sum(h => h.Weight), Mark(then.Forecast(alike.MaxBy(h => h.Weight)!, path))))
                .Where(b => b.Probability >= BranchThatCounts)
                .OrderByDescending(b => b.Probability)]);
        }
    }
}
