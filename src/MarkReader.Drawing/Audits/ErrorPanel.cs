using System.Globalization;
using MarkReader.Drawing.Texts;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace MarkReader.Drawing.Audits;

/// <summary>Distances from the truth by kind, in micrometres, on a logarithmic axis.</summary>
internal static class ErrorPanel
{
    /// <summary>Smaller errors are drawn at the left border, log10 µm.</summary>
    private const double Least = -1;

    /// <summary>Longer names of kinds are cut, characters.</summary>
    private const int LongestName = 16;

    public static Plot Of(KindRows rows, PixelPadding padding)
    {
        Plot plot = ChartStyle.Panel(DrawingTexts.Get("errorPanel.mLogarithmicMMm"), padding);
        double right = Math.Max(2, Math.Ceiling(rows.All.SelectMany(r => r.Errors).Append(1e-3).Max(Log) * 4) / 4);
        rows.Prepare(plot, Least, right);
        plot.Axes.Left.TickGenerator = rows.Words(r => r.Name.Length <= LongestName ? r.Name : r.Name[..(LongestName - 1)] + "…");
        plot.Axes.Right.TickGenerator = new EmptyTickGenerator();
        plot.Axes.Bottom.TickGenerator = Decades(right);
        for (int row = 0; row < rows.All.Count; row++)
            Draw(plot, rows.All[row], rows.Place(row));
        return plot;
    }

    private static void Draw(Plot plot, KindRow row, double y)
    {
        if (row.Errors.Count > 0)
        {
            // Spread over the row by the golden ratio, so that equal errors do not hide each other.
            double[] places = [.. row.Errors.Select((_, i) => y + (0.44 * ((i * 0.618034 % 1) - 0.5)))];
            var dots = plot.Add.Markers([.. row.Errors.Select(Log)], places, MarkerShape.FilledCircle, 4.5f, ChartStyle.Blue.WithAlpha(0.45));
            dots.MarkerLineWidth = 0;
        }

        if (row.Rms is { } rms)
        {
            var bar = plot.Add.Line(Log(rms), y - 0.42, Log(rms), y + 0.42);
            (bar.LineColor, bar.LineWidth) = (ChartStyle.Vermilion, 3);
        }

        if (row.StatedRms is { } stated)
            _ = plot.Add.Marker(Log(stated), y, MarkerShape.OpenDiamond, 9, ChartStyle.Black);
    }

    private static double Log(double mm) => Math.Max(Least, Math.Log10(Math.Max(mm * 1000, 1e-9)));

    private static NumericManual Decades(double right)
    {
        NumericManual ticks = new();
        for (int decade = (int)Least; decade <= right; decade++)
        {
            ticks.AddMajor(decade, Math.Pow(10, decade).ToString("0.#", CultureInfo.InvariantCulture));
            for (int i = 2; i < 10 && decade + Math.Log10(i) <= right; i++)
                ticks.AddMinor(decade + Math.Log10(i));
        }

        return ticks;
    }
}
