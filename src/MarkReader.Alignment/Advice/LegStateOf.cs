using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>Verdict, slope and aim point from what is known of a leg.</summary>
internal static class LegStateOf
{
    /// <param name="setup">The leg.</param>
    /// <param name="result">Its events taken in.</param>
    /// <param name="open">Whether the slope is still open: then neither slope nor aim is stated.</param>
    public static LegState Result(LegSetup setup, ScrewFilter.Result result, bool open)
    {
        Slope slope = Slope(result.Now);
        Conformity spread = DiscConformity.Of(new(slope.U, slope.V), slope.Covariance, setup.SlopeLimit);
        if (open || (spread.Verdict == Verdict.Within && result.TurnedSince.Count > 0))
            spread = spread with { Verdict = Verdict.Undecided };
        return open ? new(spread, null, null) : new(spread, slope, Aim(setup, result.Now));
    }

    private static Slope Slope(Belief belief)
    {
        MarkForecast s = belief.Mixture(h =>
        {
            SlopeBelief slope = SlopeBelief.Of(h.State);
            return new(slope.U, slope.V, slope.Uu, slope.Uv, slope.Vv);
        });
        return new(s.U, s.V, s.Covariance);
    }

    // (x0 − k·sx)/cos t and y0 − k·sy, with u(k) along the slope.
    private static MeasuredPoint Aim(LegSetup setup, Belief belief)
    {
        double k = setup.Leg.PivotOffset.Millimetres / 1000, uk = setup.Leg.PivotUncertainty.Millimetres / 1000, cos = belief.Model.Tape.Cos;
        MarkForecast aim = belief.Mixture(h =>
        {
            double[] byU = new double[h.State.Size], byV = new double[h.State.Size];
            (byU[StateLayout.X0], byU[StateLayout.Sx]) = (1 / cos, -k / cos);
            (byV[StateLayout.Y0], byV[StateLayout.Sy]) = (1, -k);
            double[] crossU = h.State.Times(byU), crossV = h.State.Times(byV);
            double su = h.State.Mean[StateLayout.Sx] * uk / cos, sv = h.State.Mean[StateLayout.Sy] * uk;
            return new(
                GaussianState.Dot(byU, h.State.Mean),
                GaussianState.Dot(byV, h.State.Mean),
                GaussianState.Dot(byU, crossU) + (su * su),
                GaussianState.Dot(byV, crossU) + (su * sv),
                GaussianState.Dot(byV, crossV) + (sv * sv));
        });
        return new(new(aim.U, aim.V), aim.Covariance);
    }
}
