using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Verdicts;

namespace MarkReader.Alignment.Advice;

/// <summary>Which screws to turn before the next pulse, and by how much.</summary>
internal sealed class TurnPlan(LegSetup setup)
{
    // Each turn must raise the chance of a leg within its tolerance by this part to be worth a hand's work.
    private const double CostOfTurn = 0.4;

    // A turn may miss the wanted one by this part of the tolerance, as the mark moves over the travel.
    private const double RoundingShare = 0.2;

    // A turn of open sense may cost another to take it back.
    private const double CostOfOpenSense = 0.1;

    // One-sided approach costs a turn: it is asked for where the lost motion leaves more than the tolerance open.
    private const double BacklashShare = 1.2;

    // Senses less probable than this are not guarded against.
    private const double SenseThatCounts = 0.01;

    // Part of the target's radius or of the mark's present distance by which a turn of open sense may put it farther out.
    private const double Outward = 1.15;

    // A turn may move the beam by this many times its slope, should the screw act as its frame's description says.
    private const double MostOverDescription = 2;

    // Parts of a turn that are tried until one is safe.
    private static readonly double[] Shares = [1, 0.85, 0.7, 0.55, 0.4, 0.3, 0.2, 0.12];

    /// <summary>The screws worth turning, seen from the last mark; empty when another pulse is worth more.</summary>
    /// <param name="atMark">The belief at the last mark.</param>
    /// <param name="afterPulse">The slope as another pulse would leave it.</param>
    public IReadOnlyList<int> Screws(Belief atMark, SlopeBelief afterPulse)
    {
        GaussianState state = atMark.Likeliest.State;
        SlopeBelief slope = SlopeBelief.Of(state);
        IReadOnlyList<int> best = [];
        double most = Worth(slope, slope, afterPulse.Uncertainty);
        for (int set = 1; set < 1 << atMark.Layout.Screws; set++)
        {
            int[] screws = [.. Enumerable.Range(0, atMark.Layout.Screws).Where(j => (set & (1 << j)) != 0)];
            double worth = Worth(slope, Aligned(state, slope, screws), slope.Uncertainty) * screws.Aggregate(1.0, (x, j) => x * (1 - CostOfTurn) * (SenseOpen(atMark, j) ? 1 - CostOfOpenSense : 1));
            if (worth > most)
                (best, most) = (screws, worth);
        }

        return best;
    }

    /// <summary>The next turn of those that remain, or null when none of them matters or is safe before a pulse.</summary>
    public (int Screw, double Turns, bool OneSided)? Next(ScrewFilter.Result events, IReadOnlyList<int> screws)
    {
        int[] remaining = [.. screws.Where(j => Remains(events, j))];
        if (remaining.Length == 0)
            return null;
        GaussianState state = events.Now.Likeliest.State;
        double[] wanted = Turns(state, SlopeBelief.Of(state), remaining);
        foreach ((int screw, double move) in remaining.Zip(wanted).OrderByDescending(p => Math.Abs(p.Second) * Response(state, p.First)))
        {
            int sign = Math.Sign(move);
            bool oneSided = sign != 0 && LastSign(events, screw) == -sign && BacklashMatters(events.AtMark, screw) && !Reversed(events, screw);
            double beyond = oneSided ? Lost(state, screw) : 0;
            if (Safe(events, screw, move, sign * beyond) is { } turns)
                return (screw, turns, oneSided);
        }

        return null;
    }

    /// <summary>Whether the screws would take the slope away, but by turns finer than the finest part.</summary>
    public static bool IsTooFine(Belief now)
    {
        GaussianState state = now.Likeliest.State;
        SlopeBelief slope = SlopeBelief.Of(state);
        (double u, double v) = (slope.U, slope.V);
        foreach (((double screwU, double screwV), double turns) in Enumerable.Range(0, now.Layout.Screws).Select(j => Slopes(state, j)).Zip(Turns(state, slope, [.. Enumerable.Range(0, now.Layout.Screws)])))
        {
            if (HandParts.Round(turns, 0) != 0)
                return false;
            (u, v) = (u + (turns * screwU), v + (turns * screwV));
        }

        return Math.Sqrt((u * u) + (v * v)) < slope.Magnitude / 2;
    }

    // The chance that the slope, as it would be, lies far enough inside the limit for the verdict to follow.
    private double Worth(SlopeBelief now, SlopeBelief then, double uncertainty)
    {
        double limit = setup.SlopeLimit, guard = Math.Min(DecisionRule.RegionFactor * uncertainty, limit / 2);
        // The last term only decides between chances too small to tell apart.
        return then.Within(limit - guard) + (1e-6 * now.Magnitude / (now.Magnitude + then.Magnitude + limit));
    }

    // The slope after the best turns of these screws, their responses taken as right: what matters here is which screws are needed.
    private SlopeBelief Aligned(GaussianState state, SlopeBelief slope, int[] screws)
    {
        double[] turns = Turns(state, slope, screws);
        double variance = Math.Pow(setup.Habits.HandSetting, 2);
        for (int i = 0; i < screws.Length; i++)
        {
            (double u, double v) = Slopes(state, screws[i]);
            slope = new(
                slope.U + (turns[i] * u), slope.V + (turns[i] * v), slope.Uu + (variance * u * u), slope.Uv + (variance * u * v), slope.Vv + (variance * v * v));
        }

        return slope;
    }

    private static double[] Turns(GaussianState state, SlopeBelief slope, int[] screws) =>
        SlopeTurns.Solve(slope.U, slope.V, [.. screws.Select(j => Slopes(state, j))]);

    // The turn of the knob for a wanted move of the contact, rounded, and short enough that every sense leaves the beam on the target.
    private double? Safe(ScrewFilter.Result events, int screw, double move, double beyond)
    {
        Belief now = events.Now;
        GaussianState state = now.Likeliest.State;
        double allowed = RoundingShare * setup.Tolerance.Millimetres / (Response(state, screw) * setup.Travel);
        // Whatever was learned: no turn that the frame's description calls far too much.
        double most = MostOverDescription * SlopeBelief.Of(state).Magnitude / now.Model.Screws[screw].Slope;
        move = Math.Clamp(move, -most, most);
        foreach (double share in Shares)
        {
            double sign = Math.Sign(move), turns = HandParts.Round((share * move) + (sign * Math.Max(0, TurnModel.Slack(state, screw, sign))) + beyond, allowed);
            if (turns == 0 || Math.Abs(move) < allowed / 4)
                return null;
            // Where even the least turn is too much, it is made alone: without it nothing is learned.
            if (beyond != 0 || OnTarget(now, now.Turned(screw, turns)) || (share == Shares[^1] && events.TurnedSince.Count == 0))
                return turns;
        }

        return null;
    }

    private bool OnTarget(Belief now, Belief then)
    {
        double radius = setup.TargetRadius.Millimetres;
        for (int h = 0; h < now.Hypotheses.Count; h++)
        {
            if (now.Hypotheses[h].Weight < SenseThatCounts)
                continue;
            foreach (double path in new[] { setup.Near.Path.Millimetres, setup.Far.Path.Millimetres })
            {
                double before = now.Forecast(now.Hypotheses[h], path).Distance, after = then.Forecast(then.Hypotheses[h], path).Distance;
                if (after > radius && after > Outward * before)
                    return false;
            }
        }

        return true;
    }

    // A screw is turned once between two marks; twice where the first turn went beyond to come back from one side.
    private bool Remains(ScrewFilter.Result events, int screw)
    {
        LegEvent.Turn[] done = [.. Done(events, screw)];
        return done.Length == 0 || (done.Length == 1 && Reversed(events, screw) && BacklashMatters(events.AtMark, screw));
    }

    private static bool SenseOpen(Belief belief, int screw)
    {
        int sense = belief.Likeliest.Senses[screw];
        return belief.Hypotheses.Where(h => h.Senses[screw] != sense).Sum(h => h.Weight) > SenseThatCounts;
    }

    private bool BacklashMatters(Belief atMark, int screw)
    {
        GaussianState state = atMark.Likeliest.State;
        int b = StateLayout.Backlash(screw);
        return Math.Sqrt(state[b, b]) * Response(state, screw) * setup.Travel > BacklashShare * setup.Tolerance.Millimetres;
    }

    private static IEnumerable<LegEvent.Turn> Done(ScrewFilter.Result events, int screw) =>
        events.TurnedSince.Where(t => events.Now.Model.IndexOf(t.Screw) == screw && t.Turns != 0);

    private static bool Reversed(ScrewFilter.Result events, int screw) =>
        Done(events, screw).FirstOrDefault() is { } first && Math.Sign(first.Turns) == -events.LastSign[screw];

    private static int LastSign(ScrewFilter.Result events, int screw) =>
        Done(events, screw).LastOrDefault() is { } last ? Math.Sign(last.Turns) : events.LastSign[screw];

    // The lost motion that is hardly exceeded, in sixteenths of a turn.
    private static double Lost(GaussianState state, int screw)
    {
        int b = StateLayout.Backlash(screw);
        return Math.Ceiling(16 * (Math.Max(0, state.Mean[b]) + (2 * Math.Sqrt(state[b, b])))) / 16;
    }

    private static (double U, double V) Slopes(GaussianState state, int screw) =>
        (state.Mean[StateLayout.Response(screw) + 1], state.Mean[StateLayout.Response(screw) + 3]);

    private static double Response(GaussianState state, int screw)
    {
        (double u, double v) = Slopes(state, screw);
        return Math.Max(1e-6, Math.Sqrt((u * u) + (v * v)));
    }
}
