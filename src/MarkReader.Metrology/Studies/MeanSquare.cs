namespace MarkReader.Metrology.Studies;

/// <summary>A mean square with its degrees of freedom, above zero.</summary>
public readonly record struct MeanSquare(double Value, double Dof)
{
    public double SumOfSquares => Value * Dof;
}

/// <summary>A mean square times a factor, which may be negative.</summary>
public readonly record struct WeightedSquare(double Factor, MeanSquare Square)
{
    public double Value => Factor * Square.Value;
}
