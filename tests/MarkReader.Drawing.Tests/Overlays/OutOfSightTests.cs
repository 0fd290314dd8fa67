using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Overlays;

public sealed class OutOfSightTests
{
    [Fact]
    public void An_aim_point_outside_the_photo_gets_an_arrow_at_the_border_and_its_distance()
    {
        OverlayScene scene = Scenes.Aiming(ratio: 12);
        OverlayContent.Aiming aiming = (OverlayContent.Aiming)scene.Content;
        OverlayDrawing drawing = OverlayComposer.Compose(scene, OverlayView.Photo);
        PixelPoint near = scene.Projection.ToPhoto(aiming.Near.Centre.Point);
        PixelPoint aim = scene.Projection.ToPhoto(aiming.Aim.Point);
        Assert.False(drawing.Frame.Box.Holds(aim));

        PixelPoint tip = drawing.Primitives.OfType<OverlayArea>().Single(a => a.Part == "aim").Points[0];
        Assert.True(drawing.Frame.Box.Holds(tip));
        PixelBox box = drawing.Frame.Box;
        double toBorder = new[] { tip.X - box.Left, box.Right - tip.X, tip.Y - box.Top, box.Bottom - tip.Y }.Min();
        Assert.InRange(toBorder, 0, 6 * box.Width / 360);
        // Near, tip and aim lie on one straight line in this order.
        Assert.Equal(near.DistanceTo(aim), near.DistanceTo(tip) + tip.DistanceTo(aim), 1e-6);

        double distance = aiming.Near.Centre.Point.DistanceTo(aiming.Aim.Point);
        string[] label = [.. drawing.Texts().Where(t => t.Part == "aim-label").Select(t => t.Text)];
        Assert.Equal(["aim", FormattableString.Invariant($"{distance:0.00} mm from near"), "outside the picture"], label);
        Assert.Empty(drawing.Lines("aim-region"));
    }

    [Theory]
    [InlineData(40, 60, 80)]
    [InlineData(40, 60, 4000)]
    [InlineData(10, 75, 100000)]
    public void An_aim_point_behind_the_camera_is_pointed_at_the_right_way(double pixelsPerMm, double tilt, double v)
    {
        // The card lies upside down, its v runs down the photo and under the camera; plain projection would show the point in the upper part.
        PlaneView view = PlaneView.Of(Scenes.Photo, (pixelsPerMm, tilt, 180));
        MeasuredPoint aim = new(new(0, v), Covariance2.Isotropic(0.1));
        PixelPoint near = view.ToPhoto(new(0, 1));
        Assert.True(view.ToPhoto(new(0, 2)).Y > near.Y);
        Assert.True(view.ToPhoto(aim.Point).Y < near.Y);

        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(new OverlayContent.Aiming(Scenes.Mark(0, 1), Scenes.Mark(0, 0), aim), view), OverlayView.Photo);

        AssertFinite(drawing);
        PixelPoint tip = drawing.Primitives.OfType<OverlayArea>().Single(p => p.Part == "aim").Points[0];
        Assert.Equal(near.X, tip.X, 1e-6);
        Assert.InRange(tip.Y, 1150, 1200);
    }

    [Fact]
    public void A_distant_aim_point_before_the_horizon_is_shown_where_it_is_seen()
    {
        PlaneView view = PlaneView.Of(Scenes.Photo, (10, 75, 180));
        MeasuredPoint aim = new(new(0, -5000), Covariance2.Isotropic(0.1));
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(new OverlayContent.Aiming(Scenes.Mark(0, 1), Scenes.Mark(0, 2), aim), view), OverlayView.Photo);

        AssertFinite(drawing);
        PixelPoint[] symbol = [.. drawing.Lines("aim").SelectMany(l => l.Points)];
        Assert.NotEmpty(symbol);
        Assert.Equal(0, PixelBox.Around(symbol).Middle.DistanceTo(view.ToPhoto(aim.Point)), 20.0);
    }

    [Fact]
    public void A_card_that_is_partly_in_the_picture_is_drawn_without_what_cannot_be_seen()
    {
        PlaneView view = PlaneView.Of(Scenes.Photo, (40, 20, 0), (1500, 60));
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Aiming(0.5, view), OverlayView.Photo);

        AssertFinite(drawing);
        Assert.All(drawing.Texts(), t => Assert.True(drawing.Frame.Box.Holds(t.Box)));
        Assert.Contains(drawing.Texts(), t => t.Text == "near");
    }

    [Fact]
    public void Equal_marks_have_no_line()
    {
        OverlayContent.Aiming content = new(Scenes.Mark(1, 1), Scenes.Mark(1, 1), new(new(1, 1), Covariance2.Isotropic(0.1)));
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(content), OverlayView.Crop);

        AssertFinite(drawing);
        Assert.Empty(drawing.Lines("line"));
    }

    [Fact]
    public void An_uncertain_aim_point_does_not_break_the_drawing()
    {
        OverlayContent.Aiming content = new(Scenes.Mark(1, 1), Scenes.Mark(2, 2), new(new(0, 0), Covariance2.Isotropic(500)));
        OverlayDrawing drawing = OverlayComposer.Compose(Scenes.Of(content, PlaneView.Of(Scenes.Photo, (20, 60, 30))), OverlayView.Photo);

        AssertFinite(drawing);
        Assert.Equal(72, drawing.Lines("aim-region").Single().Points.Count);
    }

    private static void AssertFinite(OverlayDrawing drawing)
    {
        PixelPoint[] points = [.. drawing.Primitives.SelectMany(p => p.Points())];
        Assert.True(points.Length > 20);
        Assert.All(points, p => Assert.True(Math.Abs(p.X) < 1e5 && Math.Abs(p.Y) < 1e5, p.ToString()));
    }
}
