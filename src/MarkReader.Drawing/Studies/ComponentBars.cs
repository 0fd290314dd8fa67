using MarkReader.Drawing.Pictures;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Studies;

/// <summary>A standard deviation with its confidence interval.</summary>
/// <param name="Name">What scatters.</param>
/// <param name="IsSum">Whether it is the whole of bars above it.</param>
public sealed record ComponentBar(string Name, Length Value, Length Low, Length High, bool IsSum = false);

/// <summary>Parts of a scatter as bars, each with its confidence interval as a line with end caps; an arrow where it reaches beyond the picture.</summary>
/// <param name="Title">What scatters, in a few words.</param>
/// <param name="Bars">From the top, at least one.</param>
public sealed record ComponentBars(string Title, IReadOnlyList<ComponentBar> Bars) : IPicture
{
    private const int Head = 34, Row = 40, Foot = 26, Side = 12;
    private const double Inch = 25.4;

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Head + (Row * Bars.Count) + Foot;

    /// <summary>The length at the right end: the largest bar takes two fifths at least, so that a long interval does not press the bars together.</summary>
    public Length Reach => Length.FromMillimetres(1.03 * Math.Max(1e-6, Math.Min(Bars.Max(b => b.High.Millimetres), 2.5 * Math.Max(Bars.Max(b => b.Value.Millimetres), Bars.Min(b => b.High.Millimetres)))));

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 20), new(Ink.Black, Ink.Large, Bold: true));
        double scale = (Width - (2 * Side)) / Reach.Millimetres, foot = Head + (Row * Bars.Count) + 4;
        Grid(ink, scale, foot);
        for (int i = 0; i < Bars.Count; i++)
            Bar(ink, Bars[i], scale, Head + (Row * i));
        ink.Line(new(Side, Head), new(Side, foot), new(Ink.Black, 1.2));
    }

    private void Bar(Ink ink, ComponentBar bar, double scale, double top)
    {
        double Place(Length length) => Side + (scale * Math.Min(length.Millimetres, Reach.Millimetres));
        ink.Text(bar.Name, new(Side + 4, top + 13), new(Ink.Black, Ink.Letters, bar.IsSum));
        ink.Text(Style.Numbers.Fine(bar.Value), new(Width - Side, top + 13), new(Ink.Black, Ink.Letters, bar.IsSum, SKTextAlign.Right));
        double middle = top + 25, value = Place(bar.Value);
        ink.Area([new(Side, middle - 6), new(value, middle - 6), new(value, middle + 6), new(Side, middle + 6)], bar.IsSum ? Ink.Blue : Ink.Clear(Ink.Blue, 0.55));
        (double low, double high) = (Place(bar.Low), Place(bar.High));
        ink.Line(new(low, middle - 5), new(low, middle + 5), new(Ink.Black, 1.6));
        if (bar.High > Reach)
        {
            ink.Arrow(new(low, middle), new(Width - Side + 6, middle), new(Ink.Black, 1.6));
            return;
        }

        ink.Line(new(low, middle), new(high, middle), new(Ink.Black, 1.6));
        ink.Line(new(high, middle - 5), new(high, middle + 5), new(Ink.Black, 1.6));
    }

    private void Grid(Ink ink, double scale, double foot)
    {
        double unit = Style.Numbers.Inches ? Inch : 1, most = Reach.Millimetres / unit, step = RoundStep.AtLeast(most / 5);
        for (int i = 0; i * step <= most; i++)
        {
            double x = Side + (scale * unit * i * step);
            ink.Line(new(x, Head), new(x, foot), new(Ink.Faint, 1));
            // Words at the right end would leave the picture.
            if (i * step <= 0.88 * most)
                ink.Text(i == 0 ? "0" : Style.Numbers.Round(Length.FromMillimetres(unit * i * step)), new(x, foot + 15), Letter.Plain with { Align = i == 0 ? SKTextAlign.Left : SKTextAlign.Center });
        }
    }
}
