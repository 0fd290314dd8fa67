using MarkReader.Drawing.Labels;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>Sets labels one after the other; one for which there is no room is cut to its first line, or left out.</summary>
internal sealed class LabelPlacer(LabelPlaces places, Pen pen)
{
    private const double Lead = 1.08; // of the letters' size

    private readonly List<PlacedLabel> _placed = [];

    public IReadOnlyList<PlacedLabel> Placed => _placed;

    public void Place(Label label)
    {
        TextStyle[] styles = [.. label.Lines.Select((_, i) => pen.Text(i == 0 ? label.Colour : OverlayColours.Plain, i == 0))];
        double[] widths = [.. label.Lines.Select((line, i) => Pen.Measure(line, styles[i]))];
        double halo = styles[0].Halo;
        int[] lines = [.. new[] { widths.Length, 1 }.Distinct()];
        if (places.Take([.. lines.Select(Size)], label.Anchor, label.Clear, label.Leader) is not { } place)
            return;
        PixelBox box = place.Box;
        List<OverlayPrimitive> drawn = [];
        if (place.Leader is { } leader)
            drawn.Add(new OverlayLine(label.Part + "-leader", [leader.From, leader.To], false, pen.Plain(label.Colour)));
        for (int i = 0; i < lines[place.Size]; i++)
        {
            double baseline = box.Top + halo + (TextStyle.Ascent * styles[0].Size) + (i * Lead * styles[0].Size);
            double left = box.Middle.X < label.Anchor.X - (label.Clear / 2) ? box.Right - halo - widths[i] : box.Left + halo; // flush towards the point
            drawn.Add(new OverlayText(label.Part + "-label", label.Lines[i], new(left, baseline), styles[i], widths[i]));
        }

        _placed.Add(new(label, box, drawn));

        LabelSize Size(int count) => new(
            widths.Take(count).Max() + (2 * halo), ((count - 1) * Lead * styles[0].Size) + ((TextStyle.Ascent + TextStyle.Descent) * styles[0].Size) + (2 * halo));
    }
}
