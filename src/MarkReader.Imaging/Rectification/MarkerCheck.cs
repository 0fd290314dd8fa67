using MarkReader.Cards;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Reads every marker again at its fitted place, so that those the search missed are counted too.</summary>
internal static class MarkerCheck
{
    /// <summary>How many of the card's markers show their pattern.</summary>
    public static int CountSeen(GreyPhoto photo, RegisteredCard card) => card.Kind.Markers.Count(m => IsSeen(photo, card.View, m));

    private static bool IsSeen(GreyPhoto photo, CardView view, CardMarker marker)
    {
        PixelSampler pixels = new(photo.Pixels);
        int cells = marker.Pattern.CellsWithBorder;
        double cell = marker.Side / cells;
        List<(double Light, bool White)> read = [];
        for (int row = -1; row <= cells; row++)
        {
            for (int column = -1; column <= cells; column++)
            {
                CardPoint p = new(marker.Corners[0].U + ((column + 0.5) * cell), marker.Corners[0].V - ((row + 0.5) * cell));
                bool quiet = row < 0 || column < 0 || row == cells || column == cells;
                // The blank strip around is narrower than a cell: read it near the marker.
                if (quiet)
                    p += 0.2 / Math.Max(1e-9, (marker.Centre - p).Magnitude) * (marker.Centre - p);
                PixelPoint x = view.ToPhoto(p);
                if (!pixels.Contains(x.X, x.Y))
                    return false;
                read.Add((pixels[x.X, x.Y], quiet || marker.Pattern.IsWhite(column, row)));
            }
        }

        double white = read.Where(r => r.White).Average(r => r.Light), black = read.Where(r => !r.White).Average(r => r.Light);
        if (white - black < 0.02)
            return false;
        double middle = (white + black) / 2;
        return read.Count(r => r.White != r.Light > middle) <= read.Count / 16;
    }
}
