using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Quality;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Rendering.Specs;

namespace MarkReader.Imaging.Tests.Quality;

/// <summary>The quality of rendered photos whose faults are known, and the warnings that go with it.</summary>
public sealed class PhotoQualityTests
{
    [Fact]
    public void A_tidy_photo_has_its_known_figures_and_no_warning()
    {
        PhotoMeasurement photo = Measure(Support.Scenes.Small(81));
        PhotoQuality quality = photo.Quality;
        Assert.Empty(photo.Warnings);
        Assert.Equal(14, quality.PixelsPerMm, 0.5);
        Assert.Equal(12, quality.Tilt.Degrees, 1.5);
        Assert.InRange(quality.BlurPx, 0.5, 1.5);
        Assert.InRange(quality.PaperLight, 0.4, 0.9);
        Assert.Equal((8, 8), (quality.MarkersSeen, quality.MarkersTotal));
        Assert.Equal(1, quality.ShadowStep);
        Assert.InRange(quality.Glare.Share, 0, 0.01);
        Assert.InRange(quality.ClippedShare, 0, 0.01);
        Assert.InRange(quality.Unevenness, 0, 0.2);
    }

    [Fact]
    public void Tidy_fixtures_carry_no_warning()
    {
        string[] tidy = [.. Directory.GetFiles(Repository.Fixtures, "leg*.jpg").Order()];
        Assert.True(tidy.Length >= 10);
        Assert.Empty(tidy.SelectMany(path => PhotoMeasurer.Measure(File.ReadAllBytes(path)).ValueOrThrow().Warnings.Select(w => $"{Path.GetFileName(path)}: {w.Code}")));
    }

    [Fact]
    public void Blur_is_measured_in_pixels()
    {
        // A disc of radius r blurs an edge like a normal distribution of σ = r/2.
        double sharp = Measure(Support.Scenes.Small(82)).Quality.BlurPx;
        PhotoMeasurement photo = Measure(Support.Scenes.Small(82) with { Sensor = new(DefocusRadius: 6) });
        Assert.Equal(Math.Sqrt((sharp * sharp) + 9), photo.Quality.BlurPx, 0.4);
        Assert.Contains(photo.Warnings, w => w.Code == "unsharp" && w.Message.Contains("hold still", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(-1, 0, 180)]
    [InlineData(0, 1, 90)]
    [InlineData(0, -1, 270)]
    public void Glare_is_told_with_its_side_in_the_photo(int u, int v, int roll)
    {
        // Whatever side of the card it lies on, the card is turned so that it appears on the right.
        SceneSpec spec = Support.Scenes.Small(83) with { Pose = new(14, 0, 0, -roll) };
        PhotoMeasurement photo = Measure(spec with { Light = spec.Light with { Glares = [new(u * 8, v * 8, 4, 3, 0, 2.5)] }, Burns = [new(-3 * u, -3 * v)] });
        Assert.InRange(photo.Quality.Glare.Share, 0.05, 0.6);
        Assert.Equal(PhotoSide.Right, photo.Quality.Glare.Side);
        Assert.Contains(photo.Warnings, w => w.Code == "glare" && w.Message.EndsWith("turn off the lamp on the right.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_shadow_s_edge_is_told_and_a_tape_s_edge_is_not()
    {
        SceneSpec spec = Support.Scenes.Small(84);
        PhotoMeasurement shadow = Measure(spec with { Light = spec.Light with { Shadows = [new(1, 0, 20, 0.4, 0.5)] } });
        Assert.InRange(shadow.Quality.ShadowStep, 0.4, 0.65);
        Assert.Contains(shadow.Warnings, w => w.Code == "shadowEdge" && w.Message.Contains("light it evenly", StringComparison.Ordinal));
        PhotoMeasurement strip = Measure(spec with { Tapes = [new(TapeMaterial.Cardboard, -6, 0, 24, 12, 90)] });
        Assert.Equal(1, strip.Quality.ShadowStep);
    }

    [Fact]
    public void Dark_and_burnt_out_photos_say_what_to_do_about_the_light()
    {
        SceneSpec spec = Support.Scenes.Small(85);
        PhotoMeasurement dark = Measure(spec with { Light = spec.Light with { Exposure = 0.06 } });
        Assert.Contains(dark.Warnings, w => w.Code == "dark" && w.Message.EndsWith("more light.", StringComparison.Ordinal));
        PhotoMeasurement bright = Measure(spec with { Light = spec.Light with { Exposure = 1.8 } });
        Assert.InRange(bright.Quality.ClippedShare, 0.25, 1);
        Assert.Contains(bright.Warnings, w => w.Code == "overexposed");
    }

    [Fact]
    public void Noise_is_relative_to_the_light()
    {
        SceneSpec spec = Support.Scenes.Small(86) with { Plain = true, Output = new(PhotoFormat.Png) };
        // Shot noise of 400 electrons at full light, not smoothed: 1/√(400·0.5) ≈ 7 % where the tape sends back half of it.
        PhotoMeasurement noisy = Measure(spec with { Sensor = new(FullWell: 400, ReadNoise: 0, NoiseGrain: 0, Sharpening: 0, Tone: 0) });
        PhotoMeasurement clean = Measure(spec with { Sensor = new(FullWell: 0, ReadNoise: 0, Sharpening: 0, Tone: 0) });
        Assert.InRange(noisy.Quality.Noise, 0.035, 0.11);
        Assert.InRange(clean.Quality.Noise, 0, 0.01);
    }

    private static PhotoMeasurement Measure(SceneSpec spec) => PhotoMeasurer.Measure(spec.Photo()).ValueOrThrow();
}
