using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>
/// Places labels one after the other on rings about their points: inside the frame, never over another label, not over symbols while
/// there is another place, near before far. (Point-feature labels by a discrete set of candidates, greedily: J. Christensen, J. Marks and
/// S. Shieber, ACM Trans. Graphics 14 (1995) 203–232, doi:10.1145/212332.212334; rings instead of eight fixed places.)
/// </summary>
internal sealed class LabelPlacer(PixelBox frame, Pen pen)
{
    private const int Directions = 24;
    private const double LeaderFrom = 7; // CSS px between symbol and label
    private static readonly double[] s_rings = [2, 6, 12, 22, 36, 56, 84, 120, 160, 220]; // CSS px

    private readonly List<PlacedLabel> _placed = [];

    public IReadOnlyList<PlacedLabel> Placed => _placed;

    /// <summary>Places a label; one for which there is no room is left out.</summary>
    public void Place(Label label, Obstacles obstacles)
    {
        TextStyle[] styles = [.. label.Lines.Select((_, i) => pen.Text(i == 0 ? label.Colour : OverlayColours.Plain, i == 0))];
        double[] widths = [.. label.Lines.Select((line, i) => Pen.Measure(line, styles[i]))];
        double lead = styles[0].Size * 1.08;
        double halo = styles[0].Halo;
        double width = widths.Max() + (2 * halo);
        double height = ((label.Lines.Count - 1) * lead) + ((TextStyle.Ascent + TextStyle.Descent) * styles[0].Size) + (2 * halo);
        PixelBox? box = Best(label, width, height, obstacles);
        if (box is null)
            return;
        List<OverlayPrimitive> drawn = [.. Leader(label, box)];
        for (int i = 0; i < label.Lines.Count; i++)
        {
            double baseline = box.Top + halo + (TextStyle.Ascent * styles[0].Size) + (i * lead);
            double left = box.Middle.X < label.Anchor.X - (label.Clear / 2) ? box.Right - halo - widths[i] : box.Left + halo; // flush towards the point
            drawn.Add(new OverlayText(label.Part + "-label", label.Lines[i], new(left, baseline), styles[i], widths[i]));
        }

        _placed.Add(new(label, box, drawn));
    }

    private PixelBox? Best(Label label, double width, double height, Obstacles obstacles)
    {
        PixelBox room = frame.Grown(-2 * pen.Css);
        (double Cost, PixelBox Box)? best = null;
        foreach (double ring in s_rings)
        {
            for (int i = 0; i < Directions; i++)
            {
                (double sin, double cos) = Math.SinCos(2 * Math.PI * i / Directions);
                double distance = label.Clear + (ring * pen.Css);
                PixelPoint middle = label.Anchor + new PixelVector((cos * (distance + (width / 2))), sin * (distance + (height / 2)));
                PixelBox box = new(middle.X - (width / 2), middle.Y - (height / 2), middle.X + (width / 2), middle.Y + (height / 2));
                if (!room.Holds(box) || _placed.Any(p => p.Box.Grown(2 * pen.Css).Meets(box)))
                    continue;
                double cost = Cost(label, box, obstacles);
                if (best is null || cost < best.Value.Cost - 1e-9)
                    best = (cost, box);
            }
        }

        return best?.Box;
    }

    /// <summary>Lower is better; one unit is a CSS pixel of distance.</summary>
    private double Cost(Label label, PixelBox box, Obstacles obstacles)
    {
        PixelPoint near = box.Nearest(label.Anchor);
        double cost = Math.Max(0, near.DistanceTo(label.Anchor) - label.Clear) / pen.Css;
        cost += 500 * obstacles.Discs.Count(d => box.Nearest(d.Centre).DistanceTo(d.Centre) < d.Radius + pen.Css);
        cost += 300 * obstacles.Boxes.Count(b => b.Meets(box));
        cost += 25 * obstacles.Lines.Count(l => Segments.Meet(l.From, l.To, box));
        cost += 7 * obstacles.Faint.Count(l => Segments.Meet(l.From, l.To, box));
        if (label.Leader)
        {
            cost += 60 * obstacles.Discs.Count(d => d.Centre != label.Anchor && Segments.Distance(d.Centre, near, label.Anchor) < d.Radius);
            cost += 200 * _placed.Count(p => Segments.Meet(near, label.Anchor, p.Box));
        }

        return cost;
    }

    private IEnumerable<OverlayPrimitive> Leader(Label label, PixelBox box)
    {
        PixelPoint end = box.Nearest(label.Anchor);
        double distance = end.DistanceTo(label.Anchor);
        if (!label.Leader || distance - label.Clear < LeaderFrom * pen.Css)
            yield break;
        PixelPoint start = label.Anchor + ((label.Clear / distance) * (end - label.Anchor));
        yield return new OverlayLine(label.Part + "-leader", [start, end], false, pen.Plain(label.Colour));
    }
}
