using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Metrology.Studies;

/// <summary>Confidence intervals of sums and differences of independent mean squares.</summary>
/// <remarks>
/// Modified large sample method: F. A. Graybill and C.-M. Wang, J. Am. Stat. Assoc. 75 (1980) 869–873 for sums;
/// N. Ting, R. K. Burdick, F. A. Graybill, S. Jeyaratnam and T.-F. C. Lu, J. Stat. Comput. Simul. 35 (1990) 135–143 for differences;
/// R. K. Burdick and G. A. Larsen, J. Qual. Technol. 29 (1997) 261–273 for gauge studies. The interval of one mean square is the exact χ² interval;
/// the others hold nearly their confidence, which the tests check by simulation.
/// </remarks>
public static class VarianceIntervals
{
    /// <summary>The two-sided interval of Σ factor · E(mean square), which is a variance: its ends are not below zero.</summary>
    /// <param name="terms">At least one; terms with the factor 0 do not count.</param>
    /// <param name="confidence">Between 0 and 1, neither of them.</param>
    public static Interval Of(IEnumerable<WeightedSquare> terms, double confidence = 0.95)
    {
        if (confidence is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence between 0 and 1 is needed.");
        double tail = (1 - confidence) / 2;
        WeightedSquare[] all = [.. terms.Where(t => t.Factor != 0)];
        ArgumentOutOfRangeException.ThrowIfZero(all.Length, nameof(terms));
        Side[] added = [.. all.Where(t => t.Factor > 0).Select(t => new Side(t, tail))];
        Side[] taken = [.. all.Where(t => t.Factor < 0).Select(t => new Side(t, tail))];
        double estimate = all.Sum(t => t.Value);
        // The upper end of θ is the lower end of −θ.
        double down = Reach(added, taken, s => s.Short, s => s.Long, 1 - tail) + (taken.Length == 0 ? 0 : Between(added, tail));
        double up = Reach(added, taken, s => s.Long, s => s.Short, tail) + Between(taken, tail);
        return new(Math.Max(0, estimate - Math.Sqrt(Math.Max(0, down))), Math.Max(0, estimate + Math.Sqrt(Math.Max(0, up))));
    }

    /// <summary>The exact interval of one variance (χ²).</summary>
    public static Interval Of(MeanSquare square, double confidence = 0.95) => Of([new(1, square)], confidence);

    // Squares, and products of what is added with what is taken off.
    private static double Reach(Side[] added, Side[] taken, Func<Side, double> ofAdded, Func<Side, double> ofTaken, double probability)
    {
        double sum = added.Sum(a => Square(ofAdded(a) * a.Size)) + taken.Sum(t => Square(ofTaken(t) * t.Size));
        foreach (Side a in added)
        {
            foreach (Side t in taken)
            {
                double f = FDistribution.Quantile(probability, a.Dof, t.Dof);
                sum += (Square(f - 1) - Square(ofAdded(a) * f) - Square(ofTaken(t))) / f * a.Size * t.Size;
            }
        }

        return sum;
    }

    // Products of those on the side that shrinks towards zero.
    private static double Between(Side[] sides, double tail)
    {
        double sum = 0;
        for (int i = 0; i < sides.Length; i++)
        {
            for (int j = i + 1; j < sides.Length; j++)
            {
                (Side a, Side b) = (sides[i], sides[j]);
                double all = a.Dof + b.Dof, part = 1 - (1 / FDistribution.Quantile(1 - tail, all));
                sum += (Square(part * all) - Square(a.Short * a.Dof) - Square(b.Short * b.Dof)) / (a.Dof * b.Dof) / (sides.Length - 1) * a.Size * b.Size;
            }
        }

        return sum;
    }

    private static double Square(double x) => x * x;

    /// <summary>A term without its sign, with how far its mean square alone reaches: Short towards zero, Long away from it, as parts of it.</summary>
    private sealed class Side(WeightedSquare term, double tail)
    {
        public double Size { get; } = Math.Abs(term.Value);

        public double Dof { get; } = term.Square.Dof;

        public double Short { get; } = 1 - (1 / FDistribution.Quantile(1 - tail, term.Square.Dof));

        public double Long { get; } = (1 / FDistribution.Quantile(tail, term.Square.Dof)) - 1;
    }
}
