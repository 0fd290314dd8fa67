using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>The straight line on which aim, near and far lie, drawn a little beyond both ends and not over the symbols.</summary>
internal sealed class AimLine(CardSight sight, Pen pen)
{
    private const double Beyond = 0.15; // of the distance from aim to far
    private const double Shown = 10; // CSS px, the least that shows beyond a symbol at an end
    private const double Shortest = 1e-6; // mm; without a distance there is no direction

    /// <summary>The pieces of the line that lie in the frame.</summary>
    public IReadOnlyList<OverlayLine> Pieces(OverlayContent.Aiming aiming, IReadOnlyList<Symbol> symbols)
    {
        CardVector along = aiming.Far.Centre.Point - aiming.Near.Centre.Point;
        if (along.Magnitude < Shortest)
            return [];
        CardVector unit = (1 / along.Magnitude) * along;
        CardPoint near = aiming.Near.Centre.Point;
        double Place(CardPoint p) => ((p - near).U * unit.U) + ((p - near).V * unit.V);
        double aim = Place(aiming.Aim.Point);
        double far = along.Magnitude;
        double gap = 1.5 * pen.Css;
        double Reach(Symbol symbol, double px) => symbol.Millimetres * (1 + (px / symbol.Pixels));
        double beyond = symbols.Select(s => Reach(s, gap + (Shown * pen.Css))).Append(Beyond * Math.Max(far, far - aim)).Max();
        List<(double From, double To)> open = [(Math.Min(aim, 0) - beyond, Math.Max(aim, far) + beyond)];
        foreach (Symbol symbol in symbols)
        {
            double middle = Place(symbol.Point);
            double reach = Reach(symbol, gap);
            open = [.. open.SelectMany(piece => Without(piece, middle - reach, middle + reach))];
        }

        return [.. open.Select(p => Clipped(near + (p.From * unit), near + (p.To * unit), near)).OfType<OverlayLine>()];
    }

    private OverlayLine? Clipped(CardPoint from, CardPoint to, CardPoint inside)
    {
        // An end that cannot be seen is drawn in along the line towards the near mark.
        IReadOnlyList<PixelPoint> ends = sight.Trace(inside, [from, to]);
        return ends[0].DistanceTo(ends[1]) > pen.Css ? new("line", ends, false, pen.Dashed(OverlayColours.Plain)) : null;
    }

    private static IEnumerable<(double From, double To)> Without((double From, double To) piece, double from, double to)
    {
        if (to <= piece.From || from >= piece.To)
        {
            yield return piece;
            yield break;
        }

        if (from > piece.From)
            yield return (piece.From, from);
        if (to < piece.To)
            yield return (to, piece.To);
    }
}
