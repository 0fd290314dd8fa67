using MarkReader.Quantities;

namespace MarkReader.Cards;

/// <summary>A straight boundary between black and white on the card.</summary>
/// <param name="From">One end, in the card frame (mm).</param>
/// <param name="To">The other end.</param>
/// <param name="ToWhite">Unit vector across the edge, from black to white.</param>
public sealed record PrintedEdge(CardPoint From, CardPoint To, CardVector ToWhite);

/// <summary>The edges by which a print can be located: the markers' borders and the sides of the patches' squares.</summary>
public static class PrintedEdges
{
    public static IReadOnlyList<PrintedEdge> Of(IPrint print) => [.. print.Markers.SelectMany(Marker), .. print.Patches.SelectMany(Patch)];

    private static IEnumerable<PrintedEdge> Marker(CardMarker marker)
    {
        for (int i = 0; i < 4; i++)
        {
            CardPoint from = marker.Corners[i];
            CardPoint to = marker.Corners[(i + 1) % 4];
            CardVector along = (1 / from.DistanceTo(to)) * (to - from);
            yield return new(from, to, new(-along.V, along.U)); // clockwise walk: the outside lies to the left
        }
    }

    private static IEnumerable<PrintedEdge> Patch(ChessPatch patch)
    {
        double s = patch.Square;
        bool Black(int c, int r) => c >= 0 && c < patch.Columns && r >= 0 && r < patch.Rows && patch.IsBlack(c, r);
        CardPoint At(int c, int r) => new(patch.UpperLeft.U + (c * s), patch.UpperLeft.V - (r * s));
        for (int r = 0; r < patch.Rows; r++)
        {
            for (int c = 0; c <= patch.Columns; c++)
            {
                if (Black(c - 1, r) != Black(c, r))
                    yield return new(At(c, r), At(c, r + 1), new(Black(c - 1, r) ? 1 : -1, 0));
            }
        }

        for (int r = 0; r <= patch.Rows; r++)
        {
            for (int c = 0; c < patch.Columns; c++)
            {
                if (Black(c, r - 1) != Black(c, r))
                    yield return new(At(c, r), At(c + 1, r), new(0, Black(c, r - 1) ? -1 : 1));
            }
        }
    }
}
