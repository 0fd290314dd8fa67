using MarkReader.Drawing.Labels;
using MarkReader.Drawing.Overlays.Parts;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>Makes the drawing of a scene.</summary>
public static class OverlayComposer
{
    private const int MarksWithNumbers = 6; // more marks are labelled with their number only

    public static OverlayDrawing Compose(OverlayScene scene, OverlayView view)
    {
        ArgumentNullException.ThrowIfNull(scene);
        PixelFrame crop = CropChooser.Choose(scene);
        PixelFrame frame = view == OverlayView.Crop ? crop : PixelFrame.Whole(scene.Photo);
        Pen pen = new(frame);
        CardSight sight = new(scene.Projection, frame);
        double zone = scene.ZoneSide.Millimetres;
        ZoneLines zoneLines = new(sight, pen);
        IReadOnlyList<OverlayLine> behind = scene.ShowZone ? [zoneLines.Outline(zone)] : [];

        (IReadOnlyList<Symbol> symbols, IReadOnlyList<Label> labels) = scene.Content switch
        {
            OverlayContent.Aiming aiming => Aiming(aiming, sight, pen),
            OverlayContent.Marks marks => Marks(marks, sight, pen),
            OverlayContent.Leg leg => new LegParts(sight, pen).Symbols(leg),
            _ => throw new ArgumentOutOfRangeException(nameof(scene)),
        };
        IReadOnlyList<OverlayLine> line = scene.Content switch
        {
            OverlayContent.Aiming a => new AimLine(sight, pen).Pieces(a, symbols),
            OverlayContent.Leg leg => new LegParts(sight, pen).Arrows(leg),
            _ => [],
        };
        Axes? axes = scene.ShowAxes ? zoneLines.Axes(zone) : null;
        Symbol[] all = axes is null ? [.. symbols] : [.. symbols, axes.Symbol];
        ScaleBar? scale = new ScaleBarPlacer(sight, pen).Place(zone, all, scene.Inches);

        LabelPlaces places = new(frame.Box.Grown(-2 * pen.Css), pen.Css, Angle.Zero);
        foreach (Symbol symbol in symbols)
            places.Keep(symbol.Image, symbol.Reach);
        if (scale is not null)
            places.Keep(scale.Box);
        foreach ((PixelPoint from, PixelPoint to) in line.SelectMany(Sides))
            places.Keep(from, to);
        foreach ((PixelPoint from, PixelPoint to) in behind.Concat(axes?.Symbol.Primitives.OfType<OverlayLine>() ?? []).SelectMany(Sides))
            places.Keep(from, to, faint: true);
        LabelPlacer placer = new(places, pen);
        if (scale is not null)
            placer.Place(new("scale", scale.Middle, 3 * pen.Css, [scale.Words], OverlayColours.Plain, Leader: false));
        foreach ((string letter, PixelPoint tip) in axes?.Letters ?? [])
            placer.Place(new("axes", tip, 2 * pen.Css, [letter], OverlayColours.Plain, Leader: false));
        foreach (Label label in labels)
            placer.Place(label);

        OverlayPrimitive[] primitives =
        [
            .. behind, .. line, .. axes?.Symbol.Primitives ?? [], .. scale?.Primitives ?? [],
            .. symbols.SelectMany(s => s.Primitives), .. placer.Placed.SelectMany(p => p.Primitives),
        ];
        return new(scene.Photo, crop, frame, primitives, Words.Title(scene.Content), Words.Description(scene.Content));
    }

    private static IEnumerable<(PixelPoint From, PixelPoint To)> Sides(OverlayLine line)
    {
        for (int i = 1; i < line.Points.Count; i++)
            yield return (line.Points[i - 1], line.Points[i]);
        if (line.Closed)
            yield return (line.Points[^1], line.Points[0]);
    }

    private static (IReadOnlyList<Symbol> Symbols, IReadOnlyList<Label> Labels) Aiming(OverlayContent.Aiming aiming, CardSight sight, Pen pen)
    {
        Symbols drawn = new(sight, pen);
        (string Part, CardPoint Point, Colour Colour, Symbol? Symbol, string? Value)[] parts =
        [
            ("aim", aiming.Aim.Point, OverlayColours.Aim, drawn.Aim(aiming.Aim), Words.FromNear(aiming, aiming.Aim.Point)),
            ("near", aiming.Near.Centre.Point, OverlayColours.Near, drawn.Near(aiming.Near), null),
            ("far", aiming.Far.Centre.Point, OverlayColours.Far, drawn.Far(aiming.Far), Words.FromNear(aiming, aiming.Far.Centre.Point)),
        ];
        CardPoint inside = parts.Where(p => p.Symbol is not null).Select(p => p.Point).LastOrDefault();
        BorderArrow arrow = new(sight, pen);
        List<Symbol> symbols = [];
        List<Label> labels = [];
        foreach ((string part, CardPoint point, Colour colour, Symbol? symbol, string? value) in parts)
        {
            if ((symbol ?? arrow.Towards(part, point, inside, colour)) is not { } shown)
                continue;
            symbols.Add(shown);
            string[] values = value is null ? [] : [value];
            string[] outside = symbol is null ? [Words.Outside] : [];
            labels.Add(new(part, shown.Image, shown.Reach, [Words.Part(part), .. values, .. outside], colour));
        }

        symbols.Reverse(); // the aim point in front
        return (symbols, labels);
    }

    private static (IReadOnlyList<Symbol> Symbols, IReadOnlyList<Label> Labels) Marks(OverlayContent.Marks marks, CardSight sight, Pen pen)
    {
        Symbols drawn = new(sight, pen);
        List<Symbol> symbols = [];
        List<Label> labels = [];
        for (int i = 0; i < marks.Items.Count; i++)
        {
            if (drawn.Mark(marks.Items[i]) is not { } symbol)
                continue;
            symbols.Add(symbol);
            string number = (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
            string[] values = marks.Items.Count <= MarksWithNumbers ? [Words.Pair(symbol.Point)] : [];
            labels.Add(new("mark", symbol.Image, symbol.Reach, [number, .. values], OverlayColours.Near));
        }

        return (symbols, labels);
    }
}
