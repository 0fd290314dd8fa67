using System.Globalization;
using MarkReader.Drawing.Texts;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace MarkReader.Drawing.Audits;

/// <summary>Part of the truths inside the stated 95 % region by kind, with its confidence interval, against the band from 93 to 97 %.</summary>
internal static class CoveragePanel
{
    public const double BandLow = 93, BandHigh = 97;

    public static Plot Of(KindRows rows, PixelPadding padding)
    {
        Plot plot = ChartStyle.Panel(DrawingTexts.Get("coveragePanel.foundMarks"), padding);
        double least = rows.All.Where(r => r.Coverage is not null).Select(r => 100 * r.Coverage!.Part).DefaultIfEmpty(100).Min();
        double left = Math.Clamp((Math.Floor(least / 10) * 10) - 10, 0, 60);
        rows.Prepare(plot, left - 2, 102);
        var band = plot.Add.Rectangle(BandLow, BandHigh, -0.5, rows.All.Count - 0.5);
        (band.FillColor, band.LineWidth) = (ChartStyle.Band, 0);
        plot.Axes.Left.TickGenerator = new EmptyTickGenerator();
        plot.Axes.Right.TickGenerator = rows.Words(r => r.Count);
        NumericManual ticks = new();
        for (double percent = left; percent <= 100; percent += 10)
            ticks.AddMajor(percent, percent.ToString("0", CultureInfo.InvariantCulture));
        plot.Axes.Bottom.TickGenerator = ticks;
        for (int row = 0; row < rows.All.Count; row++)
        {
            if (rows.All[row].Coverage is { } coverage)
                Draw(plot, coverage, rows.Place(row), left);
        }

        return plot;
    }

    private static void Draw(Plot plot, CoverageBar bar, double y, double left)
    {
        bool meets = Meets(bar);
        Color colour = meets ? ChartStyle.Blue : ChartStyle.Vermilion;
        (double low, double high) = (Math.Max(left, 100 * bar.Low), Math.Max(left, 100 * bar.High));
        var interval = plot.Add.Line(low, y, high, y);
        (interval.LineColor, interval.LineWidth) = (colour, 1.5f);
        foreach (double end in (double[])[low, high])
        {
            if (end <= left)
                continue;
            var cap = plot.Add.Line(end, y - 0.22, end, y + 0.22);
            (cap.LineColor, cap.LineWidth) = (colour, 1.5f);
        }

        _ = plot.Add.Marker(100 * bar.Part, y, meets ? MarkerShape.FilledSquare : MarkerShape.FilledTriangleUp, meets ? 7 : 9, colour);
    }

    /// <summary>Whether the interval reaches the band: what was found does not contradict it.</summary>
    private static bool Meets(CoverageBar bar) => 100 * bar.Low <= BandHigh && 100 * bar.High >= BandLow;
}
