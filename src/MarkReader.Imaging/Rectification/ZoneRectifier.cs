using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Fifth stage: looks straight down on the free zone, in linear light (0 to 1).</summary>
internal static class ZoneRectifier
{
    /// <summary>Pixels per mm of the map on which marks are searched; the map for fitting has one, two or three times as many.</summary>
    public const int SearchPixelsPerMm = 8;

    /// <summary>Part of the blank strip between zone and markers that is looked at too.</summary>
    private const double StripShare = 0.6;

    public static ZoneMap Rectify(GreyPhoto photo, RegisteredCard card)
    {
        double strip = card.Kind.Markers.Min(m => Math.Max(Math.Abs(m.Centre.U), Math.Abs(m.Centre.V)) - (m.Side / 2)) - (card.Kind.ZoneSide / 2);
        double half = (card.Kind.ZoneSide / 2) + (StripShare * strip);
        int multiple = card.PixelsPerMm < 9 || half > 25 ? 1 : card.PixelsPerMm < 18 ? 2 : 3;
        // A multiple of 4 blocks of the search map, so that every reduced copy covers the same area.
        int blocks = (int)Math.Ceiling(2 * half * SearchPixelsPerMm / 4);
        ZoneGrid grid = new(blocks * 4.0 / SearchPixelsPerMm / 2, blocks * 4 * multiple);
        int sub = Math.Clamp((int)Math.Round(card.PixelsPerMm / grid.PixelsPerMm), 1, 4);
        float[] values = new float[grid.Size * grid.Size];
        Parallel.For(0, grid.Size, y => FillRow(photo, card.View, grid, sub, y, values));
        return new(grid, values);
    }

    private static void FillRow(GreyPhoto photo, CardView view, ZoneGrid grid, int sub, int y, float[] values)
    {
        PixelSampler pixels = new(photo.Pixels);
        for (int x = 0; x < grid.Size; x++)
        {
            double sum = 0;
            bool inside = true;
            for (int s = 0; s < sub * sub && inside; s++)
            {
                double dx = ((s % sub) + 0.5) / sub, dy = ((s / sub) + 0.5) / sub;
                PixelPoint p = view.ToPhoto(grid.ToCard(x + dx - 0.5, y + dy - 0.5));
                inside = pixels.Contains(p.X, p.Y);
                if (inside)
                    sum += pixels[p.X, p.Y];
            }

            values[(y * grid.Size) + x] = inside ? (float)(sum / (sub * sub)) : float.NaN;
        }
    }
}
