using MarkReader.Imaging.Rectification;

namespace MarkReader.Imaging.Marks;

/// <summary>
/// Locates a mark's edge in one direction: fits a + (b + g·t)·Φ(t/σ), t = r − r0, to the light along it. The slope g takes up smoke that thins
/// out, or light that changes, just outside the edge.
/// </summary>
internal static class OutlineEdge
{
    private const int Parameters = 5; // a, b, r0, σ, g

    /// <summary>Standard deviation of g over b before the profile is seen, per mm: smoke and halos change over a millimetre or more.</summary>
    private const double SlopePrior = 0.3;

    /// <summary>Place (mm from the profile's middle), its variance (mm²), the edge's σ (mm), the step b, and the light outside a + b.</summary>
    internal readonly record struct Result(double Place, double Variance, double Sigma, double Step, double Outside);

    /// <param name="profile">Light at −half … +half, inside first.</param>
    /// <param name="step">Distance of samples, mm.</param>
    /// <param name="pixel">Pixel of the map, mm: bounds σ and scales the stop.</param>
    public static Result? Fit(ReadOnlySpan<double> profile, double step, double pixel)
    {
        EdgeProfileFit.Result start = EdgeProfileFit.Fit(profile, step / pixel);
        if (!start.Converged || !(start.Step > 0))
            return null;
        int n = profile.Length;
        double half = step * (n - 1) / 2;
        double[] p = [profile[0], start.Step, start.Place * pixel, start.Sigma * pixel, 0];
        double noise = Cost(profile, step, half, p) / (n - 4);
        double penalty = noise / Math.Pow(SlopePrior * start.Step, 2);
        double[,] normal = new double[Parameters, Parameters];
        double[] right = new double[Parameters];
        double lambda = 1e-3;
        double cost = Cost(profile, step, half, p) + (penalty * p[4] * p[4]);
        for (int iteration = 0; iteration < 20; iteration++)
        {
            Accumulate(profile, step, half, p, penalty, normal, right);
            double[]? delta = Solve(normal, right, lambda);
            if (delta is null)
                return null;
            double[] next = [.. p.Select((v, k) => v + delta[k])];
            next[3] = Math.Clamp(next[3], 0.3 * pixel, half);
            double changed = Cost(profile, step, half, next) + (penalty * next[4] * next[4]);
            bool small = Math.Abs(delta[2]) < 1e-4 * pixel;
            if (changed <= cost)
            {
                (p, cost) = (next, changed);
                lambda = Math.Max(1e-9, lambda * 0.2);
            }
            else
            {
                lambda *= 8;
            }

            if (small || lambda > 1e8)
                break;
        }

        Accumulate(profile, step, half, p, penalty, normal, right);
        double[] unit = new double[Parameters];
        unit[2] = 1;
        return Solve(normal, unit, 0) is { } column && p[1] > 0
            ? new(p[2], column[2] * cost / Math.Max(1, n - Parameters), p[3], p[1], p[0] + p[1])
            : null;
    }

    private static double Cost(ReadOnlySpan<double> profile, double step, double half, double[] p)
    {
        double sum = 0;
        for (int i = 0; i < profile.Length; i++)
        {
            double t = (i * step) - half - p[2];
            double e = profile[i] - p[0] - ((p[1] + (p[4] * t)) * Normal.Distribution(t / p[3]));
            sum += e * e;
        }

        return sum;
    }

    private static void Accumulate(ReadOnlySpan<double> profile, double step, double half, double[] p, double penalty, double[,] normal, double[] right)
    {
        Array.Clear(normal);
        Array.Clear(right);
        Span<double> j = stackalloc double[Parameters];
        for (int i = 0; i < profile.Length; i++)
        {
            double t = (i * step) - half - p[2];
            double phi = Normal.Distribution(t / p[3]);
            double density = Normal.Density(t / p[3]) / p[3];
            double level = p[1] + (p[4] * t);
            double e = profile[i] - p[0] - (level * phi);
            j[0] = 1;
            j[1] = phi;
            j[2] = -(level * density) - (p[4] * phi);
            j[3] = -level * density * t / p[3];
            j[4] = t * phi;
            for (int r = 0; r < Parameters; r++)
            {
                right[r] += j[r] * e;
                for (int c = 0; c < Parameters; c++)
                    normal[r, c] += j[r] * j[c];
            }
        }

        normal[4, 4] += penalty;
        right[4] -= penalty * p[4];
    }

    private static double[]? Solve(double[,] normal, double[] right, double lambda)
    {
        double[,] m = (double[,])normal.Clone();
        double[] x = [.. right];
        for (int k = 0; k < Parameters; k++)
            m[k, k] *= 1 + lambda;
        for (int k = 0; k < Parameters; k++)
        {
            double pivot = m[k, k];
            if (!(Math.Abs(pivot) > 1e-18))
                return null;
            for (int r = 0; r < Parameters; r++)
            {
                if (r == k)
                    continue;
                double f = m[r, k] / pivot;
                for (int c = k; c < Parameters; c++)
                    m[r, c] -= f * m[k, c];
                x[r] -= f * x[k];
            }
        }

        for (int k = 0; k < Parameters; k++)
            x[k] /= m[k, k];
        return x;
    }
}
