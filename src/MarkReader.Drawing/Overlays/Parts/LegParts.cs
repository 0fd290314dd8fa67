using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>The parts of a leg in progress: its marks, where the next one should lie, the aim point, and the way there.</summary>
internal sealed class LegParts(CardSight sight, Pen pen)
{
    private const int CirclePoints = 72;
    private const double Dot = 4, Head = 9, Shortest = 6; // CSS px

    public (IReadOnlyList<Symbol> Symbols, IReadOnlyList<Label> Labels) Symbols(OverlayContent.Leg leg)
    {
        Symbols drawn = new(sight, pen);
        BorderArrow border = new(sight, pen);
        CardPoint inside = leg.Made.Select(m => m.Mark.Centre.Point).LastOrDefault(p => sight.FindInFrame(p) is not null);
        List<Symbol> symbols = [];
        List<Label> labels = [];
        foreach (LegMarkShown mark in leg.Made)
        {
            Colour? colour = mark.Counts ? null : OverlayColours.Plain;
            if ((mark.IsFar ? drawn.Far(mark.Mark, colour) : drawn.Near(mark.Mark, colour)) is { } symbol)
                Add(symbol, mark.IsFar ? "far" : "near", [mark.Words], colour ?? (mark.IsFar ? OverlayColours.Far : OverlayColours.Near));
        }

        foreach (PointShown next in leg.Expected)
        {
            if ((Next(next.Point) ?? border.Towards("next", next.Point.Point, inside, OverlayColours.Plain)) is { } symbol)
                Add(symbol, "next", next.Words, OverlayColours.Plain);
        }

        if (leg.Aim is { } aim && (drawn.Aim(aim.Point) ?? border.Towards("aim", aim.Point.Point, inside, OverlayColours.Aim)) is { } cross)
            Add(cross, "aim", aim.Words, OverlayColours.Aim);
        labels.Reverse(); // what is to be done has the first choice of places
        return (symbols, labels);

        void Add(Symbol symbol, string part, IReadOnlyList<string> words, Colour colour)
        {
            symbols.Add(symbol);
            labels.Add(new(part, symbol.Image, symbol.Reach, words, colour));
        }
    }

    /// <summary>Arrows from the moving mark; each a shaft and its head.</summary>
    public IReadOnlyList<OverlayLine> Arrows(OverlayContent.Leg leg)
    {
        if (leg.Moving is not { } from || sight.FindInFrame(from) is not { } start)
            return [];
        IEnumerable<CardPoint> ends = leg.Expected.Count > 0 ? leg.Expected.Select(e => e.Point.Point) : leg.Aim is { } aim ? [aim.Point.Point] : [];
        return [.. ends.SelectMany(to => Arrow(start, sight.FindInFrame(to) ?? sight.Leaves(from, to).Image))];
    }

    private IEnumerable<OverlayLine> Arrow(PixelPoint start, PixelPoint tip)
    {
        double length = start.DistanceTo(tip), head = Math.Min(Head * pen.Css, length / 2);
        if (length < Shortest * pen.Css)
            yield break;
        PixelVector along = (head / length) * (tip - start), across = new(-along.Y, along.X);
        yield return new("way", [start, tip], false, pen.Plain(OverlayColours.Plain));
        yield return new("way-head", [tip + (-1 * along) + (0.5 * across), tip, tip + (-1 * along) + (-0.5 * across)], false, pen.Bold(OverlayColours.Plain));
    }

    /// <summary>A dot in the dashed region that holds the next mark with 95 %.</summary>
    private Symbol? Next(MeasuredPoint next)
    {
        if (sight.FindInFrame(next.Point) is not { } image)
            return null;
        double scale = sight.Scale(next.Point), r = Dot * pen.Css / scale;
        IReadOnlyList<PixelPoint> region = sight.Trace(next.Point, next.Covariance.Ellipse95().Outline(next.Point, CirclePoints));
        IReadOnlyList<PixelPoint> dot = sight.Trace(next.Point, new Ellipse(r, r, Angle.Zero).Outline(next.Point, 24));
        OverlayPrimitive[] drawn =
        [
            new OverlayLine("next-region", region, true, pen.Dashed(OverlayColours.Plain)),
            new OverlayLine("next", dot, true, pen.Plain(OverlayColours.Plain)),
        ];
        return new(next.Point, image, 1.5 * r, 1.5 * Dot * pen.Css, drawn);
    }
}
