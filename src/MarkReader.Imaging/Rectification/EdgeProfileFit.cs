using System.Buffers;

namespace MarkReader.Imaging.Rectification;

/// <summary>Fits a blurred step a + b·Φ((x − x0)/σ) to a profile, by damped Gauss–Newton.</summary>
/// <remarks>Symmetric blur of any shape leaves x0 unbiased; Φ is the normal distribution function.</remarks>
internal static class EdgeProfileFit
{
    internal readonly record struct Result(bool Converged, double Place, double Variance, double Sigma, double Step, double White);

    /// <param name="profile">Samples at −half, −half + step, …, +half; dark side first.</param>
    /// <param name="step">Distance of samples, px.</param>
    public static Result Fit(ReadOnlySpan<double> profile, double step)
    {
        int n = profile.Length;
        double half = step * (n - 1) / 2;
        double[] shared = ArrayPool<double>.Shared.Rent(2 * n);
        try
        {
            Span<double> places = shared.AsSpan(0, n), weights = shared.AsSpan(n, n);
            weights.Fill(1);
            for (int i = 0; i < n; i++)
                places[i] = (i * step) - half;
            int quarter = Math.Max(2, n / 4);
            double a = Mean(profile[..quarter]);
            return Fit(places, profile, weights, half, a, Mean(profile[^quarter..]) - a, SteepestPlace(profile, step, half), Math.Max(0.7, half / 5));
        }
        finally
        {
            ArrayPool<double>.Shared.Return(shared);
        }
    }

    /// <summary>The same from means of pixels, from a fit that is near.</summary>
    /// <param name="places">Distances from the predicted edge, px; towards white.</param>
    /// <param name="weights">Pixels in each mean.</param>
    /// <param name="half">Reach of the places, px.</param>
    public static Result Refine(ReadOnlySpan<double> places, ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double half, Result near) =>
        Fit(places, values, weights, half, near.White - near.Step, near.Step, near.Place, near.Sigma);

    private static Result Fit(ReadOnlySpan<double> places, ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double half, double a, double b, double x0, double sigma)
    {
        double lambda = 1e-3;
        double cost = Cost(places, values, weights, a, b, x0, sigma);
        Span<double> normal = stackalloc double[20];
        bool converged = false;
        for (int iteration = 0; iteration < 25 && !converged; iteration++)
        {
            Accumulate(places, values, weights, a, b, x0, sigma, normal);
            if (!Solve(normal, lambda, out double da, out double db, out double dx, out double ds))
                break;
            (double a1, double b1, double x1, double s1) = (a + da, b + db, x0 + dx, Math.Clamp(sigma + ds, 0.3, half));
            double next = Cost(places, values, weights, a1, b1, x1, s1);
            if (next <= cost)
            {
                converged = Math.Abs(x1 - x0) < 2e-4 && cost - next <= 1e-6 * cost;
                (a, b, x0, sigma, cost) = (a1, b1, x1, s1, next);
                lambda = Math.Max(1e-9, lambda * 0.2);
            }
            else
            {
                converged = Math.Abs(dx) < 2e-4;
                lambda *= 8;
                if (lambda > 1e8)
                    break;
            }
        }

        Accumulate(places, values, weights, a, b, x0, sigma, normal);
        double noise = cost / Math.Max(1, places.Length - 4);
        double variance = InverseElement(normal) * noise;
        return new(converged && double.IsFinite(variance), x0, variance, sigma, b, a + b);
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double v in values)
            sum += v;
        return sum / values.Length;
    }

    /// <summary>The place of the largest rise over three samples, ends excluded.</summary>
    private static double SteepestPlace(ReadOnlySpan<double> profile, double step, double half)
    {
        int best = profile.Length / 2;
        double rise = double.NegativeInfinity;
        for (int i = 2; i < profile.Length - 2; i++)
        {
            double r = profile[i + 1] + profile[i + 2] - profile[i - 1] - profile[i - 2];
            // Nearness breaks ties, so that a second edge at the window's end does not win.
            r *= 1 - (0.4 * Math.Abs((i * step) - half) / half);
            if (r > rise)
                (rise, best) = (r, i);
        }

        return (best * step) - half;
    }

    private static double Cost(ReadOnlySpan<double> places, ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double a, double b, double x0, double sigma)
    {
        double sum = 0;
        for (int i = 0; i < places.Length; i++)
        {
            double e = values[i] - a - (b * Normal.Distribution((places[i] - x0) / sigma));
            sum += weights[i] * e * e;
        }

        return sum;
    }

    /// <summary>Fills the upper triangle of JᵀJ (10 numbers) and Jᵀe (4 numbers) for (a, b, x0, σ).</summary>
    private static void Accumulate(ReadOnlySpan<double> places, ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double a, double b, double x0, double sigma, Span<double> normal)
    {
        normal.Clear();
        for (int i = 0; i < places.Length; i++)
        {
            double t = (places[i] - x0) / sigma, w = weights[i];
            double phi = Normal.Distribution(t);
            double density = Normal.Density(t) / sigma;
            double e = values[i] - a - (b * phi);
            double j2 = phi, j3 = -b * density, j4 = -b * density * t;
            normal[0] += w;
            normal[1] += w * j2;
            normal[2] += w * j3;
            normal[3] += w * j4;
            normal[4] += w * j2 * j2;
            normal[5] += w * j2 * j3;
            normal[6] += w * j2 * j4;
            normal[7] += w * j3 * j3;
            normal[8] += w * j3 * j4;
            normal[9] += w * j4 * j4;
            normal[10] += w * e;
            normal[11] += w * j2 * e;
            normal[12] += w * j3 * e;
            normal[13] += w * j4 * e;
        }
    }

    private static bool Solve(ReadOnlySpan<double> normal, double lambda, out double da, out double db, out double dx, out double ds)
    {
        Span<double> m = stackalloc double[20];
        Expand(normal, lambda, m);
        for (int r = 0; r < 4; r++)
            m[(5 * r) + 4] = normal[10 + r];
        bool solved = Eliminate(m, 5);
        (da, db, dx, ds) = (m[4], m[9], m[14], m[19]);
        return solved;
    }

    /// <summary>Element (x0, x0) of the inverse of JᵀJ.</summary>
    private static double InverseElement(ReadOnlySpan<double> normal)
    {
        Span<double> m = stackalloc double[20];
        Expand(normal, 0, m);
        m[4] = m[9] = m[19] = 0;
        m[14] = 1;
        return Eliminate(m, 5) ? m[14] : double.NaN;
    }

    private static void Expand(ReadOnlySpan<double> n, double lambda, Span<double> m)
    {
        double d = 1 + lambda;
        (m[0], m[1], m[2], m[3]) = (n[0] * d, n[1], n[2], n[3]);
        (m[5], m[6], m[7], m[8]) = (n[1], n[4] * d, n[5], n[6]);
        (m[10], m[11], m[12], m[13]) = (n[2], n[5], n[7] * d, n[8]);
        (m[15], m[16], m[17], m[18]) = (n[3], n[6], n[8], n[9] * d);
    }

    /// <summary>Gauss–Jordan elimination of four rows; the matrix is positive definite, so pivots need no search.</summary>
    private static bool Eliminate(Span<double> m, int stride)
    {
        for (int p = 0; p < 4; p++)
        {
            double pivot = m[(stride * p) + p];
            if (!(Math.Abs(pivot) > 1e-14))
                return false;
            for (int c = 0; c < stride; c++)
                m[(stride * p) + c] /= pivot;
            for (int r = 0; r < 4; r++)
            {
                if (r == p)
                    continue;
                double f = m[(stride * r) + p];
                for (int c = 0; c < stride; c++)
                    m[(stride * r) + c] -= f * m[(stride * p) + c];
            }
        }

        return true;
    }
}
