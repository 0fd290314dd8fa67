using MarkReader.Alignment.Frames;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>What is known of a leg at one moment: a state for each combination of senses, with its probability.</summary>
internal sealed class Belief
{
    public Belief(LegModel model, StateLayout layout, IReadOnlyList<Hypothesis> hypotheses)
    {
        (Model, Layout, Hypotheses) = (model, layout, hypotheses);
        // Of equals the first: the one in which clockwise turns push.
        Likeliest = hypotheses.MaxBy(h => h.Weight)!;
    }

    public LegModel Model { get; }

    public StateLayout Layout { get; }

    public IReadOnlyList<Hypothesis> Hypotheses { get; }

    public Hypothesis Likeliest { get; }

    /// <summary>The belief if a screw were turned.</summary>
    public Belief Turned(int screw, double turns) => new(Model, Layout, [.. Hypotheses.Select(h =>
    {
        GaussianState state = h.State.Copy();
        int first = StateLayout.Response(screw);
        TurnModel.Apply(state, screw, turns, Model.Habits.HandSetting, state.Mean.AsSpan(first, StateLayout.Line).ToArray());
        return h with { State = state };
    })]);

    public MarkForecast Forecast(Hypothesis hypothesis, double path) => MarkModel.Forecast(hypothesis.State, Layout, Model.Tape, path);

    /// <summary>The next mark at a station over all hypotheses: mean, and covariance with the spread between them.</summary>
    public MarkForecast Forecast(double path) => Mixture(h => Forecast(h, path));

    /// <summary>Mean and covariance over all hypotheses of a quantity with two components.</summary>
    public MarkForecast Mixture(Func<Hypothesis, MarkForecast> of)
    {
        (double Weight, MarkForecast At)[] parts = [.. Hypotheses.Select(h => (h.Weight, of(h)))];
        double u = parts.Sum(p => p.Weight * p.At.U), v = parts.Sum(p => p.Weight * p.At.V);
        return new(
            u,
            v,
            parts.Sum(p => p.Weight * (p.At.Uu + ((p.At.U - u) * (p.At.U - u)))),
            parts.Sum(p => p.Weight * (p.At.Uv + ((p.At.U - u) * (p.At.V - v)))),
            parts.Sum(p => p.Weight * (p.At.Vv + ((p.At.V - v) * (p.At.V - v)))));
    }

    /// <summary>Screws that more likely than not act unlike the description of their frame.</summary>
    public IEnumerable<string> UnlikeTheirFrame() =>
        Model.Screws.Where((_, j) => Hypotheses.Where(h => h.Senses[j] == 0).Sum(h => h.Weight) > 0.5).Select(s => s.Screw);

    /// <summary>The responses of all screws, each in its likelier sense.</summary>
    public IReadOnlyList<ScrewResponse> Responses() => [.. Model.Screws.Select((screw, j) => Response(screw, j))];

    private ScrewResponse Response(ScrewGeometry screw, int j)
    {
        int sense = Likeliest.Senses[j], u = StateLayout.Response(j) + 1, v = u + 2, b = StateLayout.Backlash(j);
        Belief alike = new(Model, Layout, [.. Hypotheses.Where(h => h.Senses[j] == sense)]);
        double share = alike.Hypotheses.Sum(h => h.Weight);
        alike = new(Model, Layout, [.. alike.Hypotheses.Select(h => h with { Weight = h.Weight / share })]);
        MarkForecast r = alike.Mixture(h => new(h.State.Mean[u], h.State.Mean[v], h.State[u, u], h.State[u, v], h.State[v, v]));
        double lost = Math.Max(0, alike.Hypotheses.Sum(h => h.Weight * h.State.Mean[b]));
        return new(screw.Screw, r.U, r.V, r.Covariance, share, Angle.FromDegrees(360 * lost));
    }
}
