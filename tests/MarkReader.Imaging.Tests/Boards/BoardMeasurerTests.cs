using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Imaging.Boards;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Imaging.Tests.Boards;

public sealed class BoardMeasurerTests
{
    private const int Width = 1100;

    [Fact]
    public void Edges_are_seen_where_the_camera_shows_them()
    {
        Random random = new(4);
        CameraSpec camera = BoardScene.Camera(random, Width);
        SceneSpec scene = BoardScene.Views(camera, random, 3)[2];

        BoardPhoto photo = BoardMeasurer.Measure(Scene.Render(scene).Photo, "third").ValueOrThrow();

        Camera truth = Rendering.SceneRenderer.CameraOf(scene);
        double[] errors = [.. photo.View.Sightings.Select(s =>
        {
            var d = s.Seen - truth.ToPhoto(s.At);
            return (d.X * s.Along.X) + (d.Y * s.Along.Y);
        })];
        Assert.True(errors.Length > 300, $"{errors.Length} sections of {photo.MarkersSeen} markers");
        // What is common is the growth of black; the rest is noise.
        double growth = errors.Order().ElementAt(errors.Length / 2);
        Assert.InRange(growth, -0.3, 0.5);
        Assert.InRange(Math.Sqrt(errors.Average(e => (e - growth) * (e - growth))), 0, 0.15);
        Assert.Equal(16, photo.Traits.ModelDigest!.Length);
        Assert.Equal(Width, photo.Traits.Sensor.Width);
    }

    [Fact]
    public void The_fall_of_the_light_does_not_draw_edges_towards_it()
    {
        Random random = new(6);
        CameraSpec camera = BoardScene.Camera(random, 800);
        SceneSpec scene = BoardScene.Views(camera, random, 1)[0];
        scene = scene with { Light = new(0.7, Gradient: 1, GradientDegrees: 0, Vignetting: 0), Sensor = scene.Sensor with { FullWell = 50_000, Tone = 0 } };

        BoardPhoto photo = BoardMeasurer.Measure(Scene.Render(scene).Photo, "to the right").ValueOrThrow();

        Camera truth = Rendering.SceneRenderer.CameraOf(scene);
        // White to the right of its edge is lighter the farther it is, white to the left darker.
        double Mean(Func<BoardSighting, bool> side) => photo.View.Sightings.Where(side).Average(s => (s.Seen - truth.ToPhoto(s.At)).X * s.Along.X);
        Assert.InRange(Mean(s => s.Along.X > 0.95) - Mean(s => s.Along.X < -0.95), -0.003, 0.003);
    }

    [Fact]
    public void A_camera_is_found_from_photos_of_the_board()
    {
        Random random = new(1);
        CameraSpec camera = BoardScene.Camera(random, Width);
        BoardView[] views = [.. BoardScene.Views(camera, random, 8).Select((s, i) => BoardMeasurer.Measure(Scene.Render(s).Photo, $"view {i}").ValueOrThrow().View)];

        CalibratedCamera found = CameraCalibration.Calibrate(views).ValueOrThrow();

        double[] truth = [camera.FocalLength, camera.FocalLength, ((camera.Width - 1) / 2.0) + camera.PrincipalX, ((camera.Height - 1) / 2.0) + camera.PrincipalY];
        Assert.Empty(found.Dropped);
        Assert.All(Enumerable.Range(0, 4), i => Assert.InRange(Math.Abs(found.Values[i] - truth[i]), 0, 4 * found.StandardUncertainties[i]));
        Assert.All(Enumerable.Range(0, 4), i => Assert.InRange(found.StandardUncertainties[i], 0.002, 0.5));
    }
}
