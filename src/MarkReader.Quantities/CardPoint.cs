namespace MarkReader.Quantities;

/// <summary>A point in the card frame, in millimetres: origin at the card's printed centre, u to the right, v up, as one looks at the card.</summary>
public readonly record struct CardPoint(double U, double V)
{
    public static CardPoint Origin => default;

    public static CardPoint operator +(CardPoint point, CardVector vector) => new(point.U + vector.U, point.V + vector.V);

    public static CardPoint operator -(CardPoint point, CardVector vector) => new(point.U - vector.U, point.V - vector.V);

    public static CardVector operator -(CardPoint to, CardPoint from) => new(to.U - from.U, to.V - from.V);

    /// <summary>Distance to <paramref name="other"/> in millimetres.</summary>
    public double DistanceTo(CardPoint other) => (this - other).Magnitude;
}
