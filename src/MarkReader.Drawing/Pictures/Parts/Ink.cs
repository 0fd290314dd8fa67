using MarkReader.Drawing.Fonts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>Draws lines, areas and letters of the pictures.</summary>
internal sealed class Ink(SKCanvas canvas)
{
    public const double Letters = 12.5, Large = 15;

    /// <summary>Near marks; darker than in the overlays, for a white ground (Okabe and Ito).</summary>
    public static readonly SKColor Blue = new(0x00, 0x72, 0xB2);

    /// <summary>Far marks and what is to be done.</summary>
    public static readonly SKColor Vermilion = new(0xC4, 0x4E, 0x00);

    public static readonly SKColor Green = new(0x00, 0x7A, 0x5A);

    public static readonly SKColor Black = new(0x10, 0x10, 0x10);

    public static readonly SKColor Grey = new(0x5E, 0x5E, 0x5E);

    public static readonly SKColor Pale = new(0xA8, 0xA8, 0xA8);

    public static readonly SKColor Faint = new(0xE2, 0xE2, 0xE2);

    public static readonly SKColor White = SKColors.White;

    public SKCanvas Canvas => canvas;

    public static SKColor Clear(SKColor colour, double opacity) => colour.WithAlpha((byte)Math.Round(255 * opacity));

    public void Line(PixelPoint from, PixelPoint to, Stroke stroke) => Path([from, to], stroke, closed: false);

    public void Path(IEnumerable<PixelPoint> points, Stroke stroke, bool closed)
    {
        using SKPath path = Of(points, closed);
        using SKPaint paint = stroke.Paint();
        canvas.DrawPath(path, paint);
    }

    public void Area(IEnumerable<PixelPoint> points, SKColor colour)
    {
        using SKPath path = Of(points, closed: true);
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        canvas.DrawPath(path, paint);
    }

    public void Circle(PixelPoint centre, double radius, Stroke stroke)
    {
        using SKPaint paint = stroke.Paint();
        canvas.DrawCircle((float)centre.X, (float)centre.Y, (float)radius, paint);
    }

    public void Disc(PixelPoint centre, double radius, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        canvas.DrawCircle((float)centre.X, (float)centre.Y, (float)radius, paint);
    }

    /// <summary>A line with a head at its end; the line reaches to the tip.</summary>
    public void Arrow(PixelPoint from, PixelPoint to, Stroke stroke, double head = 9)
    {
        double length = from.DistanceTo(to);
        Line(from, to, stroke);
        if (length < 1e-6)
            return;
        double size = Math.Min(head, length);
        PixelVector along = (size / length) * (from - to), across = new(-along.Y, along.X);
        Area([to, to + along + (0.45 * across), to + along + (-0.45 * across)], stroke.Colour);
    }

    /// <param name="at">Left end, middle or right end of the baseline.</param>
    public void Text(string text, PixelPoint at, Letter letter)
    {
        using SKFont font = letter.Font();
        using SKPaint paint = new() { Color = letter.Colour, IsAntialias = true };
        double left = letter.Align switch { SKTextAlign.Center => at.X - (font.MeasureText(text) / 2), SKTextAlign.Right => at.X - font.MeasureText(text), _ => at.X };
        canvas.DrawText(text, (float)left, (float)at.Y, SKTextAlign.Left, font, paint);
    }

    /// <summary>Lines of a text broken at spaces to a width, one under the other; the baseline after the last.</summary>
    public double Paragraph(string text, PixelPoint at, double width, Letter letter)
    {
        double y = at.Y;
        foreach (string line in Lines(text, width, letter))
        {
            Text(line, new(at.X, y), letter);
            y += letter.Size * 1.3;
        }

        return y;
    }

    public static IReadOnlyList<string> Lines(string text, double width, Letter letter)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && letter.Measure(longer) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        return line.Length == 0 ? lines : [.. lines, line];
    }

    private static SKPath Of(IEnumerable<PixelPoint> points, bool closed)
    {
        using SKPathBuilder builder = new();
        builder.AddPoly([.. points.Select(p => new SKPoint((float)p.X, (float)p.Y))], closed);
        return builder.Detach();
    }
}

/// <summary>How a line looks.</summary>
internal sealed record Stroke(SKColor Colour, double Width, bool Dashed = false)
{
    public SKPaint Paint()
    {
        SKPaint paint = new() { Color = Colour, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = (float)Width, StrokeJoin = SKStrokeJoin.Round };
        if (Dashed)
            paint.PathEffect = SKPathEffect.CreateDash([5, 3.5f], 0);
        return paint;
    }
}

/// <summary>How a text looks.</summary>
internal sealed record Letter(SKColor Colour, double Size = Ink.Letters, bool Bold = false, SKTextAlign Align = SKTextAlign.Left)
{
    public static Letter Plain { get; } = new(Ink.Black);

    public SKFont Font() => Faces.Font(Bold ? Faces.Bold : Faces.Regular, Size);

    public double Measure(string text)
    {
        using SKFont font = Font();
        return font.MeasureText(text);
    }
}
