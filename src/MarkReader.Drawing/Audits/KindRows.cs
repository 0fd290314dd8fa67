using ScottPlot;
using ScottPlot.TickGenerators;

namespace MarkReader.Drawing.Audits;

/// <summary>The rows that the panels of errors and coverage share: kinds from the top, all of them below.</summary>
internal sealed class KindRows
{
    public KindRows(AuditChart chart) => All = [.. chart.Kinds, chart.Overall];

    public IReadOnlyList<KindRow> All { get; }

    /// <summary>Height of a row, px.</summary>
    public int Height => All.Count > 14 ? 17 : 24;

    /// <summary>Where a row stands on the vertical axis.</summary>
    public double Place(int row) => All.Count - 1 - row;

    /// <summary>Stripes, limits and the line above the row for all.</summary>
    public void Prepare(Plot plot, double left, double right)
    {
        plot.Axes.SetLimits(left, right, -0.5, All.Count - 0.5);
        (plot.Axes.Right.Min, plot.Axes.Right.Max) = (-0.5, All.Count - 0.5);
        plot.Grid.YAxisStyle.IsVisible = false;
        for (int row = 0; row < All.Count; row += 2)
        {
            var stripe = plot.Add.Rectangle(left, right, Place(row) - 0.5, Place(row) + 0.5);
            stripe.FillColor = ChartStyle.Stripe;
            stripe.LineWidth = 0;
        }

        var above = plot.Add.HorizontalLine(0.5);
        (above.LineColor, above.LineWidth) = (ChartStyle.Grey, 1);
        plot.Axes.Right.MajorTickStyle.Length = 0;
        plot.Axes.Left.MajorTickStyle.Length = 0;
    }

    /// <summary>A word for each row.</summary>
    public NumericManual Words(Func<KindRow, string> word)
    {
        NumericManual ticks = new();
        for (int row = 0; row < All.Count; row++)
            ticks.AddMajor(Place(row), word(All[row]));
        return ticks;
    }
}
