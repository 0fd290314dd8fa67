using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Overlays;

public sealed class CropTests
{
    [Theory]
    [InlineData(6, 0, 0, 800, 600)]
    [InlineData(12, 40, 75, 500, 800)]
    [InlineData(14, 30, 200, 1300, 300)]
    public void A_small_card_is_cropped_to_its_zone_and_the_aim_point_with_a_margin(double pixelsPerMm, double tilt, double turn, double x, double y)
    {
        PlaneView view = PlaneView.Of(Scenes.Photo, (pixelsPerMm, tilt, turn), (x, y));
        OverlayScene scene = Scenes.Aiming(2, view);
        OverlayDrawing drawing = OverlayComposer.Compose(scene, OverlayView.Crop);

        Assert.Equal(drawing.Crop, drawing.Frame);
        Assert.True(PixelFrame.Whole(Scenes.Photo).Box.Holds(drawing.Crop.Box));
        Assert.True(drawing.Crop.Width < Scenes.Photo.Width / 2);
        const double half = Scenes.Zone / 2;
        CardPoint[] inside = [new(-half, -half), new(half, -half), new(half, half), new(-half, half), ((OverlayContent.Aiming)scene.Content).Aim.Point];
        Assert.All(inside, p => Assert.True(drawing.Crop.Box.Grown(-0.05 * drawing.Crop.Width).Holds(view.ToPhoto(p))));
        Assert.InRange((double)drawing.Crop.Width / drawing.Crop.Height, 0.79, 1.51);
    }

    [Fact]
    public void A_card_that_fills_the_photo_is_shown_in_the_whole_photo()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(0.5, PlaneView.Of(Scenes.Photo, (50, 0, 0))), OverlayView.Crop);

        Assert.Equal(PixelFrame.Whole(Scenes.Photo), drawing.Crop);
    }

    [Fact]
    public void The_view_of_the_photo_keeps_the_crop_as_a_suggestion()
    {
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(0.5, PlaneView.Of(Scenes.Photo, (10, 0, 0))), OverlayView.Photo);

        Assert.Equal(PixelFrame.Whole(Scenes.Photo), drawing.Frame);
        Assert.True(drawing.Crop.Width < drawing.Frame.Width);
    }
}
