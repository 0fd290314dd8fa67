using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A round opening and the beam in it, as one looks at the tape: the whole at the left, the middle enlarged at the right.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Diameter">Of the opening, above zero.</param>
/// <param name="BeamDiameter">1/e² diameter of the beam there, above zero.</param>
/// <param name="Offset">The beam's axis from the opening's centre (mm) with its covariance.</param>
public sealed record ApertureView(string Title, Length Diameter, Length BeamDiameter, MeasuredPoint Offset) : IPicture
{
    private const double Panel = 148, Top = 30, ScaleRow = 16;

    /// <summary>A smaller part of the power is called less than this.</summary>
    public const double LeastPart = 1e-4;

    /// <summary>Largest distance of the axis from the centre; null: none stated.</summary>
    public Length? Tolerance { get; init; }

    /// <summary>Part of the power that does not pass, 0 to 1; null: not known.</summary>
    public double? Clipped { get; init; }

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Top + Panel + ScaleRow + 14 + KeyOf().Height + 62;

    /// <summary>Card frame, from the opening's centre, to the left panel.</summary>
    public CardPlane Whole => new(CardPoint.Origin, new(8 + (Panel / 2), Top + (Panel / 2)), Panel / 2.1 / Math.Max(Diameter.Millimetres / 2, Away + (BeamDiameter.Millimetres / 2)));

    /// <summary>The same to the right panel.</summary>
    public CardPlane Enlarged => new(
        CardPoint.Origin, new(Width - 8 - (Panel / 2), Top + (Panel / 2)), Panel / 2 / (1.2 * Math.Max(Math.Max(Away + Offset.Covariance.Ellipse95().SemiMajor, Tolerance?.Millimetres ?? 0), 0.1)));

    private double Away => Offset.Point.DistanceTo(CardPoint.Origin);

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        Left(ink, Whole);
        Right(ink, Enlarged);

        double y = Top + Panel + ScaleRow + 10;
        Key key = KeyOf();
        key.Draw(ink, 8, y);
        y += key.Height + 16;
        ink.Text($"{PictureWords.Fill(Style.Words.Hole, Style.Numbers.Round(Diameter))}, {PictureWords.Fill(Style.Words.Beam, Style.Numbers.Round(BeamDiameter))}", new(8, y), Letter.Plain);
        ink.Text(PictureWords.Fill(Style.Words.OffCentre, Style.Numbers.Measured(Length.FromMillimetres(Away))), new(8, y + 19), new(Ink.Black, Ink.Large, Bold: true));
        if (ClippedWords is { } words)
            ink.Text(words, new(8, y + 38), new(Ink.Black, Ink.Large, Bold: true));
    }

    private string? ClippedWords => Clipped switch
    {
        null => null,
        < LeastPart => PictureWords.Fill(Style.Words.ClippedLess, Style.Numbers.Number(100 * LeastPart)),
        { } part => PictureWords.Fill(Style.Words.Clipped, Style.Numbers.Number(Math.Round(100 * part, part < 0.01 ? 2 : 1))),
    };

    private void Left(Ink ink, CardPlane plane)
    {
        PixelPoint middle = plane.At;
        ink.Area(Signs.Square(middle, Panel / 2), Ink.Faint);
        double hole = plane.PixelsPerMm * Diameter.Millimetres / 2;
        ink.Disc(middle, hole, Ink.White);
        ink.Circle(middle, hole, new(Ink.Black, 2));
        Beam(ink, plane);
        Cross(ink, middle, 7);
        PixelPoint axis = plane.Place(Offset.Point);
        ink.Disc(axis, 2.4, Ink.Vermilion);
    }

    private void Right(Ink ink, CardPlane plane)
    {
        PixelPoint middle = plane.At;
        ink.Canvas.Save();
        ink.Canvas.ClipRect(new SKRect((float)(middle.X - (Panel / 2)), (float)(middle.Y - (Panel / 2)), (float)(middle.X + (Panel / 2)), (float)(middle.Y + (Panel / 2))));
        if (Tolerance is { } tolerance)
            ToleranceSign(ink, middle, plane.PixelsPerMm * tolerance.Millimetres);
        Cross(ink, middle, 10);
        Ellipse region = Offset.Covariance.Ellipse95();
        ink.Area(plane.Outline(region, Offset.Point), Ink.Clear(Ink.Vermilion, 0.2));
        ink.Path(plane.Outline(region, Offset.Point), new(Ink.Vermilion, 1.5), closed: true);
        PixelPoint axis = plane.Place(Offset.Point);
        ink.Line(middle, axis, new(Ink.Black, 1.4));
        ink.Disc(axis, 3, Ink.Vermilion);
        ink.Canvas.Restore();
        ink.Path(Signs.Square(middle, Panel / 2), new(Ink.Grey, 1), closed: true);
        Scale(ink, plane, middle);
    }

    private void Beam(Ink ink, CardPlane plane)
    {
        double radius = plane.PixelsPerMm * BeamDiameter.Millimetres / 2;
        ink.Disc(plane.Place(Offset.Point), radius, Ink.Clear(Ink.Vermilion, 0.28));
        ink.Circle(plane.Place(Offset.Point), radius, new(Ink.Vermilion, 1.8));
    }

    private void Scale(Ink ink, CardPlane plane, PixelPoint middle)
    {
        double unit = Style.Numbers.Inches ? Quantities.Length.MillimetresPerInch : 1;
        double length = unit * RoundStep.AtMost(70 / plane.PixelsPerMm / unit);
        // Below the panel, in which the tolerance may reach to every side.
        PixelPoint from = middle + new PixelVector(-Panel / 2, (Panel / 2) + 11), to = from + new PixelVector(length * plane.PixelsPerMm, 0);
        ink.Line(from, to, new(Ink.Black, 2));
        ink.Text(Style.Numbers.Round(Length.FromMillimetres(length)), to + new PixelVector(6, 4.5), Letter.Plain);
    }

    private static void Cross(Ink ink, PixelPoint at, double reach)
    {
        ink.Line(at + new PixelVector(-reach, 0), at + new PixelVector(reach, 0), new(Ink.Black, 2));
        ink.Line(at + new PixelVector(0, -reach), at + new PixelVector(0, reach), new(Ink.Black, 2));
    }

    private static void ToleranceSign(Ink ink, PixelPoint at, double radius)
    {
        ink.Disc(at, radius, Ink.Clear(Ink.Green, 0.12));
        ink.Circle(at, radius, new(Ink.Green, 1.4, Dashed: true));
    }

    private Key KeyOf()
    {
        PictureWords words = Style.Words;
        List<KeyItem> items =
        [
            new((ink, at) => Cross(ink, at, 6), words.Centre),
            new((ink, at) =>
            {
                ink.Disc(at, 6.5, Ink.Clear(Ink.Vermilion, 0.28));
                ink.Circle(at, 6.5, new(Ink.Vermilion, 1.5));
                ink.Disc(at, 2, Ink.Vermilion);
            }, words.BeamPlace),
        ];
        if (Tolerance is { } tolerance)
            items.Add(new((ink, at) => ToleranceSign(ink, at, 6.5), $"{words.Tolerance} {Style.Numbers.Round(tolerance)}"));
        return new(Width - 16, items);
    }
}
