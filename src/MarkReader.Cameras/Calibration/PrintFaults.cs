using MarkReader.Cameras.Boards;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace MarkReader.Cameras.Calibration;

/// <summary>The printed edges of a board, each a little out of its place, in all photos alike: normal about zero, its variance learned from the sightings.</summary>
internal sealed class PrintFaults(IReadOnlyList<BoardView> views)
{
    /// <summary>The standard deviations that are looked at, mm: from less than any photo shows to a print that cannot be used.</summary>
    private const double Least = 1e-5, Most = 1;

    private readonly Dictionary<int, int> _numbers = views.SelectMany(v => v.Sightings).Where(s => s.IsEdge).Select(s => s.Group).Distinct().Order().Select((g, i) => (g, i)).ToDictionary(x => x.g, x => x.i);

    /// <summary>How many printed edges were seen.</summary>
    public int Count => _numbers.Count;

    public IEnumerable<int> Groups => _numbers.Keys;

    /// <summary>The edge's number from 0, or −1 for a point.</summary>
    public int NumberOf(BoardSighting s) => s.IsEdge ? _numbers[s.Group] : -1;

    /// <summary>Variance of the faults by restricted maximum likelihood (Patterson and Thompson, Biometrika 58, 1971), mm²; 0 when the sightings show none.</summary>
    /// <param name="matrix">Of the faults' normal equations, everything else eliminated.</param>
    /// <param name="right">Their right side about faults of nothing.</param>
    /// <param name="unit">Variance of a sighting of unit weight.</param>
    public static double Variance(Matrix<double> matrix, Vector<double> right, double unit)
    {
        Evd<double> evd = matrix.Evd(Symmetricity.Symmetric);
        Vector<double> scores = evd.EigenVectors.TransposeThisAndMultiply(right);
        (double Value, double Square)[] modes = [.. Enumerable.Range(0, right.Count).Select(k => (evd.EigenValues[k].Real, scores[k] * scores[k])).Where(m => m.Real > 1e-9 * evd.EigenValues[^1].Real)];
        (double low, double high) = (Math.Log(Least), Math.Log(Most));
        double best = low;
        // The likelihood has one peak in practice; a coarse search and a fine one find it.
        foreach (int steps in (ReadOnlySpan<int>)[60, 40])
        {
            double step = (high - low) / steps;
            best = Enumerable.Range(0, steps + 1).Select(i => low + (i * step)).MinBy(Deviance);
            (low, high) = (best - step, best + step);
        }

        return Deviance(best) < Deviance(double.NegativeInfinity) ? Math.Exp(2 * best) : 0;

        double Deviance(double log)
        {
            double fault = Math.Exp(2 * log);
            double sum = 0;
            foreach ((double value, double square) in modes)
            {
                double variance = value * (unit + (value * fault));
                sum += Math.Log(variance) + (square / variance);
            }

            return sum;
        }
    }
}
