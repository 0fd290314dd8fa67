using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>The outline of the free zone and the directions u and v.</summary>
internal sealed class ZoneLines(CardSight sight, Pen pen)
{
    private const double AxisLength = 26; // CSS px
    private const double HeadLength = 5; // CSS px

    public OverlayLine Outline(double zoneSide)
    {
        double half = zoneSide / 2;
        CardPoint[] corners = [new(-half, -half), new(half, -half), new(half, half), new(-half, half)];
        return new("zone", sight.Trace(CardPoint.Origin, corners), true, pen.Fine(OverlayColours.Plain));
    }

    /// <summary>Two arrows in the zone's upper left corner, u to the right and v upwards, or null when they are not in the frame.</summary>
    public Axes? Axes(double zoneSide)
    {
        double inset = 0.07 * zoneSide;
        double scale = sight.Scale(CardPoint.Origin);
        double length = Math.Min(AxisLength * pen.Css / scale, 0.25 * zoneSide);
        CardPoint foot = new(-(zoneSide / 2) + inset, (zoneSide / 2) - inset - length);
        CardPoint middle = foot + new CardVector(length / 2, length / 2);
        if (sight.FindInFrame(foot) is null || sight.FindInFrame(middle) is not { } image)
            return null;
        List<OverlayPrimitive> drawn = [];
        List<(string, PixelPoint)> letters = [];
        foreach ((string letter, CardVector unit) in new[] { ("u", new CardVector(1, 0)), ("v", new CardVector(0, 1)) })
        {
            CardPoint tip = foot + (length * unit);
            CardPoint neck = tip - (HeadLength * pen.Css / scale * unit);
            CardVector side = 0.6 * HeadLength * pen.Css / scale * new CardVector(-unit.V, unit.U);
            drawn.Add(new OverlayLine("axes", sight.Trace(foot, [foot, tip]), false, pen.Plain(OverlayColours.Plain)));
            drawn.Add(new OverlayLine("axes", sight.Trace(foot, [neck + side, tip, neck - side]), false, pen.Plain(OverlayColours.Plain)));
            letters.Add((letter, sight.Trace(foot, [tip])[0]));
        }

        return new(new(middle, image, length, length * scale, drawn), letters);
    }
}

/// <summary>The arrows of u and v, and where their letters belong.</summary>
internal sealed record Axes(Symbol Symbol, IReadOnlyList<(string Letter, PixelPoint Tip)> Letters);
