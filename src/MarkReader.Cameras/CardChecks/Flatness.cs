using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.CardChecks;

/// <summary>How far a bent card is from flat.</summary>
internal static class Flatness
{
    private const int Fields = 12;

    /// <summary>Highest less lowest place within the outline, mm, and whether the bend is shown at all (all three coefficients together).</summary>
    /// <param name="half">Half the card's side, mm.</param>
    public static CardTerm Of(CardShape card, double half)
    {
        CardPoint[] grid = [.. from i in Enumerable.Range(0, Fields + 1) from j in Enumerable.Range(0, Fields + 1)
            select new CardPoint(half * ((2.0 * i / Fields) - 1), half * ((2.0 * j / Fields) - 1))];
        Matrix<double> part = card.Covariance.SubMatrix(CardShape.Bend, 3, CardShape.Bend, 3);
        Vector<double> bend = Vector<double>.Build.Dense([card.Shape.BendUu, card.Shape.BendUv, card.Shape.BendVv]);
        (CardPoint high, CardPoint low) = (grid.MaxBy(Height), grid.MinBy(Height));
        Vector<double> by = By(high) - By(low);
        return new(by * bend, Math.Sqrt(Math.Max(0, by * (part * by))), 1 - ChiSquared.CDF(3, bend * part.Solve(bend)));

        double Height(CardPoint p) => By(p) * bend;
    }

    private static Vector<double> By(CardPoint p)
    {
        (double u, double v) = (p.U / Boards.BoardShape.Reach, p.V / Boards.BoardShape.Reach);
        return Vector<double>.Build.Dense([u * u, u * v, v * v]);
    }
}
