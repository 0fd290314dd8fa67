namespace MarkReader.Quantities;

/// <summary>A displacement in the card frame, in millimetres (u to the right, v up).</summary>
public readonly record struct CardVector(double U, double V)
{
    /// <summary>Length of the displacement in millimetres.</summary>
    public double Magnitude => Math.Sqrt((U * U) + (V * V));

    public static CardVector operator +(CardVector left, CardVector right) => new(left.U + right.U, left.V + right.V);

    public static CardVector operator -(CardVector left, CardVector right) => new(left.U - right.U, left.V - right.V);

    public static CardVector operator *(double factor, CardVector vector) => new(factor * vector.U, factor * vector.V);
}
