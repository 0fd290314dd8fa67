using MarkReader.Drawing.Audits;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A part of an uncertainty.</summary>
/// <param name="Name">What it comes from.</param>
/// <param name="Uncertainty">Standard uncertainty that it alone would give.</param>
/// <param name="Share">Its part of the whole variance, 0 to 1.</param>
public sealed record UncertaintyBar(string Name, Length Uncertainty, double Share);

/// <summary>Where an uncertainty comes from: a bar for each part, with its value and its share of the variance.</summary>
/// <param name="Title">What is uncertain, in a few words.</param>
/// <param name="Bars">From the top, at least one.</param>
/// <param name="Whole">The standard uncertainty of all together.</param>
public sealed record UncertaintyBars(string Title, IReadOnlyList<UncertaintyBar> Bars, Length Whole) : IPicture
{
    private const int Head = 46, Foot = 26, Sides = 22, Between = 10, Line = 17, Bar = 16;
    private const double Inch = Quantities.Length.MillimetresPerInch;

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Head + (Row * Bars.Count) + Foot;

    // A row has the words, on a line of their own where they would run into the number, and the bar below.
    private int Row => (Lines * Line) + Bar + 9;

    private int Lines => Bars.Any(b => Letter.Plain.Measure(b.Name) + Between + Letter.Plain.Measure(Number(b)) > Width - Sides) ? 2 : 1;

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        ink.Text(PictureWords.Fill(Style.Words.Whole, Style.Numbers.Fine(Whole)), new(8, 38), Letter.Plain);
        PixelRect place = new(0, (float)Width, (float)Height, Head);
        using Plot plot = Chart();
        // The first time a plot draws itself twice, to settle its layout.
        using (SKNoDrawCanvas nothing = new((int)Width, (int)Height))
            plot.Render(nothing, place);
        canvas.Save();
        canvas.ClipRect(new SKRect(0, Head, (float)Width, (float)Height));
        plot.Render(canvas, place);
        canvas.Restore();
    }

    private Plot Chart()
    {
        double unit = Style.Numbers.Inches ? Inch : 1;
        double most = Math.Max(1e-6, Bars.Max(b => b.Uncertainty.Millimetres)) / unit * 1.04;
        Plot plot = ChartStyle.Panel("", new PixelPadding(10, 12, Foot, 0));
        plot.Axes.SetLimits(0, most, -0.5, Bars.Count - 0.5);
        plot.Axes.Left.TickGenerator = new EmptyTickGenerator();
        plot.Axes.Bottom.TickGenerator = Ticks(most);
        plot.Axes.Bottom.TickLabelStyle.FontSize = (float)Ink.Letters;
        plot.Grid.YAxisStyle.IsVisible = false;
        plot.Axes.Top.FrameLineStyle.Width = plot.Axes.Right.FrameLineStyle.Width = 0;
        for (int i = 0; i < Bars.Count; i++)
        {
            UncertaintyBar bar = Bars[i];
            double y = Bars.Count - 1 - i;
            double foot = y - 0.5 + (4.0 / Row), top = foot + ((double)Bar / Row);
            var area = plot.Add.Rectangle(0, bar.Uncertainty.Millimetres / unit, foot, top);
            (area.FillColor, area.LineWidth) = (ChartStyle.Blue, 0);
            Words(plot, bar.Name, 0, top + ((Lines - 1.0) * Line / Row), Alignment.LowerLeft);
            Words(plot, Number(bar), most, top, Alignment.LowerRight);
        }

        return plot;
    }

    private string Number(UncertaintyBar bar) =>
        $"{Style.Numbers.Fine(bar.Uncertainty)}, {PictureWords.Fill(Style.Words.Share, Style.Numbers.Number(Percentage.Rounded(bar.Share)))}";

    private static void Words(Plot plot, string words, double x, double y, Alignment alignment)
    {
        var text = plot.Add.Text(words, x, y);
        (text.LabelFontSize, text.LabelFontColor, text.LabelAlignment) = ((float)Ink.Letters, ChartStyle.Black, alignment);
        (text.LabelOffsetX, text.LabelOffsetY) = (alignment == Alignment.LowerLeft ? 3 : 0, 1);
    }

    private NumericManual Ticks(double most)
    {
        NumericManual ticks = new();
        double step = RoundStep.AtLeast(most / 5);
        // Round lengths are told to a hundredth of a millimetre or a ten-thousandth of an inch.
        Func<Length, string> told = step < (Style.Numbers.Inches ? 0.0001 : 0.01) ? Style.Numbers.Fine : Style.Numbers.Round;
        // Words at the right end would leave the picture.
        for (int i = 0; i * step <= 0.92 * most; i++)
            ticks.AddMajor(i * step, i == 0 ? "0" : told(Style.Numbers.Inches ? Length.FromInches(i * step) : Length.FromMillimetres(i * step)));
        return ticks;
    }
}
