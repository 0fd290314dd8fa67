using System.Globalization;
using System.Xml.Linq;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

/// <summary>The beam in its opening and the bars of a budget have the sizes of their numbers.</summary>
public sealed class SharesTests
{
    [Fact]
    public void Opening_and_beam_are_circles_of_their_diameters_at_their_offset()
    {
        ApertureView view = SomePictures.Aperture;
        (double X, double Y, double R)[] circles = [.. DrawnPicture.Of(view).Root.Descendants().Where(e => e.Name.LocalName is "ellipse" or "circle").Select(Circle)];
        CardPlane whole = view.Whole;
        Assert.Contains(circles, c => Near(c, whole.At, 9 * whole.PixelsPerMm));
        Assert.Contains(circles, c => Near(c, whole.Place(new(4, 0)), 3.5 * whole.PixelsPerMm));
        Assert.Contains(circles, c => Near(c, view.Enlarged.Place(new(4, 0)), 3));
    }

    [Theory]
    [InlineData(0.0033301, "0.33 % of the power clipped")]
    [InlineData(0.6035, "60.4 % of the power clipped")]
    [InlineData(0.00001, "less than 0.01 % of the power clipped")]
    public void What_is_clipped_is_told(double part, string words) => Assert.Contains(words, DrawnPicture.Of(SomePictures.Aperture with { Clipped = part }).Words);

    [Fact]
    public void Bars_are_as_long_as_their_values_and_tell_value_and_share()
    {
        DrawnPicture drawn = DrawnPicture.Of(SomePictures.Bars);
        double[] lengths = [.. drawn.Outlines("#0072B2", filled: true).Select(Length).Concat(Rectangles(drawn)).Where(l => l > 1).Order()];
        Assert.Equal(2, lengths.Length);
        Assert.Equal(3, lengths[1] / lengths[0], 0.02);
        Assert.All(["Marks", "0.060 mm, 90 %", "Path lengths", "0.020 mm, 10 %", "all together 0.063 mm"], w => Assert.Contains(w, drawn.Words));
    }

    private static double Length(IReadOnlyList<PixelPoint> outline) => outline.Max(p => p.X) - outline.Min(p => p.X);

    private static IEnumerable<double> Rectangles(DrawnPicture drawn) =>
        drawn.Root.Descendants().Where(e => e.Name.LocalName == "rect" && e.Attribute("fill")?.Value == "#0072B2").Select(e => Number(e, "width"));

    private static (double X, double Y, double R) Circle(XElement e) => (Number(e, "cx"), Number(e, "cy"), Number(e, e.Name.LocalName == "circle" ? "r" : "rx"));

    private static bool Near((double X, double Y, double R) circle, PixelPoint at, double radius) =>
        Math.Abs(circle.X - at.X) < 0.02 && Math.Abs(circle.Y - at.Y) < 0.02 && Math.Abs(circle.R - radius) < 0.02;

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
