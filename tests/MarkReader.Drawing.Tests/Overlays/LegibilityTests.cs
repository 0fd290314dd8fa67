using CsCheck;
using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Overlays;

public sealed class LegibilityTests
{
    private const double PhoneWidth = 360; // CSS px
    private static readonly string[] s_names = ["near", "far", "aim"];

    [Theory]
    [InlineData(1600, 1200, OverlayView.Photo)]
    [InlineData(1600, 1200, OverlayView.Crop)]
    [InlineData(3024, 4032, OverlayView.Photo)]
    [InlineData(3024, 4032, OverlayView.Crop)]
    public void On_a_phone_letters_are_at_least_eleven_pixels_high_and_lines_one_and_a_half_wide(int width, int height, OverlayView view)
    {
        PhotoSize photo = new(width, height);
        OverlayScene scene = Scenes.Aiming() with { Photo = photo, Projection = PlaneView.Of(photo, Scenes.Pose) };
        OverlayDrawing drawing = OverlayComposer.Compose(scene, view);
        double css = drawing.Frame.Width / PhoneWidth;

        Assert.True(drawing.Texts().Length >= 6);
        Assert.All(drawing.Texts(), t => Assert.True(t.Style.Size / css >= 11, $"{t.Text}: {t.Style.Size / css} px"));
        OverlayLine[] lines = [.. drawing.Primitives.OfType<OverlayLine>()];
        Assert.All(lines, l => Assert.True((l.Style.Width + (2 * l.Style.Casing)) / css >= 1.5, $"{l.Part}: {l.Style.Width / css} px"));
        Assert.All(lines.Where(l => l.Part is "line" or "scale" or "zone"), l => Assert.True(l.Style.Width / css >= 1.499));
    }

    [Fact]
    public void Labels_stay_in_the_picture_and_apart_wherever_the_marks_are()
    {
        Gen<double> place = Gen.Double[-11, 11];
        Gen<(double, double, double)> pose = Gen.Select(Gen.Double[6, 40], Gen.Double[0, 55], Gen.Double[-180, 180]);
        Gen.Select(pose, Gen.Select(place, place), Gen.Select(place, place), Gen.Double[0.05, 4], Gen.Bool).Sample(
            (view, near, far, ratio, crop) =>
            {
                CardPoint n = new(near.Item1, near.Item2);
                CardPoint f = new(far.Item1, far.Item2);
                MeasuredPoint aim = new(n - (ratio * (f - n)), Covariance2.Isotropic(0.05));
                OverlayScene scene = Scenes.Of(new OverlayContent.Aiming(Scenes.Mark(n.U, n.V), Scenes.Mark(f.U, f.V), aim), PlaneView.Of(Scenes.Photo, view));
                OverlayDrawing drawing = OverlayComposer.Compose(scene, crop ? OverlayView.Crop : OverlayView.Photo);

                OverlayText[] texts = drawing.Texts();
                foreach (string name in s_names)
                    Assert.Single(texts, t => t.Text == name);
                AssertInsideAndApart(drawing);
            },
            iter: 300);
    }

    // As close as the two marks of a nearly aligned leg, in any place of the card and seen from any side.
    [Fact]
    public void Labels_of_marks_that_touch_each_other_cover_none_of_them() =>
        Gen.Select(Gen.Select(Gen.Double[-11, 11], Gen.Double[-11, 11]), Gen.Select(Gen.Double[0.3, 2], Gen.Double[0, 360]), Gen.Double[0.05, 2], Gen.Select(Gen.Double[6, 60], Gen.Double[0, 55], Gen.Double[-180, 180]), Gen.Bool).Sample(
            (place, apart, ratio, view, crop) =>
            {
                (double sin, double cos) = Math.SinCos(apart.Item2 * Math.PI / 180);
                CardPoint near = new(place.Item1, place.Item2);
                CardVector way = new(apart.Item1 * cos, apart.Item1 * sin);
                OverlayContent.Aiming content = new(Scenes.Mark(near.U, near.V), Scenes.Mark((near + way).U, (near + way).V), new(near - (ratio * way), Covariance2.Isotropic(0.05)));
                OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(content, PlaneView.Of(Scenes.Photo, view)), crop ? OverlayView.Crop : OverlayView.Photo);

                PixelPoint[] symbols = [.. s_names.SelectMany(drawing.Lines).SelectMany(l => l.Points)];
                Assert.All(drawing.Texts(), t => Assert.DoesNotContain(symbols, t.Box.Holds));
                AssertInsideAndApart(drawing);
            },
            iter: 300);

    [Fact]
    public void Many_marks_get_numbers_that_stay_apart()
    {
        DrawnMark[] marks = [.. Enumerable.Range(0, 25).Select(i => Scenes.Mark((4.4 * (i % 5)) - 8.8, (4.4 * (i / 5)) - 8.8, 1.5))];
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(new OverlayContent.Marks(marks)), OverlayView.Crop);

        Assert.Equal(25, drawing.Texts().Count(t => t.Part == "mark-label"));
        Assert.Equal(Enumerable.Range(1, 25).Select(i => $"{i}"), drawing.Texts().Where(t => t.Part == "mark-label").Select(t => t.Text));
        AssertInsideAndApart(drawing);
    }

    [Fact]
    public void A_few_marks_get_their_places_too()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(new OverlayContent.Marks([Scenes.Mark(-3.42, 1.1), Scenes.Mark(4, -2.005)])), OverlayView.Crop);

        Assert.Equal(["1", "\u22123.42, 1.10 mm", "2", "4.00, \u22122.00 mm"], drawing.Texts().Where(t => t.Part == "mark-label").Select(t => t.Text));
    }

    [Fact]
    public void Labels_do_not_cover_symbols_when_there_is_room()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Crop);
        PixelPoint[] symbols = [.. s_names.SelectMany(drawing.Lines).SelectMany(l => l.Points)];

        Assert.NotEmpty(symbols);
        Assert.All(drawing.Texts(), t => Assert.DoesNotContain(symbols, t.Box.Holds));
    }

    private static void AssertInsideAndApart(OverlayDrawing drawing)
    {
        OverlayText[] texts = drawing.Texts();
        for (int i = 0; i < texts.Length; i++)
        {
            Assert.True(drawing.Frame.Box.Holds(texts[i].Box), $"'{texts[i].Text}' leaves the picture");
            for (int j = 0; j < i; j++)
            {
                // The lines of one label share their halos.
                double halo = texts[i].Part == texts[j].Part && Math.Abs(texts[i].Start.Y - texts[j].Start.Y) > 1 ? 2 * texts[i].Style.Halo : 0;
                PixelBox shrunk = new(texts[j].Box.Left, texts[j].Box.Top + halo, texts[j].Box.Right, texts[j].Box.Bottom - halo);
                Assert.False(texts[i].Box.Meets(shrunk), $"'{texts[i].Text}' over '{texts[j].Text}'");
            }
        }
    }
}
