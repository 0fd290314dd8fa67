using MarkReader.Drawing.Fonts;
using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>How letters are set: face, size in mm, colour.</summary>
internal sealed record Ink(SKTypeface Face, double Size, SKColor Colour)
{
    public static readonly SKColor Black = new(0x14, 0x1C, 0x20);
    public static readonly SKColor Grey = new(0x55, 0x60, 0x66);
    public static readonly SKColor Line = new(0xC4, 0xCA, 0xCC);

    public static Ink Title { get; } = new(Faces.Bold, 6.6, Black);

    public static Ink Subtitle { get; } = new(Faces.Regular, 3.7, Grey);

    public static Ink Heading { get; } = new(Faces.Bold, 4.4, Black);

    public static Ink Body { get; } = new(Faces.Regular, 3.25, Black);

    public static Ink Strong { get; } = new(Faces.Bold, 3.25, Black);

    public static Ink Small { get; } = new(Faces.Regular, 2.75, Grey);

    public static Ink Cell { get; } = new(Faces.Regular, 2.95, Black);

    public static Ink Gone { get; } = new(Faces.Regular, 2.95, Grey);

    public static Ink Head { get; } = new(Faces.Bold, 2.75, Black);

    /// <summary>From one line to the next, mm.</summary>
    public double Leading => 1.38 * Size;

    public double Width(string text)
    {
        using SKFont font = Faces.Font(Face, Size);
        return font.MeasureText(text);
    }

    /// <summary>A line of text whose top is at <paramref name="y"/>.</summary>
    public void Draw(SKCanvas canvas, string text, double x, double y, SKTextAlign align = SKTextAlign.Left)
    {
        using SKFont font = Faces.Font(Face, Size);
        using SKPaint paint = new() { Color = Colour, IsAntialias = true };
        canvas.DrawText(text, (float)x, (float)(y + ((Leading - Size) / 2) + (0.83 * Size)), align, font, paint);
    }

    /// <summary>The text in lines no wider than <paramref name="width"/>; words that are wider are broken.</summary>
    public IReadOnlyList<string> Wrap(string text, double width)
    {
        using SKFont font = Faces.Font(Face, Size);
        List<string> lines = [];
        foreach (string paragraph in text.Split('\n'))
        {
            string line = string.Empty;
            foreach (string word in paragraph.Split(' '))
            {
                string longer = line.Length == 0 ? word : line + " " + word;
                if (font.MeasureText(longer) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                    lines.Add(line);
                line = Broken(font, word, width, lines);
            }

            lines.Add(line);
        }

        return lines;
    }

    // What is left of a word after its full lines.
    private static string Broken(SKFont font, string word, double width, List<string> lines)
    {
        while (word.Length > 1 && font.MeasureText(word) > width)
        {
            int fits = Math.Max(1, font.BreakText(word, (float)width));
            if (fits < word.Length && char.IsLowSurrogate(word[fits]))
                fits = fits > 1 ? fits - 1 : fits + 1;
            if (fits >= word.Length)
                break;
            lines.Add(word[..fits]);
            word = word[fits..];
        }

        return word;
    }
}
