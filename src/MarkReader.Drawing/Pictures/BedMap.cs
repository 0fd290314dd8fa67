using System.Globalization;
using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A place of the head over the bed.</summary>
/// <param name="X">The head's travel from its near end.</param>
/// <param name="Y">The gantry's travel from its near end.</param>
public sealed record BedPlace(Length X, Length Y);

/// <summary>A mark of a survey.</summary>
/// <param name="Number">The mark's number in its visit.</param>
/// <param name="Mark">In the card frame of the head's target.</param>
public sealed record SurveyedMark(int Number, BedPlace At, CardPoint Mark);

/// <summary>The bed from above, x to the right and y away, with the marks of a survey as arrows from where the head stood.</summary>
/// <remarks>An arrow is the mark less the middle of the places' marks, exaggerated: u to the right, v (which is height at the machine) upwards.</remarks>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Travels">The far right corner: full travels, above zero.</param>
public sealed record BedMap(string Title, BedPlace Travels, IReadOnlyList<SurveyedMark> Marks) : IPicture
{
    private const double Margin = 54, Top = 72, LongestSide = 212, LeastSide = 70, LongestArrow = 46, OddReach = 11;

    /// <summary>Largest distance of two marks; half of it is drawn about each place as a dashed circle. Null: none.</summary>
    public Length? Tolerance { get; init; }

    /// <summary>The corner whose mark stands out.</summary>
    public BedPlace? StandsOut { get; init; }

    /// <summary>Where the next mark is to be made.</summary>
    public BedPlace? Next { get; init; }

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Math.Ceiling(Top + Size.Y + Margin + (Notes().Count * 17) + KeyOf().Height);

    /// <summary>Factor by which the arrows are longer than the bed's own scale; one of 1, 2, 5, 10, …</summary>
    public double Exaggeration
    {
        get
        {
            double longest = Marks.Select(m => (m.Mark - Middle).Magnitude).Append((Tolerance?.Millimetres ?? 0.1) / 2).Max();
            return RoundStep.AtMost(LongestArrow / (PixelsPerMm * longest));
        }
    }

    /// <summary>The middle of the marks, every place counted once.</summary>
    public CardPoint Middle => Marks.Count == 0
        ? CardPoint.Origin
        : Mean(Marks.GroupBy(m => m.At).Select(at => Mean(at.Select(m => m.Mark))));

    /// <summary>Scale of the bed.</summary>
    public double PixelsPerMm => Math.Min(LongestSide / Travels.X.Millimetres, LongestSide / Travels.Y.Millimetres);

    /// <summary>Where a place of the bed lies in the picture.</summary>
    public PixelPoint Place(BedPlace place) => new(
        ((Width - Size.X) / 2) + (Size.X * place.X.Millimetres / Travels.X.Millimetres), Top + (Size.Y * (1 - (place.Y.Millimetres / Travels.Y.Millimetres))));

    // A very long bed is drawn broader than it is; arrows keep the longer side's scale.
    private PixelVector Size => new(Math.Max(LeastSide, PixelsPerMm * Travels.X.Millimetres), Math.Max(LeastSide, PixelsPerMm * Travels.Y.Millimetres));

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        Bed(ink);
        double arrows = PixelsPerMm * Exaggeration;
        Callouts callouts = new(ink, new(4, 24, Width - 4, Top + Size.Y + Margin - 4));
        callouts.Keep(new PixelBox((Width / 2) - 32, Top - 20, (Width / 2) + 32, Top));
        foreach (SurveyedMark mark in Marks)
        {
            PixelPoint from = Place(mark.At), to = from + new PixelVector(arrows * (mark.Mark - Middle).U, -arrows * (mark.Mark - Middle).V);
            ink.Arrow(from, to, new(Ink.Blue, 2.2));
            callouts.Keep(from, to);
        }

        foreach (IGrouping<BedPlace, SurveyedMark> at in Marks.GroupBy(m => m.At))
        {
            ink.Disc(Place(at.Key), 3.5, Ink.Black);
            callouts.Keep(Place(at.Key), 4);
        }

        Rings(ink, callouts);
        foreach (IGrouping<BedPlace, SurveyedMark> at in Marks.GroupBy(m => m.At))
            callouts.Place(Numbers([.. at.Select(m => m.Number)]), Place(at.Key), at.Key == StandsOut ? OddReach + 2 : 5, new(Ink.Black, Ink.Letters, Bold: true));

        double y = Top + Size.Y + Margin;
        Key key = KeyOf();
        key.Draw(ink, 8, y - 6);
        y += key.Height + 8;
        foreach (string note in Notes())
        {
            ink.Text(note, new(8, y), Letter.Plain);
            y += 17;
        }
    }

    private void Bed(Ink ink)
    {
        BedPlace near = new(Length.Zero, Length.Zero), nearRight = new(Travels.X, Length.Zero), farLeft = new(Length.Zero, Travels.Y);
        ink.Area([Place(near), Place(nearRight), Place(Travels), Place(farLeft)], new SKColor(0xF4, 0xF4, 0xF4));
        ink.Path([Place(near), Place(nearRight), Place(Travels), Place(farLeft)], new(Ink.Grey, 1.5), closed: true);
        (double middle, double row) = (Width / 2, Top + (Size.Y / 2));
        Letter grey = new(Ink.Grey, Align: SKTextAlign.Center);
        ink.Text(Style.Words.FarEnd, new(middle, Top - 6), grey);
        ink.Text(Style.Words.NearEnd, new(middle, Top + Size.Y + 16), grey);
        ink.Text(Style.Words.Left, new(Place(near).X + 5, row + 4), grey with { Align = SKTextAlign.Left });
        ink.Text(Style.Words.Right, new(Place(nearRight).X - 5, row + 4), grey with { Align = SKTextAlign.Right });
    }

    private void Rings(Ink ink, Callouts callouts)
    {
        if (Tolerance is { } tolerance && Marks.Count > 0)
        {
            foreach (BedPlace at in Marks.Select(m => m.At).Distinct())
                ink.Circle(Place(at), PixelsPerMm * Exaggeration * tolerance.Millimetres / 2, new(Ink.Green, 1.2, Dashed: true));
        }

        if (StandsOut is { } odd)
        {
            ink.Path(Signs.Square(Place(odd), OddReach), new(Ink.Vermilion, 2.6), closed: true);
            callouts.KeepOutline(Signs.Square(Place(odd), OddReach));
        }

        if (Next is { } next)
        {
            NextSign(ink, Place(next));
            callouts.Keep(Place(next), 11);
            callouts.Place(Style.Words.Next, Place(next), 12, new(Ink.Black, Ink.Letters, Bold: true));
        }
    }

    private static void NextSign(Ink ink, PixelPoint at)
    {
        ink.Circle(at, 9, new(Ink.Black, 2));
        ink.Line(at + new PixelVector(-13, 0), at + new PixelVector(13, 0), new(Ink.Black, 1.4));
        ink.Line(at + new PixelVector(0, -13), at + new PixelVector(0, 13), new(Ink.Black, 1.4));
    }

    private IReadOnlyList<string> Notes() => Marks.Count == 0
        ? []
        : [PictureWords.Fill(Style.Words.ArrowsTimes, Style.Numbers.Number(Exaggeration)), .. Tolerance is null ? [] : new[] { $"{Style.Words.HalfTolerance}, {Style.Numbers.Measured(0.5 * Tolerance.Value)}" }];

    private Key KeyOf() => new(Width - 16, StandsOut is null ? [] : [new((ink, at) => ink.Path(Signs.Square(at, 6), new(Ink.Vermilion, 2.4), closed: true), Style.Words.StandsOut)]);

    // More than three marks at a place: the first and the last.
    private static string Numbers(int[] numbers) => numbers.Length <= 3
        ? string.Join(", ", numbers.Select(Text))
        : $"{Text(numbers[0])}, … {Text(numbers[^1])}";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static CardPoint Mean(IEnumerable<CardPoint> points)
    {
        CardPoint[] all = [.. points];
        return new(all.Average(p => p.U), all.Average(p => p.V));
    }
}
