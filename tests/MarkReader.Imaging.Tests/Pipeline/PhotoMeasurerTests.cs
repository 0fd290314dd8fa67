using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;
using MarkReader.Rendering;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;

namespace MarkReader.Imaging.Tests.Pipeline;

public sealed class PhotoMeasurerTests
{
    [Fact]
    public void Two_marks_are_measured_where_they_are()
    {
        SceneSpec spec = Support.Scenes.Small(1);
        PhotoMeasurement result = Measure(spec);
        Assert.InRange(Truth.Errors(spec.Marks(), result.Marks).Max(), 0, 0.02);
        Assert.Equal("plate", result.Card.Kind);
        Assert.Equal(8, result.Card.MarkersSeen);
        Assert.Equal(spec.Pose.PixelsPerMm, result.Card.PixelsPerMm, 0.5);
        Assert.Equal(spec.Pose.TiltDegrees, result.Card.Tilt.Degrees, 2.0);
        Assert.True(result.Marks[0].Centre.Point.U < result.Marks[1].Centre.Point.U);
    }

    [Fact]
    public void The_projection_agrees_with_the_camera_over_the_whole_card_to_a_tenth_of_a_pixel()
    {
        SceneSpec spec = Support.Scenes.Small(2);
        Camera camera = SceneRenderer.CameraOf(spec);
        PhotoMeasurement result = Measure(spec);
        for (int u = -24; u <= 24; u += 6)
        {
            for (int v = -24; v <= 24; v += 6)
            {
                CardPoint p = new(u, v);
                Assert.InRange(result.Projection.ToPhoto(p).DistanceTo(camera.ToPhoto(p)), 0, 0.1);
                Assert.InRange(result.Projection.ToCard(camera.ToPhoto(p)).DistanceTo(p), 0, 0.01);
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(180)]
    [InlineData(233)]
    public void The_card_may_be_turned_any_way(double roll)
    {
        SceneSpec spec = Support.Scenes.Small(3);
        spec = spec with { Pose = spec.Pose with { RollDegrees = roll } };
        Assert.InRange(Truth.Errors(spec.Marks(), Measure(spec).Marks).Max(), 0, 0.02);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(8)]
    public void Points_are_given_in_the_photo_as_displayed_whatever_its_exif_orientation(int orientation)
    {
        SceneSpec spec = Support.Scenes.Small(4) with { Output = new(Orientation: orientation) };
        PhotoMeasurement result = Measure(spec);
        Assert.Equal(new PhotoSize(1200, 900), result.Photo);
        Camera camera = SceneRenderer.CameraOf(spec);
        foreach (Mark mark in result.Marks)
            Assert.InRange(mark.Photo.DistanceTo(camera.ToPhoto(mark.Centre.Point)), 0, 0.2);
    }

    [Theory]
    [InlineData(PhotoFormat.Png, false)]
    [InlineData(PhotoFormat.Png16, false)]
    [InlineData(PhotoFormat.WebP, false)]
    [InlineData(PhotoFormat.Jpeg, true)]
    public void Every_format_is_measured_alike(PhotoFormat format, bool grey)
    {
        SceneSpec spec = Support.Scenes.Small(5) with { Output = new(format, 92, Grey: grey) };
        Assert.InRange(Truth.Errors(spec.Marks(), Measure(spec).Marks).Max(), 0, 0.02);
    }

    [Fact]
    public void A_photo_without_a_card_is_refused() => AssertRefused(CardFailures.NoCard, Support.Scenes.Small(6) with { Card = null });

    [Fact]
    public void A_mirrored_photo_is_refused_and_called_mirrored() => AssertRefused(CardFailures.Mirrored, Support.Scenes.Small(7) with { Output = new(Mirrored: true) });

    [Fact]
    public void A_photo_in_the_dark_is_refused_and_called_dark() => AssertRefused(CardFailures.TooDark, Support.Scenes.Small(8) with { Light = new(Exposure: 0.004) });

    [Fact]
    public void A_card_without_a_mark_gives_no_mark_and_a_warning()
    {
        PhotoMeasurement result = Measure(Support.Scenes.Small(9) with { Burns = [] });
        Assert.Empty(result.Marks);
        Assert.Contains(result.Warnings, w => w.Code == "noMark");
    }

    [Fact]
    public void Five_markers_covered_leave_three_which_suffice()
    {
        (double U, double V)[] covered = [(-18.75, 18.75), (0, 18.75), (18.75, 0), (0, -18.75), (-18.75, -18.75)];
        SceneSpec spec = Support.Scenes.Small(10) with { Blots = [.. covered.Select(c => new BlotSpec(c.U, c.V, 5.5, 0.2, 3, Opaque: true))] };
        PhotoMeasurement result = Measure(spec);
        Assert.Equal(3, result.Card.MarkersSeen);
        Assert.Contains(result.Warnings, w => w.Code == "fewMarkers");
        Assert.InRange(Truth.Errors(spec.Marks(), result.Marks).Max(), 0, 0.03);
    }

    [Fact]
    public void Measuring_twice_gives_the_same_numbers()
    {
        byte[] photo = Support.Scenes.Small(11).Photo();
        PhotoMeasurement first = PhotoMeasurer.Measure(photo).ValueOrThrow(), second = PhotoMeasurer.Measure(photo).ValueOrThrow();
        Assert.Equal(first.Marks.Select(m => (m.Centre, m.Photo, m.Diameter, m.Shape)), second.Marks.Select(m => (m.Centre, m.Photo, m.Diameter, m.Shape)));
        Assert.Equal(first.Marks.SelectMany(m => m.Budget), second.Marks.SelectMany(m => m.Budget));
        Assert.Equal(first.Card, second.Card);
    }

    [Fact]
    public void Every_stage_writes_its_picture_to_the_debug_folder()
    {
        string folder = Directory.CreateTempSubdirectory("markreader-").FullName;
        try
        {
            PhotoMeasurer.Measure(Support.Scenes.Small(12).Photo(), new(folder)).ValueOrThrow();
            Assert.Equal(
                ["01-markers.png", "02-edges.png", "03-zone.png", "04-darkening.png", "05-candidates.png"],
                Directory.GetFiles(folder).Select(Path.GetFileName).Order());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static PhotoMeasurement Measure(SceneSpec spec) => PhotoMeasurer.Measure(spec.Photo()).ValueOrThrow();

    private static void AssertRefused(FailureCode code, SceneSpec spec)
    {
        Assert.False(PhotoMeasurer.Measure(spec.Photo()).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code);
    }
}
