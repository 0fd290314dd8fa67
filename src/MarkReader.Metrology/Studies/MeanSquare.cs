namespace MarkReader.Metrology.Studies;

/// <summary>A mean square with its degrees of freedom, above zero.</summary>
public readonly record struct MeanSquare(double Value, double Dof)
{
    public double SumOfSquares => Value * Dof;

    /// <summary>
    /// The sum of independent ones with its effective degrees of freedom (B. L. Welch, J. R. Stat. Soc. Suppl. 3 (1936) 29–48; F. E. Satterthwaite,
    /// Biometrics Bull. 2 (1946) 110–114; JCGM 100:2008, G.4.1); when all are zero, all their degrees together.
    /// </summary>
    public static MeanSquare Sum(params IReadOnlyList<MeanSquare> squares)
    {
        double sum = squares.Sum(s => s.Value), spread = squares.Sum(s => s.Value * s.Value / s.Dof);
        return new(sum, spread > 0 ? sum * sum / spread : squares.Sum(s => s.Dof));
    }
}

/// <summary>A mean square times a factor, which may be negative.</summary>
public readonly record struct WeightedSquare(double Factor, MeanSquare Square)
{
    public double Value => Factor * Square.Value;
}
