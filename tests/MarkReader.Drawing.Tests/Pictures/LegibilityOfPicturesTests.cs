using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Pictures;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

public sealed class LegibilityOfPicturesTests
{
    public static TheoryData<int> Kinds => [.. Enumerable.Range(0, SomePictures.All.Count)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_picture_scales_has_letters_of_12_px_on_a_phone_and_no_word_leaves_it(int kind)
    {
        IPicture picture = SomePictures.All[kind];
        DrawnPicture drawn = DrawnPicture.Of(picture);
        Assert.Equal(FormattableString.Invariant($"0 0 320 {picture.Height}"), drawn.Root.Attribute("viewBox")!.Value);
        Assert.True(drawn.LeastLetters >= 12, $"letters of {drawn.LeastLetters} px");
        XElement[] texts = [.. drawn.Root.Descendants().Where(e => e.Name.LocalName == "text")];
        Assert.NotEmpty(texts);
        foreach (XElement text in texts)
        {
            (double left, double top) = Moved(text.Attribute("transform")?.Value);
            double x = left + Number(text, "x"), y = top + Number(text, "y"), length = Number(text, "textLength");
            Assert.True(x >= 0 && x + length <= picture.Width && y >= 10 && y <= picture.Height - 3, $"'{text.Value}' at {x}, {y}, {length} long");
        }
    }

    [Fact]
    public void No_words_stand_on_others_and_no_circle_goes_through_a_scale()
    {
        foreach (IPicture picture in SomePictures.All.Concat(SomePictures.Crowded))
        {
            DrawnPicture drawn = DrawnPicture.Of(picture);
            (string Text, PixelBox Box)[] words = [.. drawn.Root.Descendants().Where(e => e.Name.LocalName == "text").Select(e => (e.Value, Box(e)))];
            for (int i = 0; i < words.Length; i++)
            {
                Assert.All(words[(i + 1)..], other => Assert.False(Overlap(words[i].Box, other.Box), $"{picture.GetType().Name}: '{words[i].Text}' and '{other.Text}'"));
                Assert.True(words[i].Box.Right <= picture.Width, $"'{words[i].Text}' leaves the picture");
            }

            (PixelPoint Centre, double Radius)[] circles = [.. drawn.Root.Descendants().Where(e => e.Name.LocalName is "circle" or "ellipse").Select(Circle)];
            foreach ((string text, PixelBox box) in words.Where(w => picture is ApertureView))
                Assert.All(circles, c => Assert.False(Crosses(c, box), $"a circle goes through '{text}'"));
        }
    }

    // Marks as close to each other as a tenth of a millimetre.
    [Fact]
    public void Numbers_of_marks_that_lie_on_each_other_stay_apart_and_inside() =>
        Gen.Select(Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5]).Array[2, 9].Sample(places =>
        {
            TargetPlan plan = SomePictures.Target with { Marks = [.. places.Select((p, i) => SomePictures.Mark(i + 1, i % 2 == 0 ? MarkRole.Near : MarkRole.Far, p.Item1, p.Item2, i > 1))] };
            PixelBox[] numbers = [.. DrawnPicture.Of(plan).Root.Descendants().Where(e => e.Name.LocalName == "text" && int.TryParse(e.Value, out _)).Select(Box)];

            // Those of the grid stand outside.
            numbers = [.. numbers.Where(TargetPlan.Inside.Holds)];
            Assert.Equal(places.Length, numbers.Length);
            for (int i = 0; i < numbers.Length; i++)
                Assert.All(numbers[(i + 1)..], other => Assert.False(Overlap(numbers[i], other)));
        }, iter: 60);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_png_has_ink_on_white_and_the_size_that_is_asked_for(int kind)
    {
        IPicture picture = SomePictures.All[kind];
        GreyPicture png = GreyPicture.FromPng(PictureFile.Png(picture, 2));
        Assert.Equal((640, (int)(2 * picture.Height)), (png.Width, png.Height));
        double ink = Enumerable.Range(0, png.Height).Sum(y => png.RowInk(y, 0, png.Width)) / (png.Width * png.Height);
        Assert.InRange(ink, 0.01, 0.5);
        Assert.All(new[] { (0, 0), (png.Width - 1, 0), (0, png.Height - 1), (png.Width - 1, png.Height - 1) }, corner => Assert.Equal(255, png[corner.Item1, corner.Item2]));
    }

    [Fact]
    public void Words_and_numbers_are_those_of_the_caller()
    {
        NumberFormatInfo comma = new() { NumberDecimalSeparator = "," };
        PictureNumbers inches = new(
            l => l.Inches.ToString("0.000", comma) + " in", l => l.Inches.ToString("0.0000", comma) + " in", l => l.Inches.ToString("0.###", comma) + " in", n => n.ToString("0.##", comma), true);
        PictureStyle style = new(new() { ToGoAtFirst = "noch {0}, zuerst {1}", Grid = "Raster {0}", Clipped = "{0} % beschnitten" }, inches);

        IReadOnlyList<string> target = DrawnPicture.Of(SomePictures.Target with { Style = style }).Words;
        Assert.Contains("noch 0,094 in, zuerst 0,152 in", target);
        Assert.Contains("Raster 0,05 in", target);
        Assert.Contains("0,33 % beschnitten", DrawnPicture.Of(SomePictures.Aperture with { Style = style }).Words);
    }

    // From the baseline to the height of capitals.
    private static PixelBox Box(XElement text)
    {
        (double left, double top) = Moved(text.Attribute("transform")?.Value);
        double x = left + Number(text, "x"), y = top + Number(text, "y");
        return new(x, y - (0.72 * Number(text, "font-size")), x + Number(text, "textLength"), y);
    }

    private static bool Overlap(PixelBox a, PixelBox b) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    private static (PixelPoint Centre, double Radius) Circle(XElement e)
    {
        (double left, double top) = Moved(e.Attribute("transform")?.Value);
        return (new(left + Number(e, "cx"), top + Number(e, "cy")), Number(e, e.Attribute("r") is null ? "rx" : "r"));
    }

    private static bool Crosses((PixelPoint Centre, double Radius) circle, PixelBox box)
    {
        PixelPoint nearest = new(Math.Clamp(circle.Centre.X, box.Left, box.Right), Math.Clamp(circle.Centre.Y, box.Top, box.Bottom));
        double farthest = new[] { new PixelPoint(box.Left, box.Top), new(box.Right, box.Top), new(box.Left, box.Bottom), new(box.Right, box.Bottom) }.Max(circle.Centre.DistanceTo);
        return circle.Centre.DistanceTo(nearest) < circle.Radius && circle.Radius < farthest;
    }

    // "translate(10 68)"
    private static (double X, double Y) Moved(string? transform)
    {
        double[] by = transform is null ? [0, 0] : [.. transform["translate(".Length..^1].Split(' ', ',').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
        return (by[0], by.Length > 1 ? by[1] : 0);
    }

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
