using CsCheck;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.Models;

public sealed class CameraModelTests
{
    private static readonly CameraModel s_camera = new(new(4000, 3000), 3100, 3110, new(2010, 1490), new(-0.08, 0.02, 0.001, 0.0007, -0.0004));

    private static readonly Gen<(double X, double Y)> s_directions = Gen.Select(Gen.Double[-0.6, 0.6], Gen.Double[-0.45, 0.45]);

    [Fact]
    public void The_ideal_place_is_shown_where_it_was_seen() => s_directions.Sample(d =>
    {
        PixelPoint seen = s_camera.ToPhoto(d.X, d.Y);
        return s_camera.Shown(s_camera.Ideal(seen)).DistanceTo(seen) < 1e-6;
    });

    [Fact]
    public void A_smaller_picture_shows_the_same_field() => s_directions.Sample(d =>
    {
        // Pixel centres are at whole numbers, so the edge of the picture is at −0.5.
        PixelPoint full = s_camera.ToPhoto(d.X, d.Y), half = s_camera.Resized(new(2000, 1500)).ToPhoto(d.X, d.Y);
        return Math.Abs(((full.X + 0.5) / 2) - 0.5 - half.X) < 1e-9 && Math.Abs(((full.Y + 0.5) / 2) - 0.5 - half.Y) < 1e-9;
    });

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    [InlineData(3)]
    [InlineData(8)]
    public void A_turned_picture_shows_the_same_places(int orientation) => s_directions.Sample(d =>
    {
        PhotoTurn turn = PhotoTurn.OfOrientation(orientation)!.Value;
        CameraModel displayed = turn.Displayed(s_camera);
        // A direction seen by the sensor, in the displayed frame: turned clockwise by the same quarters.
        (double x, double y) = d;
        for (int i = 0; i < turn.Quarters; i++)
            (x, y) = (-y, x);
        PixelPoint shown = displayed.ToPhoto(x, y);
        return turn.ToSensor(displayed.Photo) == s_camera.Photo && turn.ToSensor(shown, displayed.Photo).DistanceTo(s_camera.ToPhoto(d.X, d.Y)) < 1e-9;
    });

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(0)]
    public void A_mirrored_picture_has_no_turn(int orientation) => Assert.Null(PhotoTurn.OfOrientation(orientation));
}
