using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Imaging.Tests.Pipeline;

/// <summary>A photo that no kept profile fits is measured without one, and says why.</summary>
public sealed class LensChoiceTests
{
    private static readonly LensSpec s_lens = new("phone", 4, 26);

    private static readonly SceneSpec s_spec = Support.Scenes.Small(31) with { Camera = new(800, 600, 660), Pose = new(9.2, 12, 40, 7) };

    private static readonly CameraTraits s_traits = TraitsOf(s_spec with { Output = s_spec.Output with { Lens = s_lens } });

    public static TheoryData<string, string, CameraTraits, bool> Others => new()
    {
        { "cameraUnnamed", "does not name its camera", s_traits, false },
        { "cameraZoomed", "zoomed", s_traits with { FocalLength35 = 52 }, true },
        { "cameraZoomed", "zoomed", s_traits with { Zoom = 2 }, true },
        { "cameraOtherLens", "another lens of the camera", s_traits with { FocalLength = 2.2, FocalLength35 = 13 }, true },
        { "cameraUnfit", "since the photo has 800 x 600 px where the profile has 800 x 450 px", s_traits with { Sensor = new(800, 450) }, true },
    };

    [Theory]
    [MemberData(nameof(Others))]
    public void Why_a_kept_profile_was_not_used_is_one_plain_sentence(string code, string why, CameraTraits known, bool named)
    {
        PhotoMeasurement photo = Measure(known, named);

        Warning warning = Assert.Single(photo.Warnings, w => w.Code.StartsWith("camera", StringComparison.Ordinal));
        Assert.Equal(code, warning.Code);
        Assert.Contains(why, warning.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(':', warning.Message);
        Assert.Null(photo.CameraProfile);
    }

    [Fact]
    public void Another_camera_says_nothing_and_the_same_one_names_its_profile()
    {
        PhotoMeasurement other = Measure(s_traits with { ModelDigest = "fedcba9876543210" }, true), same = Measure(s_traits, true);

        Assert.DoesNotContain(other.Warnings, w => w.Code.StartsWith("camera", StringComparison.Ordinal));
        Assert.Null(other.CameraProfile);
        Assert.DoesNotContain(same.Warnings, w => w.Code.StartsWith("camera", StringComparison.Ordinal));
        Assert.Equal("phone", same.CameraProfile);
    }

    private static PhotoMeasurement Measure(CameraTraits known, bool named)
    {
        CameraProfile profile = new("phone", DateTimeOffset.UnixEpoch, known, new(known.Sensor, 660, 660, new(399.5, (known.Sensor.Height - 1) / 2.0), new(0, 0, 0, 0, 0)), new double[9], 0.01, 0.05, 12);
        return PhotoMeasurer.Measure(
            Scene.Render(s_spec with { Output = s_spec.Output with { Lens = named ? s_lens : null } }).Photo, new() { KnownCameras = [profile] }).ValueOrThrow();
    }

    private static CameraTraits TraitsOf(SceneSpec spec) => LensChoice.TraitsOf(PhotoHeaderReader.Read(Scene.Render(spec).Photo).ValueOrThrow());
}
