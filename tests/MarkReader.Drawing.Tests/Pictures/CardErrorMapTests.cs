using System.Globalization;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

public sealed class CardErrorMapTests
{
    [Fact]
    public void Every_second_place_has_its_error_in_thousandths_of_a_millimetre_or_tenths_of_thousandths_of_an_inch()
    {
        CardErrorMap map = SomePictures.CardErrors with { Places = [.. SomePictures.CardErrors.Places.Select(p => p with { Error = new(0.0254, 0) })] };

        Assert.Equal(16, Texts(map).Count(t => t == "25"));
        PictureNumbers inches = PictureNumbers.Millimetres with { Inches = true, Round = l => (l.Millimetres / Length.MillimetresPerInch).ToString("0.####", CultureInfo.InvariantCulture).Replace('.', ',') + " in" };
        string[] texts = [.. Texts(map with { Style = PictureStyle.Default with { Numbers = inches } })];
        Assert.Equal(16, texts.Count(t => t == "10"));
        Assert.Contains("numbers: size of the error, 0,0001 in", texts);
    }

    [Fact]
    public void Places_over_the_limit_are_hatched_and_not_only_coloured()
    {
        CardErrorMap flat = SomePictures.CardErrors with { Places = [.. SomePictures.CardErrors.Places.Select(p => p with { Error = new(0.04, 0) })] };
        CardErrorMap one = flat with { Places = [.. flat.Places.Select((p, i) => i == 10 ? p with { Error = new(0.06, 0) } : p)] };

        Assert.Equal(3, Hatches(one) - Hatches(flat));
    }

    [Fact]
    public void Small_errors_are_not_drawn_as_if_they_mattered()
    {
        CardErrorMap tiny = SomePictures.CardErrors with { Places = [.. SomePictures.CardErrors.Places.Select(p => p with { Error = new(1e-6, 0) })] };

        Assert.InRange(tiny.Exaggeration * tiny.Limit.Millimetres / 4 * 10, 10, 40);
    }

    private static int Hatches(IPicture picture) => DrawnPicture.Of(picture).Root.Descendants().Count(e => e.Attribute("stroke")?.Value is "#C44E00" && e.Attribute("stroke-width")?.Value.StartsWith("0.8", StringComparison.Ordinal) == true);

    private static IEnumerable<string> Texts(IPicture picture) => DrawnPicture.Of(picture).Root.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value);
}
