using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A place on which the mirror's plate rests.</summary>
/// <param name="Name">Name of the screw; null for the pivot.</param>
/// <param name="X">To the right, mm, as seen facing the knobs.</param>
/// <param name="Y">Upwards, mm.</param>
public sealed record DialContact(string? Name, double X, double Y);

/// <summary>A mirror's frame seen facing its knobs, the screw to turn, and the turn on a dial.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Contacts">The frame's three contacts.</param>
/// <param name="Screw">Name of the screw to turn.</param>
/// <param name="Turns">Positive clockwise.</param>
/// <param name="Saying">The turn in words, such as "1/8 turn clockwise".</param>
public sealed record ScrewDial(string Title, IReadOnlyList<DialContact> Contacts, string Screw, double Turns, string Saying) : IPicture
{
    private const double FrameSide = 128, FrameTop = 40;
    private const double MostTurns = 5, Head = 14;

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => 244;

    /// <summary>Middle of the dial.</summary>
    public static PixelPoint DialMiddle { get; } = new(240, 106);

    /// <summary>Radius at which the arc of the turn begins, px; each whole turn brings it inwards.</summary>
    public static double DialRadius => 52;

    /// <summary>The way of the turn on the dial: from the top, clockwise for positive turns; the arrow's tip is the last point.</summary>
    public IReadOnlyList<PixelPoint> Arc()
    {
        double turns = Math.Clamp(Turns, -MostTurns, MostTurns);
        int pieces = Math.Max(8, (int)Math.Ceiling(Math.Abs(turns) * 72));
        double inwards = Math.Min(10, 40 / Math.Max(1, Math.Abs(turns)));
        return [.. Enumerable.Range(0, pieces + 1).Select(i => OnDial(turns * i / pieces, DialRadius - (inwards * Math.Abs(turns) * i / pieces * (Math.Abs(turns) > 1 ? 1 : 0))))];
    }

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        Frame(ink);
        Dial(ink);
        ink.Text(Style.Words.FacingKnobs, new(8 + (FrameSide / 2) + 8, FrameTop + FrameSide + 20), new(Ink.Grey, Align: SKTextAlign.Center));
        Letter saying = new(Ink.Black, 19, Bold: true, SKTextAlign.Center);
        string words = $"{Screw}: {Saying}";
        double fitting = Math.Min(19, 19 * 304 / saying.Measure(words));
        if (fitting >= Ink.Large)
        {
            ink.Text(words, new(Width / 2, 224), saying with { Size = fitting });
            return;
        }

        Letter smaller = saying with { Size = Ink.Large };
        foreach ((int row, string line) in Ink.Lines(words, 304, smaller).Index())
            ink.Text(line, new(Width / 2, 214 + (20 * row)), smaller);
    }

    private void Frame(Ink ink)
    {
        PixelPoint middle = new(16 + (FrameSide / 2), FrameTop + (FrameSide / 2));
        ink.Area(Signs.Square(middle, FrameSide / 2), new SKColor(0xF2, 0xF2, 0xF2));
        ink.Path(Signs.Square(middle, FrameSide / 2), new(Ink.Grey, 1.5), closed: true);
        ink.Circle(middle, 24, new(Ink.Pale, 1.5, Dashed: true));
        double reach = Contacts.Max(c => Math.Max(Math.Abs(c.X), Math.Abs(c.Y)));
        double scale = reach > 0 ? ((FrameSide / 2) - 24) / reach : 1;
        foreach (DialContact contact in Contacts)
        {
            PixelPoint at = middle + new PixelVector(scale * contact.X, -scale * contact.Y);
            if (contact.Name is null)
                Pivot(ink, at, at.Y > middle.Y);
            else
                Knob(ink, at, contact.Name, contact.Name == Screw);
        }
    }

    private void Pivot(Ink ink, PixelPoint at, bool low)
    {
        ink.Disc(at, 4.5, Ink.Grey);
        ink.Text(Style.Words.Pivot, at + new PixelVector(0, low ? 18 : -9), new(Ink.Grey, Align: SKTextAlign.Center));
    }

    private static void Knob(Ink ink, PixelPoint at, string name, bool turned)
    {
        ink.Disc(at, 17, turned ? Ink.Vermilion : Ink.White);
        ink.Circle(at, 17, new(turned ? Ink.Vermilion : Ink.Black, 1.6));
        if (turned)
            ink.Circle(at, 21, new(Ink.Vermilion, 2));
        Letter letter = new(turned ? Ink.White : Ink.Black, 15, Bold: true, SKTextAlign.Center);
        double size = Math.Min(15, 15 * 28 / letter.Measure(name));
        ink.Text(name, at + new PixelVector(0, 0.36 * size), letter with { Size = size });
    }

    private void Dial(Ink ink)
    {
        ink.Circle(DialMiddle, 68, new(Ink.Black, 1.6));
        for (int i = 0; i < 16; i++)
        {
            double length = i % 4 == 0 ? 12 : i % 2 == 0 ? 8 : 5;
            ink.Line(OnDial(i / 16.0, 68), OnDial(i / 16.0, 68 - length), new(i == 0 ? Ink.Black : Ink.Grey, i == 0 ? 2.5 : 1.4));
        }

        IReadOnlyList<PixelPoint> arc = Arc();
        if (Math.Abs(Turns) < 1e-9)
            return;
        if (Math.Abs(Turns) <= 1)
            ink.Area([DialMiddle, .. arc], Ink.Clear(Ink.Vermilion, 0.16));
        // Up to the head, whose point lies at the end.
        int shaft = arc.Count - 1;
        for (double left = 0; shaft > 0 && left < Head - 2; shaft--)
            left += arc[shaft].DistanceTo(arc[shaft - 1]);
        if (shaft > 0)
            ink.Path(arc.Take(shaft + 1), new(Ink.Vermilion, 4.5), closed: false);
        Tip(ink, arc);
        ink.Line(DialMiddle, OnDial(0, 44), new(Ink.Grey, 1.4));
        ink.Disc(DialMiddle, 3, Ink.Grey);
        Letter name = new(Ink.Black, 17, Bold: true, SKTextAlign.Center);
        ink.Text(Screw.Length <= 3 ? Screw : "", DialMiddle + new PixelVector(Turns > 0 ? -16 : 16, 22), name);
    }

    // The head's point is where the turn ends.
    private static void Tip(Ink ink, IReadOnlyList<PixelPoint> arc)
    {
        PixelPoint end = arc[^1];
        PixelVector way = end - (arc.LastOrDefault(p => p.DistanceTo(end) > Head / 2) is { X: > 0 } before ? before : arc[0]);
        PixelVector along = (Head / way.Magnitude) * way, across = new(-along.Y, along.X);
        ink.Area([end, end + (-1 * along) + (0.62 * across), end + (-1 * along) + (-0.62 * across)], Ink.Vermilion);
    }

    private static PixelPoint OnDial(double turns, double radius)
    {
        (double sin, double cos) = Math.SinCos(2 * Math.PI * turns);
        return DialMiddle + new PixelVector(radius * sin, -radius * cos);
    }
}
