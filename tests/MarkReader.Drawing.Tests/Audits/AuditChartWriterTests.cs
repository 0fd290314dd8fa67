using System.Text;
using System.Xml.Linq;
using MarkReader.Drawing.Audits;
using MarkReader.Quantities;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Drawing.Tests.Audits;

public sealed class AuditChartWriterTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Theory]
    [InlineData(1)]
    [InlineData(35)]
    public void The_drawing_is_1000_wide_and_names_every_kind_and_its_count(int kinds)
    {
        AuditChart chart = Chart(kinds, 5);
        XElement svg = Svg(chart);
        Assert.Equal("1000", svg.Attribute("width")!.Value);
        string[] words = Words(svg);
        Assert.All(chart.Kinds.Append(chart.Overall), row => Assert.Contains(row.Name, words));
        Assert.All(chart.Kinds.Append(chart.Overall), row => Assert.Contains(row.Count, words));
        Assert.All(chart.Figures, figure => Assert.Contains(figure.Value, words));
        Assert.Contains(chart.Title, words);
    }

    [Fact]
    public void Lengths_and_squared_distances_are_labelled_with_their_unit()
    {
        string[] words = Words(Svg(Chart(3, 5)));
        Assert.Contains("µm, logarithmic (1000 µm = 1 mm)", words);
        Assert.Contains("% of found marks", words);
        Assert.Contains("expected d² (χ², 2 degrees of freedom)", words);
    }

    [Fact]
    public void Every_mark_is_a_dot_in_its_row_in_the_row_for_all_and_among_the_distances()
    {
        XElement svg = Svg(Chart(4, 6));
        // One more in the key.
        Assert.Equal((3 * 24) + 1, svg.Descendants(s_svg + "ellipse").Count() + svg.Descendants(s_svg + "circle").Count());
    }

    [Fact]
    public void The_png_has_two_pixels_to_a_unit_and_blue_vermilion_and_white_in_it()
    {
        using Image<Rgb24> image = Image.Load<Rgb24>(AuditChartWriter.Write(Chart(35, 5), ChartFormat.Png));
        Assert.Equal(2000, image.Width);
        int blue = Count(image, new(0x00, 0x72, 0xB2)), vermilion = Count(image, new(0xD5, 0x5E, 0x00)), white = Count(image, new(255, 255, 255));
        Assert.InRange(blue, 5_000, 200_000);
        Assert.InRange(vermilion, 2_000, 100_000);
        Assert.True(white > image.Width * image.Height / 2, $"{white} white pixels");
    }

    [Fact]
    public void An_audit_without_any_mark_is_drawn_with_empty_rows()
    {
        KindRow none = new("noMark", "0 of 0", [], null, null, null);
        XElement svg = Svg(new("Audit", [none], none with { Name = "all" }, new([], []), []));
        Assert.Contains("noMark", Words(svg));
    }

    [Fact]
    public void Errors_of_nothing_and_distances_without_bound_stay_inside_the_drawing()
    {
        KindRow row = new("odd", "2 of 2", [0, 1], 0.7, 0, new(0, 0, 0.84));
        XElement svg = Svg(new("Audit", [row], row with { Name = "all" }, new([(0.5, 0), (2.5, double.PositiveInfinity)], []), []));
        Assert.Contains("at the upper border: d² over 144", Words(svg));
        Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.SVG")]
    [InlineData("b.png")]
    public void Formats_go_by_the_ending_of_the_name(string name) => Assert.True(ChartFormat.OfFile(name).TryGet(out _, out _));

    [Fact]
    public void Any_other_ending_is_refused()
    {
        Assert.False(ChartFormat.OfFile("plot.pdf").TryGet(out _, out Failure? failure));
        Assert.Equal("PLOT_FORMAT_UNKNOWN", failure.Code.Name);
    }

    private static AuditChart Chart(int kinds, int marks)
    {
        KindRow[] rows = [.. Enumerable.Range(0, kinds).Select(k => new KindRow(
            $"kind{k}", $"{marks} of {marks + k}", [.. Enumerable.Range(1, marks).Select(i => 0.001 * i * (k + 1))], 0.003 * (k + 1), 0.004, k % 3 == 2 ? new(0.5, 0.4, 0.6) : new(0.95, 0.9, 0.99)))];
        int n = kinds * marks;
        (double, double)[] points = [.. Enumerable.Range(0, n).Select(i => (-2 * Math.Log(1 - ((i + 0.5) / n)), -2.2 * Math.Log(1 - ((i + 0.5) / n))))];
        return new(
            "Audit of a test", rows, new("all", $"{n} of {n}", [.. rows.SelectMany(r => r.Errors)], 0.05, 0.04, new(0.94, 0.92, 0.96)),
            new(points, [.. points.Select(p => (p.Item1, 0.8 * p.Item1, 1.3 * p.Item1))]), [new("found", "99.5 %"), new("false", "0.1 %")]);
    }

    private static XElement Svg(AuditChart chart) => XElement.Parse(Encoding.UTF8.GetString(AuditChartWriter.Write(chart, ChartFormat.Svg)));

    private static string[] Words(XElement svg) => [.. svg.Descendants(s_svg + "text").Select(t => t.Value.Trim())];

    private static int Count(Image<Rgb24> image, Rgb24 colour)
    {
        int count = 0;
        for (int y = 0; y < image.Height; y++)
        {
            for (int x = 0; x < image.Width; x++)
                count += image[x, y] == colour ? 1 : 0;
        }

        return count;
    }
}
