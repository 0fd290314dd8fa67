using System.Globalization;
using MarkReader.Drawing.Texts;
using MarkReader.Quantities;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace MarkReader.Drawing.Audits;

/// <summary>Sorted squared Mahalanobis distances against the values of correct statements (quantile-quantile), on axes linear in the distance.</summary>
internal static class DistancePanel
{
    /// <summary>Beyond this distance a point is drawn at the upper border.</summary>
    private const double Most = 12;

    private static readonly double s_region = Math.Sqrt(Covariance2.ChiSquare95);

    public static Plot Of(DistanceCurve curve, PixelPadding padding)
    {
        Plot plot = ChartStyle.Panel(DrawingTexts.Get("distancePanel.expectedDDegreesFreedom"), padding);
        plot.Axes.Left.Label.Text = DrawingTexts.Get("distancePanel.observedD");
        double right = Math.Max(3, 1.06 * Math.Sqrt(curve.Points.Select(p => p.Expected).DefaultIfEmpty(0).Max()));
        double top = Math.Clamp(1.06 * Math.Sqrt(curve.Points.Select(p => p.Observed).DefaultIfEmpty(0).Max()), right, Most);
        plot.Axes.SetLimits(0, right, 0, top);
        plot.Axes.Bottom.TickGenerator = Ticks(right);
        plot.Axes.Left.TickGenerator = Ticks(top);
        if (curve.Band.Count > 1)
        {
            double[] x = [.. curve.Band.Select(b => Math.Sqrt(b.Expected))];
            var band = plot.Add.FillY(x, [.. curve.Band.Select(b => Math.Sqrt(b.Low))], [.. curve.Band.Select(b => Math.Min(top, Math.Sqrt(b.High)))]);
            (band.FillColor, band.LineWidth, band.MarkerSize) = (ChartStyle.Band, 0, 0);
        }

        var equal = plot.Add.Line(0, 0, right, right);
        (equal.LineColor, equal.LineWidth) = (ChartStyle.Black, 1);
        Border(plot, s_region, top, DrawingTexts.Get("distancePanel.region"));
        Border(plot, 3 * s_region, top, DrawingTexts.Get("distancePanel.threeTimesRegion"));
        Points(plot, [.. curve.Points.Where(p => p.Observed <= 9 * Covariance2.ChiSquare95)], top, far: false);
        Points(plot, [.. curve.Points.Where(p => p.Observed > 9 * Covariance2.ChiSquare95)], top, far: true);
        if (curve.Points.Any(p => p.Observed > top * top))
            Words(plot, DrawingTexts.Say("distancePanel.atUpperBorderDOver", top * top), 0.985 * top, Alignment.UpperLeft);
        return plot;
    }

    private static void Border(Plot plot, double distance, double top, string words)
    {
        if (distance >= top)
            return;
        var line = plot.Add.HorizontalLine(distance);
        (line.LineColor, line.LineWidth, line.LinePattern) = (ChartStyle.Grey, 1, LinePattern.Dashed);
        Words(plot, words, distance, Alignment.LowerLeft);
    }

    private static void Words(Plot plot, string words, double y, Alignment alignment)
    {
        var text = plot.Add.Text(words, 0.08, y);
        (text.LabelFontSize, text.LabelFontColor, text.LabelAlignment) = (ChartStyle.SmallLetters, ChartStyle.Grey, alignment);
    }

    private static void Points(Plot plot, (double Expected, double Observed)[] points, double top, bool far)
    {
        if (points.Length == 0)
            return;
        double[] x = [.. points.Select(p => Math.Sqrt(p.Expected))];
        double[] y = [.. points.Select(p => Math.Min(0.985 * top, Math.Sqrt(p.Observed)))];
        _ = far
            ? plot.Add.Markers(x, y, MarkerShape.FilledTriangleUp, 9, ChartStyle.Vermilion)
            : plot.Add.Markers(x, y, MarkerShape.FilledCircle, 4.5f, ChartStyle.Blue);
    }

    private static NumericManual Ticks(double most)
    {
        NumericManual ticks = new();
        foreach (int squared in (int[])[0, 1, 2, 4, 6, 9, 12, 16, 20, 30, 40, 60, 80, 100, 140])
        {
            if (Math.Sqrt(squared) <= most)
                ticks.AddMajor(Math.Sqrt(squared), squared.ToString(CultureInfo.InvariantCulture));
        }

        return ticks;
    }
}
