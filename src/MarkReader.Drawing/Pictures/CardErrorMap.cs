using System.Globalization;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>By what a mark at a place of a card's zone would be read wrong.</summary>
/// <param name="Error">Where it is read, less where it is.</param>
public sealed record PlaceError(CardPoint At, CardVector Error);

/// <summary>A card's zone with the errors of marks in it as exaggerated arrows, shaded by their size, with numbers.</summary>
/// <remarks>Numbers are thousandths of a millimetre, or tenths of thousandths of an inch.</remarks>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Zone">Side of the zone.</param>
/// <param name="Limit">Above zero.</param>
/// <param name="Places">A square grid over the zone, at least two rows; every second place of every second row has its number.</param>
public sealed record CardErrorMap(string Title, Length Zone, Length Limit, IReadOnlyList<PlaceError> Places) : IPicture
{
    private const double Top = 52, Sides = 22, Foot = 10, LongestArrow = 34, Row = 17;

    private static readonly SKColor s_half = new(0xC9, 0xE1, 0xF2), s_over = new(0xF6, 0xC7, 0x9A);

    /// <summary>Of which photos the errors are; a line under the picture.</summary>
    public string? Note { get; init; }

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Math.Ceiling(Top + Room + Foot + KeyOf().Height + (Row * Notes.Count) + 12);

    /// <summary>Factor by which the arrows are longer than the zone's own scale; one of 1, 2, 5, 10, …</summary>
    public double Exaggeration => RoundStep.AtMost(LongestArrow / (PixelsPerMm * Math.Max(Limit.Millimetres / 4, Places.Max(p => p.Error.Magnitude))));

    private int Side => (int)Math.Round(Math.Sqrt(Places.Count));

    private double Room => Width - (2 * Sides);

    private double Cell => Room / Side;

    // Of the numbers.
    private Length Step => Style.Numbers.Inches ? Length.FromInches(1e-4) : Length.FromMillimetres(1e-3);

    // Places at the zone's sides stand in the middle of the outer cells.
    private double PixelsPerMm => (Room - Cell) / Zone.Millimetres;

    private CardPlane Plane => new(CardPoint.Origin, new(Width / 2, Top + (Room / 2)), PixelsPerMm);

    private IReadOnlyList<string> Notes =>
    [
        .. Note is null ? [] : new[] { Note },
        PictureWords.Fill(Style.Words.ErrorsTimes, Style.Numbers.Number(Exaggeration)),
        Style.Words.ArrowsAre,
        PictureWords.Fill(Style.Words.ErrorNumbers, Style.Numbers.Round(Step)),
        Style.Words.ZoneUp,
    ];

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        ink.Text(PictureWords.Fill(Style.Words.LimitIs, Style.Numbers.Round(Limit)), new(8, 38), Letter.Plain);
        foreach (PlaceError place in Places)
            Shade(ink, Plane.Place(place.At), Cell / 2, place.Error.Magnitude);
        double arrows = PixelsPerMm * Exaggeration;
        foreach (PlaceError place in Places)
        {
            PixelPoint from = Plane.Place(place.At);
            ink.Disc(from, 2, Ink.Black);
            ink.Arrow(from, from + new PixelVector(arrows * place.Error.U, -arrows * place.Error.V), new(Ink.Black, 1.8), 7);
        }

        for (int i = 0; i < Places.Count; i++)
        {
            if (i % Side % 2 == 0 && i / Side % 2 == 0)
                Number(ink, Plane.Place(Places[i].At), Places[i].Error);
        }

        double y = Top + Room + Foot;
        Key key = KeyOf();
        key.Draw(ink, 8, y);
        y += key.Height + 14;
        foreach (string note in Notes)
        {
            ink.Text(note, new(8, y), Letter.Plain);
            y += Row;
        }
    }

    private void Shade(Ink ink, PixelPoint at, double half, double error)
    {
        PixelPoint[] square = [at + new PixelVector(-half, -half), at + new PixelVector(half, -half), at + new PixelVector(half, half), at + new PixelVector(-half, half)];
        bool over = error > Limit.Millimetres;
        ink.Area(square, over ? s_over : error > Limit.Millimetres / 2 ? s_half : Ink.White);
        // Not by colour alone.
        if (over)
        {
            ink.Line(square[3], square[1], new(Ink.Vermilion, 0.8));
            ink.Line(at + new PixelVector(-half, 0), at + new PixelVector(0, -half), new(Ink.Vermilion, 0.8));
            ink.Line(at + new PixelVector(0, half), at + new PixelVector(half, 0), new(Ink.Vermilion, 0.8));
        }

        ink.Path(square, new(Ink.Pale, 0.8), closed: true);
    }

    /// <summary>Above the place when the arrow points down, else below, on a white ground.</summary>
    private void Number(Ink ink, PixelPoint at, CardVector error)
    {
        string text = (error.Magnitude / Step.Millimetres).ToString("0", CultureInfo.InvariantCulture);
        Letter letter = new(Ink.Black, Bold: true, Align: SKTextAlign.Center);
        double half = letter.Measure(text) / 2, foot = error.V < 0 ? at.Y - 5 : at.Y + 15;
        ink.Area([new(at.X - half - 1.5, foot - 10.5), new(at.X + half + 1.5, foot - 10.5), new(at.X + half + 1.5, foot + 1.5), new(at.X - half - 1.5, foot + 1.5)], Ink.Clear(Ink.White, 0.85));
        ink.Text(text, new(at.X, foot), letter);
    }

    private Key KeyOf() => new(Width - 16,
    [
        new((ink, at) => Shade(ink, at, 7, 0), Style.Words.UpToHalf),
        new((ink, at) => Shade(ink, at, 7, 0.75 * Limit.Millimetres), Style.Words.UpToLimit),
        new((ink, at) => Shade(ink, at, 7, 2 * Limit.Millimetres), Style.Words.OverLimit),
    ]);
}
