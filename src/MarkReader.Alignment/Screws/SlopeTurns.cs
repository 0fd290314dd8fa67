using MarkReader.Alignment.Aiming;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>The turns of a screw that a slope asks for.</summary>
/// <param name="Turns">Positive clockwise, in the likelier sense of the screw; lost motion is not in it.</param>
/// <param name="Uncertainty">Standard uncertainty from those of slope and responses, turns.</param>
public sealed record ScrewTurns(string Screw, double Turns, double Uncertainty);

/// <summary>From a slope to turns of the screws that take it away.</summary>
/// <remarks>
/// With the responses as columns of R, t = −Rᵀ(R·Rᵀ)⁻¹·slope: exact for two screws, the smallest turns for three (they add up to nothing on
/// an equilateral frame, so that the mirror's middle stays), least squares for one.
/// </remarks>
public static class SlopeTurns
{
    /// <param name="slope">The slope to be taken away.</param>
    /// <param name="responses">The screws to be turned; one to three.</param>
    public static IReadOnlyList<ScrewTurns> ToRemove(Slope slope, IReadOnlyList<ScrewResponse> responses)
    {
        (double U, double V)[] r = [.. responses.Select(s => (s.U, s.V))];
        double[] turns = Solve(slope.U, slope.V, r);
        // dt = −Rᵀ(R·Rᵀ)⁻¹·(ds + Σ dr·t), to first order.
        (double uu, double uv, double vv) = (slope.Covariance.Uu, slope.Covariance.Uv, slope.Covariance.Vv);
        foreach ((ScrewResponse s, double t) in responses.Zip(turns))
            (uu, uv, vv) = (uu + (t * t * s.Covariance.Uu), uv + (t * t * s.Covariance.Uv), vv + (t * t * s.Covariance.Vv));
        double[] byU = Solve(1, 0, r), byV = Solve(0, 1, r);
        return [.. responses.Select((s, j) => new ScrewTurns(s.Screw, turns[j], Math.Sqrt(Math.Max(
            0, (byU[j] * byU[j] * uu) + (2 * byU[j] * byV[j] * uv) + (byV[j] * byV[j] * vv)))))];
    }

    /// <summary>The slope after turns of the screws, each set by hand.</summary>
    /// <param name="slope">The slope before.</param>
    /// <param name="turns">Each screw with its turns, positive clockwise; lost motion is not in them.</param>
    /// <param name="hand">Standard uncertainty of a turn set by hand, turns.</param>
    public static Slope After(Slope slope, IReadOnlyList<(ScrewResponse Screw, double Turns)> turns, double hand)
    {
        Covariance2 covariance = slope.Covariance;
        foreach ((ScrewResponse screw, double t) in turns.Where(t => t.Turns != 0))
            covariance += ((t * t) * screw.Covariance) + Covariance2.Along(new(hand * screw.U, hand * screw.V));
        return new(slope.U + turns.Sum(t => t.Turns * t.Screw.U), slope.V + turns.Sum(t => t.Turns * t.Screw.V), covariance);
    }

    // A little is added to R·Rᵀ: one screw alone then gives its least-squares turn.
    internal static double[] Solve(double slopeU, double slopeV, IReadOnlyList<(double U, double V)> responses)
    {
        double uu = responses.Sum(r => r.U * r.U), uv = responses.Sum(r => r.U * r.V), vv = responses.Sum(r => r.V * r.V);
        double little = 1e-9 * (uu + vv);
        (uu, vv) = (uu + little, vv + little);
        double determinant = (uu * vv) - (uv * uv);
        double x = ((vv * slopeU) - (uv * slopeV)) / determinant, y = ((uu * slopeV) - (uv * slopeU)) / determinant;
        return [.. responses.Select(r => -((r.U * x) + (r.V * y)))];
    }
}
