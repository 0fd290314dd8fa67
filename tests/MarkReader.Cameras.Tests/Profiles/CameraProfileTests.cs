using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.Profiles;

public sealed class CameraProfileTests
{
    private static readonly CameraTraits s_traits = new(new(4032, 3024), 5.1, 26, 1, "0123456789abcdef");

    private static readonly Lazy<CameraProfile> s_profile = new(() => CameraProfile.Of("phone", DateTimeOffset.UnixEpoch, s_traits, CameraCalibration.Calibrate(new SimulatedBoard(7).Views).ValueOrThrow()));

    [Fact]
    public void What_the_card_cannot_show_of_the_lens_is_far_less_than_the_whole_uncertainty()
    {
        // Focal length and principal point are taken up by the photo's own homography, most of k1 is not.
        Assert.InRange(s_profile.Value.LensDoubtPx, 0.005, 1);
    }

    [Fact]
    public void A_photo_of_the_same_lens_has_the_same_camera() => Assert.Equal(s_profile.Value.Camera, s_profile.Value.For(s_traits).ValueOrThrow());

    [Fact]
    public void A_smaller_photo_of_the_same_field_is_rescaled()
    {
        CameraModel half = s_profile.Value.For(s_traits with { Sensor = new(2016, 1512) }).ValueOrThrow();

        Assert.Equal(s_profile.Value.Camera.FocalX / 2, half.FocalX, 1e-9);
        Assert.Equal(new PhotoSize(2016, 1512), half.Photo);
    }

    public static TheoryData<string, CameraTraits> Others => new()
    {
        { "cropped", s_traits with { Sensor = new(4032, 2268) } },
        { "turned", s_traits with { Sensor = new(3024, 4032) } },
        { "zoomed", s_traits with { Zoom = 2 } },
        { "camera or lens", s_traits with { FocalLength = 2.2 } },
        { "camera or lens", s_traits with { ModelDigest = "fedcba9876543210" } },
        { "zoomed", new(new(4032, 3024), null, null, 1.5, null) },
    };

    [Theory]
    [MemberData(nameof(Others))]
    public void A_photo_of_another_field_or_lens_is_refused(string why, CameraTraits photo)
    {
        Assert.False(s_profile.Value.For(photo).TryGet(out _, out Failure? failure));
        Assert.Equal(ProfileFailures.Misfit, failure.Code);
        Assert.Contains(why, failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_that_tells_nothing_is_taken_at_its_word_when_its_size_fits() =>
        Assert.Equal(s_profile.Value.Camera, s_profile.Value.For(new(new(4032, 3024), null, null, 1, null)).ValueOrThrow());
}
