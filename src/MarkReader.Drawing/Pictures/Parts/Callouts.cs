using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>Sets short texts beside points: inside a box, where they cover least of what is there already.</summary>
internal sealed class Callouts(Ink ink, PixelBox room)
{
    private const int Directions = 16;
    private static readonly double[] s_rings = [1, 4, 9, 16, 26, 38];

    private readonly List<PixelBox> _taken = [];

    public void Keep(PixelBox box) => _taken.Add(box);

    public void Keep(PixelPoint centre, double radius) => Keep(new PixelBox(centre.X, centre.Y, centre.X, centre.Y).Grown(radius));

    /// <summary>Keeps a line free.</summary>
    public void Keep(PixelPoint from, PixelPoint to)
    {
        int pieces = 1 + (int)(from.DistanceTo(to) / 4);
        for (int i = 0; i <= pieces; i++)
            Keep(from + ((double)i / pieces * (to - from)), 2.5);
    }

    public void KeepOutline(IReadOnlyList<PixelPoint> corners)
    {
        for (int i = 0; i < corners.Count; i++)
            Keep(corners[i], corners[(i + 1) % corners.Count]);
    }

    /// <summary>Places a text about a point and draws it on a white ground.</summary>
    /// <param name="clear">Radius about the point that the text leaves free.</param>
    public void Place(string text, PixelPoint anchor, double clear, Letter letter)
    {
        double width = letter.Measure(text) + 3, height = letter.Size + 2;
        (double Cost, PixelBox Box)? best = null;
        foreach (double ring in s_rings)
        {
            for (int i = 0; i < Directions; i++)
            {
                (double sin, double cos) = Math.SinCos((2 * Math.PI * i / Directions) - (Math.PI / 4));
                PixelPoint middle = new(anchor.X + (cos * (clear + ring + (width / 2))), anchor.Y + (sin * (clear + ring + (height / 2))));
                PixelBox box = new(middle.X - (width / 2), middle.Y - (height / 2), middle.X + (width / 2), middle.Y + (height / 2));
                double cost = ring + _taken.Sum(t => Overlap(t, box)) + (room.Holds(box) ? 0 : 1e4);
                if (best is null || cost < best.Value.Cost - 1e-9)
                    best = (cost, box);
            }
        }

        PixelBox place = best!.Value.Box;
        Keep(place);
        ink.Area([new(place.Left, place.Top), new(place.Right, place.Top), new(place.Right, place.Bottom), new(place.Left, place.Bottom)], Ink.Clear(Ink.White, 0.75));
        ink.Text(text, new(place.Middle.X, place.Bottom - 3.5), letter with { Align = SKTextAlign.Center });
    }

    private static double Overlap(PixelBox a, PixelBox b)
    {
        double x = Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left), y = Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Top, b.Top);
        return x > 0 && y > 0 ? 10 + (x * y) : 0;
    }
}
