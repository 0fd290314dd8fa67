using System.Text;
using System.Xml.Linq;
using MarkReader.Drawing.Overlays;

namespace MarkReader.Drawing.Tests.Overlays;

public sealed class SvgOverlayTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void The_view_box_is_the_frame_so_that_it_fits_over_the_photo()
    {
        OverlayDrawing whole = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Photo);
        OverlayDrawing crop = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Crop);

        Assert.Equal("-0.5 -0.5 1600 1200", Read(whole).Attribute("viewBox")!.Value);
        PixelFrame f = crop.Frame;
        Assert.Equal(FormattableString.Invariant($"{f.Left - 0.5} {f.Top - 0.5} {f.Width} {f.Height}"), Read(crop).Attribute("viewBox")!.Value);
    }

    [Fact]
    public void The_numbers_can_be_read_without_seeing_the_picture()
    {
        XElement root = Read(OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Crop));

        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal("Near mark, far mark and aim point", root.Element(s_svg + "title")!.Value);
        string text = root.Element(s_svg + "desc")!.Value;
        Assert.Contains("Near mark at u 1.50 mm, v \u22121.00 mm, far mark at u 7.00 mm, v 4.00 mm", text, StringComparison.Ordinal);
        Assert.Contains("Aim point at u \u22122.90 mm, v \u22125.00 mm, 5.95 mm from the near mark", text, StringComparison.Ordinal);
        Assert.Contains("95 %", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_primitive_is_drawn_once_in_order_lines_with_their_casing_below()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming() with { ShowAxes = true }, OverlayView.Crop);
        string[] expected = [.. drawing.Primitives.SelectMany(p => p is OverlayLine ? [p.Part, p.Part] : new[] { p.Part })];

        XElement[] drawn = [.. Read(drawing).Elements().Where(e => e.Attribute("data-part") is not null)];

        Assert.Equal(expected, drawn.Select(e => e.Attribute("data-part")!.Value));
        Assert.Equal(drawing.Texts().Select(t => t.Text), drawn.Where(e => e.Name == s_svg + "text").Select(e => e.Value));
    }

    [Fact]
    public void Text_with_signs_of_markup_stays_text()
    {
        OverlayText text = new("a<b", "1 < 2 & \"3\"", new(5, 5), new(OverlayColours.Plain, 4, false, 1), 20);
        OverlayDrawing drawing = new(new(10, 10), new(0, 0, 10, 10), new(0, 0, 10, 10), [text], "<t>", "&");

        XElement root = Read(drawing);

        Assert.Equal("1 < 2 & \"3\"", root.Element(s_svg + "text")!.Value);
        Assert.Equal("<t>", root.Element(s_svg + "title")!.Value);
    }

    private static XElement Read(OverlayDrawing drawing) => XDocument.Parse(Encoding.UTF8.GetString(SvgOverlay.Write(drawing))).Root!;
}
