using MarkReader.Quantities;

namespace MarkReader.Cards.Tests;

/// <summary>An upright rectangle in the card frame, mm.</summary>
internal sealed record Box(double Left, double Bottom, double Right, double Top)
{
    private const double Rounding = 1e-9;

    public IReadOnlyList<CardPoint> Corners => [new(Left, Bottom), new(Right, Bottom), new(Right, Top), new(Left, Top)];

    public Box Grown(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public bool Meets(Box other) => Left < other.Right && other.Left < Right && Bottom < other.Top && other.Bottom < Top;

    public bool Holds(Box other) =>
        other.Left >= Left - Rounding && other.Right <= Right + Rounding && other.Bottom >= Bottom - Rounding && other.Top <= Top + Rounding;

    public bool InsideSquare(double half) => new Box(-half, -half, half, half).Holds(this);
}

/// <summary>Plane geometry for the checks on ink.</summary>
internal static class Shapes
{
    public static Box Box(IReadOnlyList<CardPoint> polygon) =>
        new(polygon.Min(p => p.U), polygon.Min(p => p.V), polygon.Max(p => p.U), polygon.Max(p => p.V));

    /// <summary>The room a label takes: a letter is at most as wide as it is high.</summary>
    public static Box LabelBox(CardLabel label)
    {
        (double w, double h) = (label.Text.Length * label.Height / 2, label.Height / 2);
        if (label.TurnDegrees % 180 != 0)
            (w, h) = (h, w);
        return new(label.Centre.U - w, label.Centre.V - h, label.Centre.U + w, label.Centre.V + h);
    }

    /// <summary>Whether a polygon comes into the open square of this half side about the origin.</summary>
    public static bool MeetsSquare(IReadOnlyList<CardPoint> polygon, double half)
    {
        // Points along the sides, closer together than anything that could slip between them.
        for (int i = 0; i < polygon.Count; i++)
        {
            CardPoint from = polygon[i];
            CardVector along = polygon[(i + 1) % polygon.Count] - from;
            int steps = 1 + (int)(along.Magnitude / 0.01);
            for (int k = 0; k < steps; k++)
            {
                CardPoint p = from + ((double)k / steps * along);
                if (Math.Abs(p.U) < half && Math.Abs(p.V) < half)
                    return true;
            }
        }

        return Holds(polygon, CardPoint.Origin);
    }

    public static bool IsInk(IReadOnlyList<IReadOnlyList<CardPoint>> polygons, CardPoint point) => polygons.Any(p => Holds(p, point));

    public static double SignedArea(IReadOnlyList<CardPoint> polygon) =>
        polygon.Select((a, i) => (a, b: polygon[(i + 1) % polygon.Count])).Sum(s => (s.a.U * s.b.V) - (s.b.U * s.a.V)) / 2;

    private static bool Holds(IReadOnlyList<CardPoint> polygon, CardPoint p)
    {
        bool inside = false;
        for (int i = 0; i < polygon.Count; i++)
        {
            (CardPoint a, CardPoint b) = (polygon[i], polygon[(i + 1) % polygon.Count]);
            if (a.V > p.V != b.V > p.V && p.U < a.U + ((p.V - a.V) / (b.V - a.V) * (b.U - a.U)))
                inside = !inside;
        }

        return inside;
    }
}
