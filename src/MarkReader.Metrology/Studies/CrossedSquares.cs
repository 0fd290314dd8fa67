namespace MarkReader.Metrology.Studies;

/// <summary>The mean squares of a crossed design.</summary>
/// <param name="Photo">Between the repeats of one operator, over all parts; null where repeats of different parts have nothing in common.</param>
/// <param name="Repeat">What is left.</param>
public sealed record CrossedSquares(MeanSquare Part, MeanSquare Operator, MeanSquare Interaction, MeanSquare? Photo, MeanSquare Repeat)
{
    /// <summary>Sums of squares about the means (J. Mandel, The Statistical Analysis of Experimental Data, Wiley 1964, ch. 8; the photo as a plot that is split by parts).</summary>
    public static CrossedSquares Of(CrossedDesign design, bool photos)
    {
        (int p, int o, int r) = (design.Parts.Count, design.Operators.Count, design.Repeats);
        // Values from about their mean: no digits are lost to a far origin.
        double origin = design[0, 0, 0];
        double Mean(IEnumerable<int> parts, IEnumerable<int> operators, IEnumerable<int> repeats) =>
            (from i in parts from j in operators from k in repeats select design[i, j, k] - origin).Average();
        IEnumerable<int> allParts = Enumerable.Range(0, p), allOperators = Enumerable.Range(0, o), allRepeats = Enumerable.Range(0, r);
        double all = Mean(allParts, allOperators, allRepeats);
        double[] part = [.. allParts.Select(i => Mean([i], allOperators, allRepeats))];
        double[] person = [.. allOperators.Select(j => Mean(allParts, [j], allRepeats))];
        (double interaction, double photo, double rest) = (0, 0, 0);
        for (int j = 0; j < o; j++)
        {
            double[] photoMeans = [.. allRepeats.Select(k => Mean(allParts, [j], [k]))];
            photo += p * photoMeans.Sum(m => Square(m - person[j]));
            for (int i = 0; i < p; i++)
            {
                double cell = Mean([i], [j], allRepeats);
                interaction += r * Square(cell - part[i] - person[j] + all);
                for (int k = 0; k < r; k++)
                    rest += Square(design[i, j, k] - origin - cell - (photos ? photoMeans[k] - person[j] : 0));
            }
        }

        return new(
            Of(o * r * part.Sum(m => Square(m - all)), p - 1),
            Of(p * r * person.Sum(m => Square(m - all)), o - 1),
            Of(interaction, (p - 1) * (o - 1)),
            photos ? Of(photo, o * (r - 1)) : null,
            Of(rest, (photos ? p - 1 : p) * o * (r - 1)));
    }

    private static MeanSquare Of(double sum, int dof) => new(sum / dof, dof);

    private static double Square(double x) => x * x;
}
