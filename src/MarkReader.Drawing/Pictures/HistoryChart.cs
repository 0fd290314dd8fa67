using MarkReader.Drawing.Audits;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>A value with half the length of its 95 % interval, mm or mrad.</summary>
public sealed record HistoryBar(double Value, double Expanded);

/// <summary>A visit in a history.</summary>
/// <param name="Found">As found; null when it was not measured then.</param>
/// <param name="Left">As left; null likewise.</param>
public sealed record HistoryMoment(DateTimeOffset At, HistoryBar? Found, HistoryBar? Left);

/// <summary>One component of a quantity over the visits.</summary>
/// <param name="Title">Its name.</param>
/// <param name="Moments">In the order of time, at least one.</param>
public sealed record HistoryPanel(string Title, IReadOnlyList<HistoryMoment> Moments);

/// <summary>A quantity as it was found (open circles) and left (filled squares) over the dates of the visits, with 95 % bars and its tolerance.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Panels">One under the other, with one axis of time.</param>
/// <param name="Tolerance">On either side of zero, in the unit of the values.</param>
/// <param name="IsLength">mm; else mrad.</param>
public sealed record HistoryChart(string Title, IReadOnlyList<HistoryPanel> Panels, double Tolerance, bool IsLength) : IPicture
{
    private const int Head = 30, PanelHead = 20, PanelHeight = 118, Foot = 24, LeftSide = 58, RightSide = 12;
    private const double Inch = Quantities.Length.MillimetresPerInch;

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    /// <summary>Whether values lie on both sides of zero, as components do; a distance does not.</summary>
    public bool IsSigned { get; init; } = true;

    /// <summary>A date on the axis; at most twelve letters.</summary>
    public Func<DateTimeOffset, string> Date { get; init; } = d => d.UtcDateTime.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    public double Width => 320;

    public double Height => Head + KeyOf().Height + (Panels.Count * (PanelHead + PanelHeight)) + Foot;

    private double Unit => IsLength && Style.Numbers.Inches ? Inch : 1;

    private DateTimeOffset First => Panels.SelectMany(p => p.Moments).Min(m => m.At);

    private double Days => Math.Max(1, (Panels.SelectMany(p => p.Moments).Max(m => m.At) - First).TotalDays);

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        Key key = KeyOf();
        key.Draw(ink, 8, Head - 2);
        double top = Head + key.Height;
        foreach (HistoryPanel panel in Panels)
        {
            ink.Text(panel.Title, new(LeftSide, top + 15), Letter.Plain);
            top += PanelHead;
            Draw(canvas, panel, top);
            top += PanelHeight;
        }

        Dates(ink, top + 16);
    }

    private Key KeyOf() => new(Width - 16,
    [
        new((ink, at) => Open(ink, at), Style.Words.AsFound),
        new((ink, at) => ink.Area([new(at.X - 4, at.Y - 4), new(at.X + 4, at.Y - 4), new(at.X + 4, at.Y + 4), new(at.X - 4, at.Y + 4)], Ink.Vermilion), Style.Words.AsLeft),
        new((ink, at) => ink.Line(new(at.X, at.Y - 7), new(at.X, at.Y + 7), new(Ink.Black, 1.5)), Style.Words.Bars),
        new((ink, at) => ink.Line(new(at.X - 9, at.Y), new(at.X + 9, at.Y), new(Ink.Green, 1.5, Dashed: true)), Style.Words.Tolerance),
    ]);

    private static void Open(Ink ink, PixelPoint at)
    {
        ink.Disc(at, 4.5, Ink.White);
        ink.Circle(at, 4.5, new(Ink.Blue, 2));
    }

    private void Draw(SKCanvas canvas, HistoryPanel panel, double top)
    {
        PixelRect place = new(0, (float)Width, (float)(top + PanelHeight), (float)top);
        using Plot plot = Chart(panel);
        // The first time a plot draws itself twice, to settle its layout.
        using (SKNoDrawCanvas nothing = new((int)Width, (int)Height))
            plot.Render(nothing, place);
        canvas.Save();
        canvas.ClipRect(new SKRect(0, (float)top, (float)Width, (float)(top + PanelHeight)));
        plot.Render(canvas, place);
        canvas.Restore();
    }

    private Plot Chart(HistoryPanel panel)
    {
        Plot plot = ChartStyle.Panel("", new PixelPadding(LeftSide, RightSide, 4, 4));
        HistoryBar[] bars = [.. panel.Moments.SelectMany(m => new[] { m.Found, m.Left }).OfType<HistoryBar>()];
        double most = Math.Max(Tolerance, bars.Select(b => b.Value + b.Expanded).DefaultIfEmpty(0).Max()), least = Math.Min(IsSigned ? -Tolerance : 0, bars.Select(b => b.Value - b.Expanded).DefaultIfEmpty(0).Min());
        double edge = 0.06 * (most - least);
        (double left, double right) = Sides();
        plot.Axes.SetLimits(left, right, (least - edge) / Unit, (most + edge) / Unit);
        plot.Axes.Left.TickGenerator = Ticks((least - edge) / Unit, (most + edge) / Unit);
        plot.Axes.Left.TickLabelStyle.FontSize = (float)Ink.Letters;
        plot.Axes.Bottom.TickGenerator = new EmptyTickGenerator();
        plot.Grid.XAxisStyle.IsVisible = false;
        plot.Axes.Top.FrameLineStyle.Width = plot.Axes.Right.FrameLineStyle.Width = 0;
        foreach (double limit in IsSigned ? (double[])[-Tolerance, Tolerance] : [Tolerance])
            Line(plot, (left, limit), (right, limit), Color.FromSKColor(Ink.Green), 1.5f, LinePattern.Dashed);
        Connect(plot, panel);
        double aside = 3.5 * (right - left) / (Width - LeftSide - RightSide);
        foreach (HistoryMoment moment in panel.Moments)
        {
            double x = X(moment.At);
            Mark(plot, moment.Found, moment.Left is null ? x : x - aside, ChartStyle.Blue, MarkerShape.FilledCircle, isOpen: true);
            Mark(plot, moment.Left, moment.Found is null ? x : x + aside, Color.FromSKColor(Ink.Vermilion), MarkerShape.FilledSquare, isOpen: false);
        }

        return plot;
    }

    private (double Left, double Right) Sides() => (-0.05 * Days, 1.05 * Days);

    private double X(DateTimeOffset at) => (at - First).TotalDays;

    // From how it was left to how it was next found: what happened without anybody.
    private void Connect(Plot plot, HistoryPanel panel)
    {
        HistoryMoment? before = null;
        foreach (HistoryMoment moment in panel.Moments)
        {
            if (before?.Left is { } left && moment.Found is { } found)
                Line(plot, (X(before.At), left.Value), (X(moment.At), found.Value), ChartStyle.Grey, 1, LinePattern.Dotted);
            before = moment;
        }
    }

    private void Mark(Plot plot, HistoryBar? bar, double x, Color colour, MarkerShape shape, bool isOpen)
    {
        if (bar is null)
            return;
        Line(plot, (x, bar.Value - bar.Expanded), (x, bar.Value + bar.Expanded), colour, 1.5f, LinePattern.Solid);
        plot.Add.Marker(x, bar.Value / Unit, shape, isOpen ? 10 : 8, colour);
        if (isOpen)
            plot.Add.Marker(x, bar.Value / Unit, shape, 6, Colors.White);
    }

    private void Line(Plot plot, (double X, double Y) from, (double X, double Y) to, Color colour, float width, LinePattern pattern)
    {
        var line = plot.Add.Line(from.X, from.Y / Unit, to.X, to.Y / Unit);
        (line.Color, line.LineWidth, line.LinePattern, line.MarkerSize) = (colour, width, pattern, 0);
    }

    private NumericManual Ticks(double low, double high)
    {
        NumericManual ticks = new();
        double step = RoundStep.AtLeast((high - low) / 5);
        for (double i = Math.Ceiling(low / step); i * step <= high; i++)
            ticks.AddMajor(i * step, Text((i * step) + 0.0)); // no sign on zero
        return ticks;
    }

    private string Text(double value) => !IsLength ? Style.Numbers.Number(value) : value == 0 ? "0" : Style.Numbers.Round(Style.Numbers.Inches ? Length.FromInches(value) : Length.FromMillimetres(value));

    // Of the first and the last visit.
    private void Dates(Ink ink, double y)
    {
        DateTimeOffset last = Panels.SelectMany(p => p.Moments).Max(m => m.At);
        double right = Width - RightSide;
        ink.Text(Date(First), new(LeftSide, y), Letter.Plain);
        if (Date(last) != Date(First))
            ink.Text(Date(last), new(right, y), new(Ink.Black, Align: SKTextAlign.Right));
    }
}
