using MarkReader.Drawing.Labels;
using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>Sets short texts beside points.</summary>
/// <param name="room">The texts stay inside.</param>
internal sealed class Callouts(Ink ink, PixelBox room)
{
    // Upper right first.
    private readonly LabelPlaces _places = new(room, 1, Angle.FromDegrees(-45));

    /// <summary>Keeps an area free.</summary>
    public void Keep(PixelBox box) => _places.Keep(box);

    /// <summary>Keeps a sign free.</summary>
    public void Keep(PixelPoint centre, double radius) => _places.Keep(centre, radius);

    /// <summary>Keeps a line free while there is room.</summary>
    public void Keep(PixelPoint from, PixelPoint to) => _places.Keep(from, to);

    public void KeepOutline(IReadOnlyList<PixelPoint> corners)
    {
        for (int i = 0; i < corners.Count; i++)
            Keep(corners[i], corners[(i + 1) % corners.Count]);
    }

    /// <summary>Places a text about a point and draws it on a white ground; a text for which there is no room at all is left out.</summary>
    /// <param name="clear">Radius about the point that the text leaves free.</param>
    public void Place(string text, PixelPoint anchor, double clear, Letter letter)
    {
        if (_places.Take([new(letter.Measure(text) + 3, letter.Size + 2)], anchor, clear, leader: true) is not { } place)
            return;
        if (place.Leader is { } leader)
            ink.Line(leader.From, leader.To, new(letter.Colour, 0.8));
        PixelBox box = place.Box;
        ink.Area([new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)], Ink.Clear(Ink.White, 0.75));
        ink.Text(text, new(box.Middle.X, box.Bottom - 3.5), letter with { Align = SKTextAlign.Center });
    }
}
