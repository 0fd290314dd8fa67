using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A corner of the gantry's frame.</summary>
/// <param name="Name">As people call it, such as "far right".</param>
/// <param name="Height">Above the plane of the others; negative below.</param>
/// <param name="Shim">What is to be put under it; null: nothing.</param>
public sealed record StandingCorner(string Name, bool IsRight, bool IsFar, Length Height, Length? Shim = null);

/// <summary>The gantry's frame seen from the near left, its corners' heights exaggerated.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Travels">Its sides are drawn in the proportion of the travels.</param>
/// <param name="Corners">All four.</param>
public sealed record TwistedFrame(string Title, BedPlace Travels, IReadOnlyList<StandingCorner> Corners) : IPicture
{
    private const double Highest = 44, LeastStack = 10;
    private static readonly PixelVector s_x = new(168, 16), s_y = new(72, -70);
    private static readonly PixelPoint s_near = new(40, 150);

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => 306;

    /// <summary>Factor by which heights are drawn larger than the frame's own scale; one of 1, 2, 5, 10, …</summary>
    public double Exaggeration => RoundStep.AtMost(Highest / (PixelsPerMm * Corners.Max(c => Math.Max(Math.Abs(c.Height.Millimetres), 1e-3))));

    /// <summary>Scale of the frame along x.</summary>
    public double PixelsPerMm => s_x.Magnitude / Travels.X.Millimetres;

    /// <summary>Where a corner lies in the picture.</summary>
    public PixelPoint Place(StandingCorner corner) => Flat(corner.IsRight, corner.IsFar) + new PixelVector(0, -PixelsPerMm * Exaggeration * corner.Height.Millimetres);

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        (bool, bool)[] round = [(false, false), (true, false), (true, true), (false, true)];
        PixelPoint[] flat = [.. round.Select(c => Flat(c.Item1, c.Item2))];
        StandingCorner[] corners = [.. round.Select(c => Corners.First(k => (k.IsRight, k.IsFar) == c))];
        PixelPoint[] real = [.. corners.Select(Place)];
        ink.Area(real, Ink.Clear(Ink.Blue, 0.1));
        ink.Path(flat, new(Ink.Grey, 1.3, Dashed: true), closed: true);
        ink.Path(real, new(Ink.Blue, 3.2), closed: true);
        for (int i = 0; i < corners.Length; i++)
            Corner(ink, corners[i], flat[i], real[i]);
        string times = PictureWords.Fill(Style.Words.HeightsTimes, Style.Numbers.Number(Exaggeration));
        ink.Text(times, new(8, Height - 27), Letter.Plain);
        ink.Text(Style.Words.Flat, new(8, Height - 10), Letter.Plain);
    }

    private void Corner(Ink ink, StandingCorner corner, PixelPoint flat, PixelPoint real)
    {
        if (corner.Shim is not null)
        {
            // A stack of washers in the gap.
            double gap = real.Y - flat.Y, bottom = Math.Max(gap, LeastStack);
            ink.Area([flat + new PixelVector(-9, 0), flat + new PixelVector(9, 0), flat + new PixelVector(9, bottom), flat + new PixelVector(-9, bottom)], Ink.Vermilion);
            for (double y = 5; y < bottom; y += 5)
                ink.Line(flat + new PixelVector(-9, y), flat + new PixelVector(9, y), new(Ink.White, 1));
        }
        else if (flat.DistanceTo(real) > 1)
        {
            ink.Arrow(flat, real, new(Ink.Vermilion, 2.4));
        }

        ink.Disc(real, 4, Ink.Black);
        Label(ink, corner, flat, real);
    }

    private void Label(Ink ink, StandingCorner corner, PixelPoint flat, PixelPoint real)
    {
        List<(string Text, Letter Letter)> lines = [(corner.Name, Letter.Plain)];
        double mm = corner.Height.Millimetres;
        if (Math.Abs(mm) > 1e-6)
            lines.Add((PictureWords.Fill(mm < 0 ? Style.Words.TooLow : Style.Words.TooHigh, Style.Numbers.Measured(Length.FromMillimetres(Math.Abs(mm)))), Letter.Plain));
        if (corner.Shim is { } shim)
            lines.Add((PictureWords.Fill(Style.Words.Shim, Style.Numbers.Measured(shim)), new(Ink.Vermilion, Ink.Large, Bold: true)));
        // Far corners have their words above, near ones below; right ones end at the picture's border.
        // The frame's dashed side rises to the left of a far corner, and washers stand below a near one.
        double top = corner.IsFar
            ? Math.Min(flat.Y, real.Y) - (lines.Count > 1 ? 20 : 10) - ((lines.Count - 1) * 17)
            : Math.Max(flat.Y + (corner.Shim is null ? 0 : LeastStack), real.Y) + 20;
        for (int i = 0; i < lines.Count; i++)
        {
            (string text, Letter letter) = lines[i];
            double width = letter.Measure(text), left = Math.Clamp(real.X - (width / 2), 6, Width - 6 - width);
            ink.Text(text, new(left, top + (i * 17)), letter);
        }
    }

    private static PixelPoint Flat(bool right, bool far) => s_near + ((right ? 1 : 0) * s_x) + ((far ? 1 : 0) * s_y);
}
