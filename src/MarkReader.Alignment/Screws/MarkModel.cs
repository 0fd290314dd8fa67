using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Screws;

/// <summary>Where the beam of a state meets the tape, and what a mark there says about the state.</summary>
internal static class MarkModel
{
    // The tape's tilt makes the mark depend on the line a little more than linearly; two steps reach rounding.
    private const int Steps = 2;

    /// <summary>The mark expected at a station, with the covariance that the state gives it (no error of the mark itself).</summary>
    public static MarkForecast Forecast(GaussianState state, StateLayout layout, BeamFrame frame, double path)
    {
        (double u, double v, double[] byU, double[] byV) = Linear(state.Mean, layout, frame, path);
        double[] crossU = state.Times(byU), crossV = state.Times(byV);
        return new(u, v, GaussianState.Dot(byU, crossU), GaussianState.Dot(byV, crossU), GaussianState.Dot(byV, crossV));
    }

    /// <summary>Takes in a mark (iterated extended Kalman step). Returns −2·log of its density before, and its χ² with two degrees of freedom.</summary>
    /// <param name="linearAt">The state at which the mark's place is taken linear, where later marks have told it; null: as the mark itself tells it.</param>
    public static (double Deviance, double ChiSquare) Observe(GaussianState state, StateLayout layout, BeamFrame frame, LegEvent.Mark mark, double[]? linearAt = null)
    {
        double[] before = [.. state.Mean], at = linearAt ?? before;
        (double Deviance, double ChiSquare) fit = default;
        Covariance2 c = mark.At.Covariance;
        for (int step = 0; ; step++)
        {
            (double u, double v, double[] byU, double[] byV) = Linear(at, layout, frame, mark.Path);
            double[] crossU = state.Times(byU), crossV = state.Times(byV);
            double uu = GaussianState.Dot(byU, crossU) + c.Uu, uv = GaussianState.Dot(byV, crossU) + c.Uv, vv = GaussianState.Dot(byV, crossV) + c.Vv;
            double du = mark.At.Point.U - u - Along(byU, before, at), dv = mark.At.Point.V - v - Along(byV, before, at);
            double determinant = (uu * vv) - (uv * uv);
            double gu = ((vv * du) - (uv * dv)) / determinant, gv = ((uu * dv) - (uv * du)) / determinant;
            if (step == 0)
                fit = (Math.Log(determinant) + (gu * du) + (gv * dv), (gu * du) + (gv * dv));
            for (int i = 0; i < at.Length; i++)
                state.Mean[i] = before[i] + (gu * crossU[i]) + (gv * crossV[i]);
            if (linearAt is null && step + 1 < Steps)
            {
                at = [.. state.Mean];
                continue;
            }

            // One component after the other: v given u.
            double slope = uv / uu;
            state.Condition(crossU, uu);
            for (int i = 0; i < crossV.Length; i++)
                crossV[i] -= slope * crossU[i];
            state.Condition(crossV, vv - (slope * uv));
            return fit;
        }
    }

    // What the linear form adds between the state before and the place where it was taken.
    private static double Along(double[] form, double[] before, double[] at)
    {
        double sum = 0;
        for (int i = 0; i < form.Length; i++)
            sum += form[i] * (before[i] - at[i]);
        return sum;
    }

    // As BeamFrame.OnTape, in mrad and metres, with the path length's error as part of the state.
    private static (double U, double V, double[] ByU, double[] ByV) Linear(double[] mean, StateLayout layout, BeamFrame frame, double path)
    {
        int error = layout.PathError(path);
        double metres = (path + mean[error]) / 1000, tilt = frame.Sin / 1000;
        double sx = mean[StateLayout.Sx], sy = mean[StateLayout.Sy], across = frame.Cos - (sx * tilt);
        double u = (mean[StateLayout.X0] + (sx * metres)) / across, z = metres + (u * tilt);
        double[] byU = new double[mean.Length], byV = new double[mean.Length];
        byU[StateLayout.X0] = 1 / across;
        byU[StateLayout.Sx] = z / across;
        byU[error] = sx / 1000 / across;
        for (int i = 0; i < byU.Length; i++)
            byV[i] = sy * tilt * byU[i];
        byV[StateLayout.Y0] += 1;
        byV[StateLayout.Sy] += z;
        byV[error] += sy / 1000;
        return (u, mean[StateLayout.Y0] + (sy * z), byU, byV);
    }
}

/// <summary>A mark's expected place on the tape (mm) and its covariance (mm²).</summary>
internal readonly record struct MarkForecast(double U, double V, double Uu, double Uv, double Vv)
{
    public double Distance => Math.Sqrt((U * U) + (V * V));

    /// <summary>The covariance, cleared of rounding.</summary>
    public Covariance2 Covariance
    {
        get
        {
            double uu = Math.Max(0, Uu), vv = Math.Max(0, Vv), most = Math.Sqrt(uu * vv);
            return new(uu, Math.Clamp(Uv, -most, most), vv);
        }
    }
}
