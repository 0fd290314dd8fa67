using MarkReader.Drawing.Fonts;
using ScottPlot;
using SkiaSharp;

namespace MarkReader.Drawing.Audits;

/// <summary>Colours (Okabe and Ito, as in the overlays, the darker ones for a white ground), letters and axes of the panels.</summary>
internal static class ChartStyle
{
    public const float Letters = 12;
    public const float SmallLetters = 11;

    private const string Family = "MarkReader";

    private static readonly Lazy<bool> s_fonts = new(() =>
    {
        ScottPlot.Fonts.FontResolvers.Insert(0, new Resolver());
        return true;
    });

    public static Color Blue { get; } = Color.FromHex("#0072B2");

    public static Color Vermilion { get; } = Color.FromHex("#D55E00");

    public static Color Black { get; } = Color.FromHex("#101010");

    public static Color Grey { get; } = Color.FromHex("#6B6B6B");

    public static Color GridLine { get; } = Color.FromHex("#DEDEDE");

    public static Color Band { get; } = Color.FromHex("#CDE7DC");

    public static Color Stripe { get; } = Color.FromHex("#000000").WithAlpha(0.04);

    /// <summary>An empty panel with our letters, its data area at fixed places.</summary>
    public static Plot Panel(string bottom, PixelPadding padding)
    {
        _ = s_fonts.Value;
        Plot plot = new();
        plot.Font.Set(Family);
        plot.FigureBackground.Color = Colors.White;
        plot.Axes.Color(Black);
        plot.Axes.Bottom.Label.Text = bottom;
        plot.Layout.Fixed(padding);
        plot.Grid.MajorLineColor = GridLine;
        plot.Grid.MajorLineWidth = 1;
        foreach (IAxis axis in plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontSize = SmallLetters;
            axis.TickLabelStyle.FontName = Family;
            axis.Label.FontSize = Letters;
            axis.Label.Bold = false;
            axis.FrameLineStyle.Width = 1;
            axis.MajorTickStyle.Length = 4;
            axis.MinorTickStyle.Length = 2;
        }

        return plot;
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) => fontName == Family ? Faces.Regular : null;

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => fontName == Family ? Faces.Regular : null;
    }
}
