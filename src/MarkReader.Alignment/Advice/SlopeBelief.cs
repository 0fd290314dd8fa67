using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Screws;

namespace MarkReader.Alignment.Advice;

/// <summary>The slope of the beam as a state holds it, mrad.</summary>
internal readonly record struct SlopeBelief(double U, double V, double Uu, double Uv, double Vv)
{
    public static SlopeBelief Of(GaussianState state) => new(
        state.Mean[StateLayout.Sx],
        state.Mean[StateLayout.Sy],
        state[StateLayout.Sx, StateLayout.Sx],
        state[StateLayout.Sx, StateLayout.Sy],
        state[StateLayout.Sy, StateLayout.Sy]);

    public double Magnitude => Math.Sqrt((U * U) + (V * V));

    /// <summary>The largest standard uncertainty over all directions.</summary>
    public double Uncertainty => Math.Sqrt(((Uu + Vv) / 2) + Math.Sqrt(Math.Pow((Uu - Vv) / 2, 2) + (Uv * Uv)));

    public double Within(double limit) => BivariateNormal.WithinDisc(new(U, V), new MarkForecast(U, V, Uu, Uv, Vv).Covariance, limit);
}
