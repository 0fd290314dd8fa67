using MarkReader.Drawing.Fonts;
using SkiaSharp;

namespace MarkReader.Drawing.Cards;

/// <summary>Text set in a column, in mm, from the top downwards.</summary>
internal sealed class TextBlock(SKCanvas canvas, TextColumn column)
{
    private const double Indent = 5;

    private double _y = column.Y; // top of the next line

    /// <summary>Where the text ends.</summary>
    public double End => _y;

    private double BodySize => column.TextSize;

    private double Leading => 1.36 * BodySize;

    private double Gap => 0.36 * BodySize;

    public void Heading(string text)
    {
        if (_y > column.Y)
            _y += 2 * Leading;
        Line(text, column.X, Faces.Bold, 1.15 * BodySize);
        _y += Gap;
    }

    public void Paragraph(string text)
    {
        Wrapped(text, column.X);
        _y += Gap;
    }

    public void Item(string sign, string text)
    {
        double top = _y;
        Line(sign, column.X, Faces.Regular, BodySize);
        _y = top;
        Wrapped(text, column.X + Indent);
        _y += Gap;
    }

    private void Wrapped(string text, double x)
    {
        using SKFont font = Faces.Font(Faces.Regular, BodySize);
        double width = column.X + column.Width - x;
        string line = string.Empty;
        foreach (string word in text.Split(' '))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && font.MeasureText(longer) > width)
            {
                Line(line, x, Faces.Regular, BodySize);
                longer = word;
            }

            line = longer;
        }

        Line(line, x, Faces.Regular, BodySize);
    }

    private void Line(string text, double x, SKTypeface face, double size)
    {
        using SKFont font = Faces.Font(face, size);
        using SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };
        canvas.DrawText(text, (float)x, (float)(_y + font.Metrics.CapHeight), SKTextAlign.Left, font, ink);
        _y += Leading;
    }
}
