using MarkReader.Imaging.Rectification;

namespace MarkReader.Imaging.Marks;

/// <summary>A zone's light and its darkening, which marks are taken away from together; NaN where nothing is left to be seen.</summary>
internal sealed record MarkLayers(ZoneMap Light, ZoneMap Darkening)
{
    /// <summary>Pixels per mm at which profiles are fitted: enough for an edge of a tenth of a mm.</summary>
    private const double CoarseScale = 10;

    private ZoneMap? _coarse;

    /// <summary>The darkening with fewer pixels, for fits that need no more.</summary>
    public ZoneMap Coarse => _coarse ??= Darkening.Reduce(Darkening.Grid.Size % 2 == 0 && Darkening.Grid.PixelsPerMm > 2 * CoarseScale ? 2 : 1);

    /// <summary>Below this transmission a divided-out mark leaves nothing to be measured.</summary>
    private const double LeastTransmission = 0.3;

    /// <summary>Both layers as they would be without the marks but <paramref name="kept"/>. A mark that touches the kept one is hidden instead: what lies under it is not known.</summary>
    public MarkLayers Without(IReadOnlyList<FittedMark> marks, FittedMark? kept)
    {
        float[] light = [.. Light.Values];
        float[] dark = [.. Darkening.Values];
        ZoneGrid grid = Light.Grid;
        foreach (FittedMark mark in marks.Where(m => m != kept))
        {
            bool touches = kept is not null && kept.Centre.DistanceTo(mark.Centre) < kept.EdgeReach + mark.EdgeReach;
            double hidden = touches ? mark.EdgeReach / Math.Sqrt(mark.Symmetric.Shape.AxisRatio) : 0;
            double reach = Math.Max(hidden, SymmetricFit.HaloReach(mark.Diameter) / Math.Sqrt(mark.Symmetric.Shape.AxisRatio)) * grid.PixelsPerMm;
            (double cx, double cy) = grid.ToPixel(mark.Centre);
            for (int y = Math.Max(0, (int)(cy - reach)); y <= Math.Min(grid.Size - 1, (int)(cy + reach)); y++)
            {
                for (int x = Math.Max(0, (int)(cx - reach)); x <= Math.Min(grid.Size - 1, (int)(cx + reach)); x++)
                {
                    Quantities.CardPoint p = grid.ToCard(x, y);
                    double t = p.DistanceTo(mark.Centre) < hidden ? 0 : mark.Symmetric.Model.Transmission(p);
                    int i = (y * grid.Size) + x;
                    light[i] = t < LeastTransmission ? float.NaN : (float)(light[i] / t);
                    dark[i] = t < LeastTransmission ? float.NaN : (float)(1 - ((1 - dark[i]) / t));
                }
            }
        }

        return new(new(grid, light), new(grid, dark));
    }

    /// <summary>Both layers with a disc hidden.</summary>
    public MarkLayers Hiding(Disc disc) => Hiding(p => p.DistanceTo(disc.Centre) < disc.Radius);

    /// <summary>Both layers with strokes hidden.</summary>
    public MarkLayers Hiding(HiddenPlaces? strokes) => strokes is null ? this : Hiding(strokes.Hides);

    private MarkLayers Hiding(Func<Quantities.CardPoint, bool> hides)
    {
        float[] light = [.. Light.Values];
        float[] dark = [.. Darkening.Values];
        ZoneGrid grid = Light.Grid;
        for (int i = 0; i < light.Length; i++)
        {
            if (hides(grid.ToCard(i % grid.Size, i / grid.Size)))
                light[i] = dark[i] = float.NaN;
        }

        return new(new(grid, light), new(grid, dark));
    }
}
