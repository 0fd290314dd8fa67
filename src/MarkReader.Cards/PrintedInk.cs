using MarkReader.Quantities;

namespace MarkReader.Cards;

/// <summary>The black areas of a card as polygons, in drawing order; the one description that every drawing and every rendering of a card uses.</summary>
public static class PrintedInk
{
    /// <summary>Closed polygons to be filled black, in the card frame (mm). Labels are not among them: they need a font.</summary>
    /// <remarks>
    /// All run counter-clockwise, so that they may be filled as one path by the non-zero rule: overlaps stay black and edges that two
    /// polygons share leave no hairline.
    /// </remarks>
    public static IReadOnlyList<IReadOnlyList<CardPoint>> Polygons(CardKind kind) =>
    [
        .. kind.Markers.SelectMany(Marker), .. kind.Patches.SelectMany(Patch), .. kind.Rulers.SelectMany(Ruler),
        .. Corners(kind.ZoneSide / 2, kind.ZoneTicks), Turned(Arrow(kind.Arrow)),
    ];

    /// <summary>The same for the calibration board.</summary>
    public static IReadOnlyList<IReadOnlyList<CardPoint>> OfBoard(CalibrationBoard board) => [.. board.Markers.SelectMany(Marker), .. board.Rulers.SelectMany(Ruler)];

    /// <summary>The polygons of one ruler, counter-clockwise; its ticks point towards the origin.</summary>
    public static IEnumerable<IReadOnlyList<CardPoint>> Ruler(CardRuler ruler)
    {
        CardVector along = ruler.To - ruler.From;
        CardVector unit = (1 / along.Magnitude) * along;
        CardVector inward = new(-unit.V, unit.U);
        CardPoint middle = ruler.From + (0.5 * along);
        if ((inward.U * middle.U) + (inward.V * middle.V) > 0)
            inward = -1 * inward;
        double half = ruler.Stroke / 2;
        yield return Turned(Bar(ruler.From, ruler.To, half * inward));
        int steps = (int)Math.Round(along.Magnitude / ruler.Step);
        for (int i = 1; i < steps; i++)
        {
            CardPoint foot = ruler.From + (i * ruler.Step * unit);
            yield return Turned(Bar(foot, foot + (ruler.Tick * inward), half * unit));
        }

        double flag = 1.5 * ruler.Tick;
        yield return Turned([ruler.From, ruler.From + (flag * inward), ruler.From + (flag * unit)]);
        yield return Turned([ruler.To, ruler.To + (flag * inward), ruler.To - (flag * unit)]);
    }

    private static IEnumerable<IReadOnlyList<CardPoint>> Marker(CardMarker marker)
    {
        int cells = marker.Pattern.CellsWithBorder;
        double cell = marker.Side / cells;
        CardPoint corner = marker.Corners[0];
        for (int row = 0; row < cells; row++)
        {
            // Runs of black cells in a row are one rectangle, so that no hairline shows between them.
            for (int column = 0; column < cells;)
            {
                int start = column;
                while (column < cells && !marker.Pattern.IsWhite(column, row))
                    column++;
                if (column > start)
                    yield return Rectangle(corner.U + (start * cell), corner.V - ((row + 1) * cell), corner.U + (column * cell), corner.V - (row * cell));
                else
                    column++;
            }
        }
    }

    private static IEnumerable<IReadOnlyList<CardPoint>> Patch(ChessPatch patch)
    {
        for (int row = 0; row < patch.Rows; row++)
        {
            for (int column = 0; column < patch.Columns; column++)
            {
                if (patch.IsBlack(column, row))
                {
                    double left = patch.UpperLeft.U + (column * patch.Square);
                    double top = patch.UpperLeft.V - (row * patch.Square);
                    yield return Rectangle(left, top - patch.Square, left + patch.Square, top);
                }
            }
        }
    }

    private static IEnumerable<IReadOnlyList<CardPoint>> Corners(double zone, ZoneTicks ticks)
    {
        double inner = zone + ticks.Gap;
        double outer = inner + ticks.Stroke;
        double end = outer - ticks.Length;
        foreach ((int u, int v) in new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) })
        {
            yield return Turned(
            [
                new(u * end, v * inner), new(u * inner, v * inner), new(u * inner, v * end),
                new(u * outer, v * end), new(u * outer, v * outer), new(u * end, v * outer),
            ]);
        }
    }

    private static IReadOnlyList<CardPoint> Arrow(UpArrow arrow)
    {
        double head = arrow.Width * 0.9;
        double shaft = arrow.Width * 0.18;
        (double u, double v) = (arrow.Tip.U, arrow.Tip.V);
        return
        [
            new(u, v), new(u + (arrow.Width / 2), v - head), new(u + shaft, v - head), new(u + shaft, v - arrow.Height),
            new(u - shaft, v - arrow.Height), new(u - shaft, v - head), new(u - (arrow.Width / 2), v - head),
        ];
    }

    private static IReadOnlyList<CardPoint> Bar(CardPoint from, CardPoint to, CardVector half) => [from + half, to + half, to - half, from - half];

    private static IReadOnlyList<CardPoint> Rectangle(double left, double bottom, double right, double top) =>
        [new(left, bottom), new(right, bottom), new(right, top), new(left, top)];

    private static IReadOnlyList<CardPoint> Turned(IReadOnlyList<CardPoint> polygon) => SignedArea(polygon) < 0 ? [.. polygon.Reverse()] : polygon;

    private static double SignedArea(IReadOnlyList<CardPoint> polygon)
    {
        double twice = 0;
        for (int i = 0; i < polygon.Count; i++)
        {
            CardPoint a = polygon[i];
            CardPoint b = polygon[(i + 1) % polygon.Count];
            twice += (a.U * b.V) - (b.U * a.V);
        }

        return twice / 2;
    }
}
