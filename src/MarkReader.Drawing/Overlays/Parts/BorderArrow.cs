using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>An arrow at the frame's border towards a point outside it.</summary>
internal sealed class BorderArrow(CardSight sight, Pen pen)
{
    private const double Shaft = 26; // CSS px
    private const double Head = 11;
    private const double Inset = 4;

    /// <summary>The arrow as a symbol about its shaft's middle; null when no point of the card to start from is in the frame.</summary>
    public Symbol? Towards(string part, CardPoint outside, CardPoint inside, Colour colour)
    {
        if (sight.FindInFrame(inside) is not { } start)
            return null;
        (PixelPoint border, CardPoint at) = sight.Leaves(inside, outside);
        PixelVector way = border - start; // a straight line on the card is straight in the photo
        if (way.Magnitude < pen.Css)
            return null;
        PixelVector along = (pen.Css / way.Magnitude) * way;
        PixelVector across = new(-along.Y, along.X);
        PixelPoint tip = border + (-Inset * along);
        PixelPoint neck = tip + (-Head * along);
        PixelPoint foot = tip + (-Shaft * along);
        PixelPoint[] head = [tip, neck + (0.5 * Head * across), neck + (-0.5 * Head * across)];
        List<OverlayPrimitive> drawn =
        [
            new OverlayLine(part, [foot, neck], false, pen.Bold(colour)),
            new OverlayLine(part, head, true, pen.Bold(colour)),
            new OverlayArea(part, head, colour, 1),
        ];
        return new(at, tip + (-0.5 * Shaft * along), 0.5 * Shaft * pen.Css / sight.Scale(at), 0.5 * Shaft * pen.Css, drawn);
    }
}
