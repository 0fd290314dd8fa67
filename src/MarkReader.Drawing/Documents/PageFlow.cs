using MarkReader.Drawing.Cards;
using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>Pages that are filled from the top; what does not fit begins the next one. mm from a page's upper left corner.</summary>
internal sealed class PageFlow(Paper paper)
{
    public const double Margin = 18, HeadLine = 14, Top = 22, FootLine = 13;

    private readonly List<List<Action<SKCanvas>>> _pages = [[]];

    public double Y { get; private set; } = Top;

    public static double Left => Margin;

    public double Width => paper.Width.Millimetres - (2 * Margin);

    public double Right => Margin + Width;

    public double PageHeight => paper.Height.Millimetres;

    public double Bottom => PageHeight - 22;

    /// <summary>The most that one page holds.</summary>
    public double Room => Bottom - Top;

    public IReadOnlyList<IReadOnlyList<Action<SKCanvas>>> Pages => _pages;

    private bool IsFresh => Y <= Top;

    /// <summary>Begins a new page unless so much fits on this one. True when it did.</summary>
    public bool Need(double height)
    {
        if (IsFresh || Y + height <= Bottom)
            return false;
        _pages.Add([]);
        Y = Top;
        return true;
    }

    /// <summary>Puts a part of this height on the page; it is drawn with its top at the place that it is given.</summary>
    public void Put(double height, Action<SKCanvas, double> draw)
    {
        Need(height);
        double y = Y;
        _pages[^1].Add(canvas => draw(canvas, y));
        Y += height;
    }

    /// <summary>White below what stands there; none at the top of a page.</summary>
    public void Gap(double height)
    {
        if (!IsFresh)
            Y += height;
    }

    public static SKPaint Rule(SKColor colour, double width) => new() { Color = colour, IsStroke = true, StrokeWidth = (float)width, IsAntialias = true };

    public void Line(SKCanvas canvas, double y, SKColor colour, double width)
    {
        using SKPaint rule = Rule(colour, width);
        canvas.DrawLine((float)Left, (float)y, (float)Right, (float)y, rule);
    }
}
