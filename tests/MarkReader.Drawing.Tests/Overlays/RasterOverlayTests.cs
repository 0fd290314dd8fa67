using MarkReader.Drawing.Overlays;
using MarkReader.Quantities;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Drawing.Tests.Overlays;

public sealed class RasterOverlayTests
{
    private static readonly Rgba32 s_ground = new(120, 140, 100, 255);

    [Fact]
    public void Symbols_have_their_colours_where_they_belong_and_the_rest_of_the_photo_stays()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Photo);

        using Image<Rgba32> image = Image.Load<Rgba32>(OverlayWriter.Write(drawing, OverlayFormat.Png, Flat(Scenes.Photo)));

        Assert.Equal((1600, 1200), (image.Width, image.Height));
        foreach ((string part, Colour colour) in new[] { ("near", OverlayColours.Near), ("far", OverlayColours.Far) })
        {
            OverlayLine outline = drawing.Lines(part).MaxBy(l => PixelBox.Around(l.Points).Width)!;
            PixelPoint[] middles = [.. outline.Points.Zip(outline.Points.Skip(1), (a, b) => new PixelPoint((a.X + b.X) / 2, (a.Y + b.Y) / 2))];
            Assert.True(middles.Length >= 3);
            int right = middles.Count(p => At(image, p) == colour);
            Assert.True(right > 0.6 * middles.Length, $"{part}: {right} of {middles.Length}"); // the others lie under another symbol
        }

        PixelBox touched = PixelBox.Around(drawing.Primitives.SelectMany(p => p is OverlayText t
            ? [new PixelPoint(t.Box.Left, t.Box.Top), new PixelPoint(t.Box.Right, t.Box.Bottom)]
            : p.Points())).Grown(10);
        int checkedPixels = 0;
        for (int y = 0; y < image.Height; y += 7)
        {
            for (int x = 0; x < image.Width; x += 7)
            {
                if (touched.Holds(new PixelPoint(x, y)))
                    continue;
                Assert.Equal(s_ground, image[x, y]);
                checkedPixels++;
            }
        }

        Assert.True(checkedPixels > 1000);
    }

    [Fact]
    public void A_line_through_pixel_centres_colours_just_those_pixels()
    {
        OverlayLine line = new("test", [new(10, 20), new(30, 20)], false, new(OverlayColours.Aim, 1, 0));
        OverlayDrawing drawing = new(new(40, 40), new(0, 0, 40, 40), new(0, 0, 40, 40), [line], "t", "d");

        using Image<Rgba32> image = Image.Load<Rgba32>(OverlayWriter.Write(drawing, OverlayFormat.Png, Flat(new(40, 40))));

        for (int x = 11; x < 30; x++)
        {
            Assert.Equal(OverlayColours.Aim, At(image, new(x, 20)));
            Assert.Equal(s_ground, image[x, 19]);
            Assert.Equal(s_ground, image[x, 21]);
        }
    }

    [Fact]
    public void A_crop_holds_the_frames_pixels()
    {
        byte[] pixels = Flat(new(40, 30)).Rgba;
        pixels[4 * ((12 * 40) + 15)] = 255;
        OverlayLine line = new("test", [new(18, 14), new(22, 14)], false, new(OverlayColours.Aim, 1, 0));
        OverlayDrawing drawing = new(new(40, 30), new(10, 8, 20, 12), new(10, 8, 20, 12), [line], "t", "d");

        using Image<Rgba32> image = Image.Load<Rgba32>(OverlayWriter.Write(drawing, OverlayFormat.Png, new(new(40, 30), pixels)));

        Assert.Equal((20, 12), (image.Width, image.Height));
        Assert.Equal(255, image[5, 4].R);
        Assert.Equal(120, image[6, 4].R);
        Assert.Equal(OverlayColours.Aim, At(image, new(10, 6)));
    }

    [Fact]
    public void Letters_are_written_in_light_on_a_dark_halo()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Crop);
        using Image<Rgba32> image = Image.Load<Rgba32>(OverlayWriter.Write(drawing, OverlayFormat.Png, Flat(Scenes.Photo)));
        OverlayText[] texts = drawing.Texts();
        Assert.NotEmpty(texts);
        foreach (OverlayText text in texts)
        {
            int letters = 0;
            int halo = 0;
            for (int y = (int)text.Box.Top; y <= text.Box.Bottom; y++)
            {
                for (int x = (int)text.Box.Left; x <= text.Box.Right; x++)
                {
                    Colour colour = At(image, new(x - drawing.Frame.Left, y - drawing.Frame.Top));
                    letters += colour == text.Style.Colour ? 1 : 0;
                    halo += colour == OverlayColours.Dark ? 1 : 0;
                }
            }

            double area = text.Box.Width * text.Box.Height;
            Assert.True(letters > 0.03 * area, $"'{text.Text}': {letters} of {area:0}");
            Assert.True(halo > 0.15 * area, $"'{text.Text}': {halo} of {area:0}");
        }
    }

    [Theory]
    [InlineData("a.png", "PNG")]
    [InlineData("a.jpg", "JPEG")]
    [InlineData("a.JPEG", "JPEG")]
    public void The_files_ending_chooses_the_format(string file, string expected)
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Photo);
        byte[] bytes = OverlayWriter.Write(drawing, OverlayFormat.OfFile(file).ValueOrThrow(), Flat(Scenes.Photo));

        using Image<Rgba32> image = Image.Load<Rgba32>(bytes, out IImageFormat format);

        Assert.Equal(expected, format.Name);
        Assert.Equal((1600, 1200), (image.Width, image.Height));
        Assert.Equal(s_ground.R, image[3, 3].R, 3.0);
    }

    [Fact]
    public void Another_ending_is_refused_with_what_to_do()
    {
        Assert.Same(OverlayFormat.Svg, OverlayFormat.OfFile("x.svg").ValueOrThrow());
        Assert.False(OverlayFormat.OfFile("x.gif").TryGet(out _, out Failure? failure));
        Assert.Equal("OVERLAY_FORMAT_UNKNOWN", failure.Code.Name);
        Assert.Contains(".png", failure.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_of_another_size_is_a_fault()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(), OverlayView.Photo);

        Assert.Throws<ArgumentException>(() => OverlayWriter.Write(drawing, OverlayFormat.Png, Flat(new(1200, 1600))));
        Assert.Throws<ArgumentException>(() => new PhotoRaster(new(10, 10), new byte[399]));
    }

    private static PhotoRaster Flat(PhotoSize size)
    {
        byte[] pixels = new byte[4 * size.Width * size.Height];
        for (int i = 0; i < pixels.Length; i += 4)
            (pixels[i], pixels[i + 1], pixels[i + 2], pixels[i + 3]) = (s_ground.R, s_ground.G, s_ground.B, 255);
        return new(size, pixels);
    }

    private static Colour At(Image<Rgba32> image, PixelPoint p)
    {
        Rgba32 pixel = image[(int)Math.Round(p.X), (int)Math.Round(p.Y)];
        return new(pixel.R, pixel.G, pixel.B);
    }
}
