using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>Which station's mark leaves the slope best known.</summary>
internal static class NextStation
{
    /// <param name="belief">What is known.</param>
    /// <param name="paths">Stations to choose from, mm.</param>
    /// <param name="mark">Covariance of a mark's own error.</param>
    /// <returns>The station, and the slope after its mark in the likeliest hypothesis.</returns>
    public static (double Path, SlopeBelief After) Best(Belief belief, IReadOnlyList<double> paths, Covariance2 mark)
    {
        (double Path, SlopeBelief After)[] after = [.. paths.Select(p => (p, After(belief, p, mark)))];
        return after.MinBy(a => a.After.Uu + a.After.Vv);
    }

    private static SlopeBelief After(Belief belief, double path, Covariance2 mark)
    {
        MarkForecast at = belief.Forecast(belief.Likeliest, path);
        GaussianState state = belief.Likeliest.State.Copy();
        MarkModel.Observe(state, belief.Layout, belief.Model.Tape, new(path, new(new(at.U, at.V), mark)));
        return SlopeBelief.Of(state);
    }
}
