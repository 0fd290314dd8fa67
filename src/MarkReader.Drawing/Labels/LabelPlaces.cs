using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Overlays.Parts;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Labels;

/// <summary>
/// Finds places for labels, one after the other, on rings about their points, else on a grid over the room: inside the room, never over
/// another label, over no sign while there is another place, near before far. (Point-feature labels by a discrete set of candidates,
/// greedily: J. Christensen, J. Marks and S. Shieber, ACM Trans. Graphics 14 (1995) 203–232, doi:10.1145/212332.212334; rings instead of
/// eight fixed places.)
/// </summary>
/// <param name="room">Where labels may be.</param>
/// <param name="px">The picture's length that is shown as one CSS pixel.</param>
/// <param name="first">Direction from the point that is tried first, clockwise from the right.</param>
internal sealed class LabelPlaces(PixelBox room, double px, Angle first)
{
    /// <summary>CSS pixels between a sign and its label from which on a line leads from one to the other.</summary>
    private const double LeaderFrom = 7;

    private const int Directions = 24;
    private const double Gap = 2, Grid = 10; // CSS px
    private static readonly double[] s_rings = [2, 6, 12, 22, 36, 56, 84, 120, 160, 220]; // CSS px

    private readonly List<PixelBox> _labels = [], _boxes = [];
    private readonly List<(PixelPoint Centre, double Radius)> _signs = [];
    private readonly List<(PixelPoint From, PixelPoint To)> _lines = [], _faint = [], _leaders = [];

    /// <summary>A sign that no label covers while there is another place.</summary>
    public void Keep(PixelPoint centre, double radius) => _signs.Add((centre, radius));

    /// <summary>An area likewise.</summary>
    public void Keep(PixelBox box) => _boxes.Add(box);

    /// <summary>A line that is covered only when the place is otherwise much better; a faint one, when it is a little better.</summary>
    public void Keep(PixelPoint from, PixelPoint to, bool faint = false) => (faint ? _faint : _lines).Add((from, to));

    /// <summary>The place of the first of some sizes that finds room; null when none does.</summary>
    /// <param name="clear">Radius about the anchor that the label leaves free.</param>
    /// <param name="leader">Whether a line leads from a distant label to its point.</param>
    public LabelPlace? Take(IReadOnlyList<LabelSize> sizes, PixelPoint anchor, double clear, bool leader)
    {
        if ((Find(sizes, anchor, clear, leader, strict: true) ?? Find(sizes, anchor, clear, leader, strict: false)) is not { } found)
            return null;
        _labels.Add(found.Box);
        PixelPoint end = found.Box.Nearest(anchor);
        double distance = end.DistanceTo(anchor);
        if (!leader || distance - clear < LeaderFrom * px)
            return found;
        PixelPoint start = anchor + ((clear / distance) * (end - anchor));
        _leaders.Add((start, end));
        return found with { Leader = (start, end) };
    }

    private LabelPlace? Find(IReadOnlyList<LabelSize> sizes, PixelPoint anchor, double clear, bool leader, bool strict)
    {
        for (int i = 0; i < sizes.Count; i++)
        {
            if ((Best(Around(sizes[i], anchor, clear)) ?? Best(Everywhere(sizes[i]))) is { } box)
                return new(i, box, null);
        }

        return null;

        PixelBox? Best(IEnumerable<PixelBox> places)
        {
            (double Cost, PixelBox Box)? best = null;
            foreach (PixelBox box in places)
            {
                if (!room.Holds(box) || _labels.Any(l => l.Grown(Gap * px).Meets(box)) || (strict && Covered(box) > 0))
                    continue;
                double cost = Cost(box, anchor, clear, leader);
                if (best is null || cost < best.Value.Cost - 1e-9)
                    best = (cost, box);
            }

            return best?.Box;
        }
    }

    private IEnumerable<PixelBox> Around(LabelSize size, PixelPoint anchor, double clear)
    {
        foreach (double ring in s_rings)
        {
            for (int i = 0; i < Directions; i++)
            {
                (double sin, double cos) = Math.SinCos((2 * Math.PI * i / Directions) + first.Radians);
                double distance = clear + (ring * px);
                yield return size.About(anchor + new PixelVector(cos * (distance + (size.Width / 2)), sin * (distance + (size.Height / 2))));
            }
        }
    }

    private IEnumerable<PixelBox> Everywhere(LabelSize size)
    {
        for (double y = room.Top + (size.Height / 2); y <= room.Bottom - (size.Height / 2); y += Grid * px)
        {
            for (double x = room.Left + (size.Width / 2); x <= room.Right - (size.Width / 2); x += Grid * px)
                yield return size.About(new(x, y));
        }
    }

    private int Covered(PixelBox box) => _signs.Count(s => box.Nearest(s.Centre).DistanceTo(s.Centre) < s.Radius + px) + _boxes.Count(b => b.Meets(box));

    /// <summary>Lower is better; one unit is a CSS pixel of distance.</summary>
    private double Cost(PixelBox box, PixelPoint anchor, double clear, bool leader)
    {
        PixelPoint near = box.Nearest(anchor);
        double cost = Math.Max(0, near.DistanceTo(anchor) - clear) / px;
        cost += 500 * Covered(box);
        cost += 200 * _leaders.Count(l => Segments.Meet(l.From, l.To, box));
        cost += 25 * _lines.Count(l => Segments.Meet(l.From, l.To, box));
        cost += 7 * _faint.Count(l => Segments.Meet(l.From, l.To, box));
        if (leader)
        {
            cost += 60 * _signs.Count(s => s.Centre != anchor && Segments.Distance(s.Centre, near, anchor) < s.Radius);
            cost += 200 * _labels.Count(l => Segments.Meet(near, anchor, l));
        }

        return cost;
    }
}

/// <summary>How much room a label takes.</summary>
internal readonly record struct LabelSize(double Width, double Height)
{
    public PixelBox About(PixelPoint middle) => new(middle.X - (Width / 2), middle.Y - (Height / 2), middle.X + (Width / 2), middle.Y + (Height / 2));
}

/// <summary>Where a label is set.</summary>
/// <param name="Size">Which of the sizes it has.</param>
/// <param name="Leader">A line from its sign's border to it, where it is not beside it.</param>
internal sealed record LabelPlace(int Size, PixelBox Box, (PixelPoint From, PixelPoint To)? Leader);
