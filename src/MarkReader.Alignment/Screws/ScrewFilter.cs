namespace MarkReader.Alignment.Screws;

/// <summary>Works through the events of a leg: Bayes over the screws' senses, a Gaussian state for each of them.</summary>
/// <remarks>
/// Every combination of senses has its own extended Kalman filter (A. Gelb, Applied Optimal Estimation, 1974, 6.1) and gains or loses
/// probability by the density of each mark before it is taken in. The products of response and move are made linear at the responses
/// known after all events, so the events are worked through a few times. A function of the events alone.
/// </remarks>
internal static class ScrewFilter
{
    /// <summary>A mark less probable than this under every hypothesis is not chance.</summary>
    public const double ContradictionBelow = 1e-5;

    /// <summary>Nor is one less probable than this that comes again at the next pulse.</summary>
    public const double RepeatedBelow = 1e-4;

    /// <summary>A mark less probable than this is asked for once more.</summary>
    public const double DoubtBelow = 1e-3;

    // A mark at least this probable lies where it should.
    private const double AsExpected = 0.01;

    // A screw that moves the beam by less than this part of what its frame gives does not hold the plate.
    private const double IdleShare = 0.4;

    private const int Passes = 3;

    // Hypotheses below this share do not explain a mark.
    private const double ShareThatCounts = 5e-5;

    /// <summary>The leg after its events, and at its last mark.</summary>
    /// <param name="Now">After all events.</param>
    /// <param name="AtMark">After the last mark; before any event when there is none.</param>
    /// <param name="TurnedSince">Turns after the last mark, in order.</param>
    /// <param name="LastSign">Per screw, the direction of its last turn up to the last mark; 0 without one.</param>
    /// <param name="Misfits">Marks that did not fit.</param>
    public sealed record Result(Belief Now, Belief AtMark, IReadOnlyList<LegEvent.Turn> TurnedSince, IReadOnlyList<int> LastSign, IReadOnlyList<Misfit> Misfits);

    /// <param name="model">The leg.</param>
    /// <param name="events">Checked events: known screws, finite numbers.</param>
    /// <param name="stations">Path lengths that will be asked about besides those of the events, mm.</param>
    public static Result After(LegModel model, IReadOnlyList<LegEvent> events, IReadOnlyList<double> stations)
    {
        StateLayout layout = new(model.Screws.Count, [.. events.OfType<LegEvent.Mark>().Select(m => m.Path).Concat(stations).Distinct()]);
        Linearisation? linear = null;
        for (int pass = 1; ; pass++)
        {
            Run run = new(model, layout, linear);
            for (int i = 0; i < events.Count; i++)
                run.Take(events, i);
            if (pass == Passes)
                return run.Result();
            linear = run.Linearisation();
        }
    }

    // Where products are taken linear in the next pass, by hypothesis: responses as known at the end, and for every mark the beam's line
    // as known before the next turn.
    private sealed record Linearisation(double[][] Responses, IReadOnlyDictionary<int, double[][]> Lines);

    private sealed class Run(LegModel model, StateLayout layout, Linearisation? linear)
    {
        private readonly Dictionary<int, double[][]> _lines = [];
        private readonly List<int> _marks = [];
        private readonly List<Misfit> _misfits = [];
        private readonly List<LegEvent.Turn> _since = [];
        private readonly int[] _sign = new int[model.Screws.Count];
        private IReadOnlyList<Hypothesis> _now = ScrewPrior.Of(model, layout);
        private Belief? _atMark;
        private int[]? _signAtMark;

        public Linearisation Linearisation()
        {
            LineEnds();
            return new(Means(), _lines);
        }

        public Result Result()
        {
            Belief now = new(model, layout, _now);
            return new(now, _atMark ?? now, _since, _signAtMark ?? new int[_sign.Length], _misfits);
        }

        public void Take(IReadOnlyList<LegEvent> events, int i)
        {
            switch (events[i])
            {
                case LegEvent.Turn turn:
                    Turn(turn);
                    break;
                case LegEvent.Mark mark:
                    Mark(mark, events, i);
                    break;
                case LegEvent.Disturbed:
                    LineEnds();
                    _now = Copies();
                    foreach (Hypothesis h in _now)
                        ScrewPrior.ForgetLine(h.State);
                    Kept();
                    break;
            }
        }

        private void Turn(LegEvent.Turn turn)
        {
            int screw = model.IndexOf(turn.Screw), first = StateLayout.Response(screw);
            LineEnds();
            _now = Copies();
            for (int h = 0; h < _now.Count; h++)
            {
                GaussianState state = _now[h].State;
                double[] response = [.. (linear is null ? state.Mean : linear.Responses[h]).AsSpan(first, StateLayout.Line)];
                TurnModel.Apply(state, screw, turn.Turns, model.Habits.HandSetting, response);
            }

            if (turn.Turns != 0)
                _sign[screw] = Math.Sign(turn.Turns);
            _since.Add(turn);
        }

        private void Mark(LegEvent.Mark mark, IReadOnlyList<LegEvent> events, int i)
        {
            IReadOnlyList<Hypothesis> after = Taken(mark, i, out double probability);
            if (probability < DoubtBelow)
            {
                (MisfitReading reading, int said) = Read(events, i, mark, probability);
                Belief before = new(model, layout, _now);
                _misfits.Add(new(said, mark, before.Forecast(before.Likeliest, mark.Path), probability, [.. _since.Select(t => t.Screw).Distinct()], reading));
                if (reading == MisfitReading.Outlier)
                    return;
                if (reading == MisfitReading.Contradiction)
                {
                    Restart();
                    after = Taken(mark, i, out _);
                }
            }

            _now = after;
            _marks.Add(i);
            Kept();
        }

        private double[][] Means() => [.. _now.Select(h => h.State.Mean)];

        private void LineEnds()
        {
            foreach (int mark in _marks)
                _lines[mark] = Means();
            _marks.Clear();
        }

        private void Kept()
        {
            _atMark = new(model, layout, _now);
            _signAtMark = [.. _sign];
            _since.Clear();
        }

        // The repetition of an improbable mark decides whether it was the mark or the beam; it is then the event that says so.
        private (MisfitReading Reading, int Said) Read(IReadOnlyList<LegEvent> events, int i, LegEvent.Mark mark, double probability)
        {
            bool repeated = i + 1 < events.Count && events[i + 1] is LegEvent.Mark next && next.Path == mark.Path;
            if (repeated && IsOutlier(mark, (LegEvent.Mark)events[i + 1], i + 1))
                return (MisfitReading.Outlier, i);
            // Where nothing was turned, one more pulse tells whether the mark or the beam has moved.
            if (probability < ContradictionBelow && (_since.Count > 0 || repeated || i < events.Count - 1))
                return (MisfitReading.Contradiction, _since.Count == 0 && repeated ? i + 1 : i);
            if (repeated && probability < RepeatedBelow)
                return (MisfitReading.Contradiction, i + 1);
            return (i == events.Count - 1 ? MisfitReading.Doubtful : MisfitReading.Confirmed, i);
        }

        // The next mark lies where it should, and apart from this one; where nothing was turned, the first is enough.
        private bool IsOutlier(LegEvent.Mark mark, LegEvent.Mark next, int nextEvent)
        {
            Taken(next, nextEvent, out double second);
            double apart = (mark.At.Covariance + next.At.Covariance).MahalanobisSquared(mark.At.Point - next.At.Point);
            return second >= AsExpected && (_since.Count == 0 || Math.Exp(-apart / 2) < AsExpected);
        }

        private Hypothesis[] Taken(LegEvent.Mark mark, int i, out double probability)
        {
            GaussianState[] states = [.. _now.Select(h => h.State.Copy())];
            double[][]? lines = linear?.Lines.GetValueOrDefault(i);
            (double Deviance, double ChiSquare)[] fits = [.. states.Select((s, h) => MarkModel.Observe(s, layout, model.Tape, mark, lines?[h]))];
            // χ² with two degrees of freedom exceeds x with probability exp(−x/2).
            probability = Math.Exp(-_now.Zip(fits).Where(p => p.First.Weight >= ShareThatCounts).Min(p => p.Second.ChiSquare) / 2);
            double least = fits.Min(f => f.Deviance);
            double[] weights = [.. _now.Zip(fits, (h, f) => h.Weight * Math.Exp((least - f.Deviance) / 2))];
            double sum = weights.Sum();
            Hypothesis[] after = [.. _now.Select((h, k) => h with { State = states[k], Weight = sum > 0 ? weights[k] / sum : h.Weight })];
            // A mark that only a screw without effect explains is no better than one that nothing explains.
            if (_since.Any(t => Idle(after.MaxBy(h => h.Weight)!, model.IndexOf(t.Screw))))
                probability = 0;
            return after;
        }

        private bool Idle(Hypothesis h, int screw)
        {
            int u = StateLayout.Response(screw) + 1, v = u + 2;
            double described = model.Screws[screw].Slope;
            return Math.Sqrt(Math.Pow(h.State.Mean[u], 2) + Math.Pow(h.State.Mean[v], 2)) < IdleShare * described
                && Math.Sqrt(h.State[u, u] + h.State[v, v]) < IdleShare * described;
        }

        // A contradiction: the beam's line starts anew, and the responses are believed half as much.
        private void Restart()
        {
            LineEnds();
            _now = Copies();
            foreach (Hypothesis h in _now)
            {
                ScrewPrior.ForgetLine(h.State);
                for (int j = 0; j < model.Screws.Count; j++)
                {
                    for (int k = 0; k < StateLayout.Line; k++)
                        h.State.Widen(StateLayout.Response(j) + k, 2);
                    ScrewPrior.ForgetContact(h.State, j);
                }
            }
        }

        private Hypothesis[] Copies() => [.. _now.Select(h => h with { State = h.State.Copy() })];
    }
}
