using System.Globalization;
using MarkReader.Drawing.Pictures;

namespace MarkReader.Drawing.Tests.Pictures;

public sealed class HistoryChartTests
{
    private static readonly DateTimeOffset s_begun = new(2026, 3, 4, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Values_bars_and_tolerance_have_one_scale_and_dates_theirs()
    {
        HistoryChart chart = new("", [new("u", [Found(0, 0, 0.2), Found(30, 0.5, 0.4), Found(120, -0.5, 0.2)])], 1, IsLength: false);
        DrawnPicture drawn = DrawnPicture.Of(chart);
        (double X, double Middle, double Height)[] bars = [.. drawn.Outlines("#0072B2").Where(o => o.Count == 2 && Math.Abs(o[0].X - o[1].X) < 0.01).Select(o => (o[0].X, (o[0].Y + o[1].Y) / 2, Math.Abs(o[0].Y - o[1].Y)))];
        Assert.Equal(3, bars.Length);
        double perUnit = bars[0].Height / 0.4;
        Assert.Equal(2 * bars[0].Height, bars[1].Height, 0.05);
        Assert.Equal(0.5 * perUnit, bars[0].Middle - bars[1].Middle, 0.05);
        Assert.Equal(-0.5 * perUnit, bars[0].Middle - bars[2].Middle, 0.05);
        Assert.Equal(4, (bars[2].X - bars[0].X) / (bars[1].X - bars[0].X), 0.01);
        Assert.Contains("2026-03-04", drawn.Words);
        Assert.Contains("2026-07-02", drawn.Words);

        // The dashes of a line are one path of filled boxes.
        double[] limits = [.. drawn.Outlines("#007A5A", filled: true).Where(o => o.Max(p => p.X) - o.Min(p => p.X) > 150).Select(o => o.Average(p => p.Y)).Order()];
        Assert.Equal(2, limits.Length);
        Assert.Equal(bars[0].Middle - perUnit, limits[0], 0.05);
        Assert.Equal(bars[0].Middle + perUnit, limits[1], 0.05);

        if (Environment.GetEnvironmentVariable("MARKREADER_SCREENS") is { Length: > 0 } folder)
            File.WriteAllBytes(Path.Combine(folder, "history-chart.png"), PictureFile.Png(SomePictures.History, 3));
    }

    [Fact]
    public void Lengths_are_in_the_readers_unit_and_slopes_have_none()
    {
        PictureNumbers inches = PictureNumbers.Millimetres with { Inches = true, Round = l => l.Inches.ToString("0.###", CultureInfo.InvariantCulture) + " in" };
        HistoryChart chart = new("", [new("u", [Found(0, 0, 0.1)])], 1, IsLength: true);
        Assert.Contains("0.5 mm", DrawnPicture.Of(chart).Words);
        Assert.Contains("0.02 in", DrawnPicture.Of(chart with { Style = new(new(), inches) }).Words);
        Assert.Contains("0.5", DrawnPicture.Of(chart with { IsLength = false }).Words);
    }

    private static HistoryMoment Found(int day, double value, double expanded) => new(s_begun.AddDays(day), new(value, expanded), null);
}
