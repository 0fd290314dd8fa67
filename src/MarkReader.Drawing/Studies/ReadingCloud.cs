using MarkReader.Drawing.Pictures;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Studies;

/// <summary>Readings of one person or phone.</summary>
/// <param name="Name">In the key; empty: not in it.</param>
/// <param name="Deviations">From the mean of all readings of the same mark, mm.</param>
public sealed record CloudGroup(string Name, IReadOnlyList<CardVector> Deviations);

/// <summary>How readings scatter about the mean of their mark: one kind of sign for each person or phone.</summary>
/// <param name="Title">What is read, in a few words.</param>
/// <param name="Groups">At least one; the signs of the seventh are those of the first.</param>
public sealed record ReadingCloud(string Title, IReadOnlyList<CloudGroup> Groups) : IPicture
{
    private const double Panel = 236, Top = 32, Left = 42;

    // Names in the key; more would be higher than the cloud.
    private const int MostNames = 12, LongestName = 18;

    private static readonly (SKColor Colour, Action<Ink, PixelPoint, SKColor> Draw)[] s_signs =
    [
        (Ink.Blue, (ink, at, c) => ink.Circle(at, 3.4, new(c, 1.6))),
        (Ink.Vermilion, (ink, at, c) => ink.Path(Signs.Square(at, 3.1), new(c, 1.6), closed: true)),
        (Ink.Green, (ink, at, c) => ink.Path([at + new PixelVector(0, -4), at + new PixelVector(3.8, 2.8), at + new PixelVector(-3.8, 2.8)], new(c, 1.6), closed: true)),
        (Ink.Black, Cross),
        (Ink.Blue, (ink, at, c) => ink.Area(Diamond(at), c)),
        (Ink.Vermilion, (ink, at, c) => ink.Disc(at, 3, c)),
    ];

    /// <summary>An ellipse about the mean, such as the one that holds 95 %; null for none.</summary>
    public Ellipse? Region { get; init; }

    /// <summary>What the ellipse is, in the key.</summary>
    public string RegionName { get; init; } = "";

    /// <summary>The deviation that is ringed as standing out; null for none.</summary>
    public CardVector? Odd { get; init; }

    public string OddName { get; init; } = "";

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Top + Panel + 10 + KeyOf().Height + 8;

    /// <summary>Deviations to the panel.</summary>
    public CardPlane Plane => new(CardPoint.Origin, new(Left + (Panel / 2), Top + (Panel / 2)), Panel / 2 / (1.08 * Math.Max(1e-4, Reach)));

    private double Reach => Math.Max(Region?.SemiMajor ?? 0, Groups.SelectMany(g => g.Deviations).Select(d => Math.Max(Math.Abs(d.U), Math.Abs(d.V))).DefaultIfEmpty(0).Max());

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        CardPlane plane = Plane;
        ink.Text(Title, new(8, 20), new(Ink.Black, Ink.Large, Bold: true));
        (double right, double foot) = (Left + Panel, Top + Panel);
        ink.Line(new(Left, plane.At.Y), new(right, plane.At.Y), new(Ink.Faint, 1.2));
        ink.Line(new(plane.At.X, Top), new(plane.At.X, foot), new(Ink.Faint, 1.2));
        ink.Path([new(Left, Top), new(right, Top), new(right, foot), new(Left, foot)], new(Ink.Grey, 1), closed: true);
        ink.Text("u", new(right - 12, plane.At.Y - 5), Letter.Plain);
        ink.Text("v", new(plane.At.X + 6, Top + 14), Letter.Plain);
        if (Region is { } region)
            ink.Path(plane.Outline(region, CardPoint.Origin), new(Ink.Grey, 1.4, Dashed: true), closed: true);
        for (int i = 0; i < Groups.Count; i++)
        {
            (SKColor colour, Action<Ink, PixelPoint, SKColor> draw) = s_signs[i % s_signs.Length];
            foreach (CardVector d in Groups[i].Deviations)
                draw(ink, plane.Place(CardPoint.Origin + d), colour);
        }

        if (Odd is { } odd)
            ink.Circle(plane.Place(CardPoint.Origin + odd), 8, new(Ink.Vermilion, 1.6));
        Scale(ink, plane, new(Left + 10, foot - 10));
        KeyOf().Draw(ink, 8, foot + 8);
    }

    private void Scale(Ink ink, CardPlane plane, PixelPoint from)
    {
        double unit = Style.Numbers.Inches ? 25.4 : 1, length = unit * RoundStep.AtMost(90 / plane.PixelsPerMm / unit);
        ink.Line(from, from + new PixelVector(length * plane.PixelsPerMm, 0), new(Ink.Black, 2));
        ink.Text(Style.Numbers.Round(Length.FromMillimetres(length)), from + new PixelVector(0, -5), Letter.Plain);
    }

    private Key KeyOf()
    {
        List<KeyItem> items = [];
        for (int i = 0; i < Math.Min(MostNames, Groups.Count); i++)
        {
            (SKColor colour, Action<Ink, PixelPoint, SKColor> draw) = s_signs[i % s_signs.Length];
            if (Groups[i].Name.Length > 0)
                items.Add(new((ink, at) => draw(ink, at, colour), Short(Groups[i].Name)));
        }

        if (Region is not null)
            items.Add(new((ink, at) => ink.Circle(at, 7, new(Ink.Grey, 1.4, Dashed: true)), RegionName));
        if (Odd is not null)
            items.Add(new((ink, at) => ink.Circle(at, 7, new(Ink.Vermilion, 1.6)), OddName));
        return new(Width - 16, items);
    }

    private static string Short(string name) => name.Length <= LongestName ? name : name[..(LongestName - 1)] + "…";

    private static void Cross(Ink ink, PixelPoint at, SKColor colour)
    {
        ink.Line(at + new PixelVector(-3.2, -3.2), at + new PixelVector(3.2, 3.2), new(colour, 1.7));
        ink.Line(at + new PixelVector(-3.2, 3.2), at + new PixelVector(3.2, -3.2), new(colour, 1.7));
    }

    private static PixelPoint[] Diamond(PixelPoint at) =>
        [at + new PixelVector(0, -4.2), at + new PixelVector(4.2, 0), at + new PixelVector(0, 4.2), at + new PixelVector(-4.2, 0)];
}
