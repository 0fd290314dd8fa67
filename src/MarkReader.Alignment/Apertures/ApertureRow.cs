using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace MarkReader.Alignment.Apertures;

/// <summary>Power of a Gaussian beam through several round apertures one after the other.</summary>
/// <remarks>
/// Geometrical optics: every ray keeps its place in the beam, measured in beam radii, so that a ray passes all apertures when it lies in
/// all their discs, each drawn about −offset/w with radius a/w. The part transmitted is the round normal density's integral over their
/// common area, by chords. Diffraction at the first apertures is left out; it widens what is clipped, so the value is an upper one by little.
/// </remarks>
internal static class ApertureRow
{
    private static readonly GaussLegendreRule s_rule = new(-1, 1, 24);

    /// <summary>A disc in units of the beam's standard deviation, w/2.</summary>
    internal readonly record struct Disc(double X, double Y, double Radius);

    public static double Transmitted(IReadOnlyList<Disc> discs)
    {
        // Beyond 9 standard deviations there is no power to speak of.
        double low = Math.Max(-9, discs.Max(d => d.X - d.Radius)), high = Math.Min(9, discs.Min(d => d.X + d.Radius));
        if (low >= high)
            return 0;
        // Pieces of about two standard deviations; no cut comes close beside an end, where the chord has a root.
        int pieces = 1 + (int)((high - low) / 2);
        List<double> cuts = [.. Enumerable.Range(0, pieces + 1).Select(i => i == pieces ? high : low + ((high - low) * i / pieces))];
        for (int i = 0; i < discs.Count; i++)
        {
            for (int j = 0; j < i; j++)
                cuts.AddRange(Crossings(discs[i], discs[j]));
        }

        double[] inside = [.. cuts.Where(c => c >= low && c <= high).Distinct().Order()];
        return Math.Clamp(inside.Zip(inside.Skip(1)).Sum(piece => Piece(discs, piece.First, piece.Second)), 0, 1);
    }

    private static double Piece(IReadOnlyList<Disc> discs, double low, double high)
    {
        double middle = (low + high) / 2, half = (high - low) / 2, sum = 0;
        for (int i = 0; i < s_rule.Order; i++)
        {
            // x = m + h·sin t: smooth where a chord ends with a root.
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * s_rule.GetAbscissa(i));
            double x = middle + (half * sin), top = double.PositiveInfinity, bottom = double.NegativeInfinity;
            foreach (Disc disc in discs)
            {
                double chord = Math.Sqrt(Math.Max(0, (disc.Radius * disc.Radius) - ((x - disc.X) * (x - disc.X))));
                (top, bottom) = (Math.Min(top, disc.Y + chord), Math.Max(bottom, disc.Y - chord));
            }

            if (top > bottom)
                sum += s_rule.GetWeight(i) * cos * Math.Exp(-x * x / 2) * (SpecialFunctions.Erf(top / Math.Sqrt(2)) - SpecialFunctions.Erf(bottom / Math.Sqrt(2))) / 2;
        }

        return half * Math.PI / 2 * sum / Math.Sqrt(2 * Math.PI);
    }

    private static IEnumerable<double> Crossings(Disc a, Disc b)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, distance = Math.Sqrt((dx * dx) + (dy * dy));
        if (distance == 0)
            yield break;
        double along = ((distance * distance) + (a.Radius * a.Radius) - (b.Radius * b.Radius)) / (2 * distance);
        double across = (a.Radius * a.Radius) - (along * along);
        if (across < 0)
            yield break;
        yield return a.X + (along * dx / distance) + (Math.Sqrt(across) * dy / distance);
        yield return a.X + (along * dx / distance) - (Math.Sqrt(across) * dy / distance);
    }
}
