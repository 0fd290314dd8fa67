using System.Text;
using System.Text.Json.Nodes;
using MarkReader.Application.Cameras;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Cameras;

public sealed class CameraProfileFileTests
{
    private static readonly CameraProfile s_profile = new(
        "phone, main lens",
        new(2026, 3, 4, 5, 6, 7, TimeSpan.Zero),
        new(new(4032, 3024), 5.1, 26, 1, "0123456789abcdef"),
        new(new(4032, 3024), 3001.25, 3001.25, new(2010.5, 1502.25), new(-0.05, 0.01, 0, 0.0002, -0.0001)),
        [0.5, 0.5, 0.6, 0.7, 0.001, 0.002, 0, 0.00001, 0.00001],
        0.12,
        0.07,
        14);

    [Fact]
    public void What_is_written_is_read_again()
    {
        CameraProfile read = CameraProfileFile.Read(Encoding.UTF8.GetBytes(CameraProfileFile.Write(s_profile))).ValueOrThrow();

        Assert.Equal(s_profile.Camera, read.Camera);
        Assert.Equal(s_profile.Traits, read.Traits);
        Assert.Equal(s_profile.Made, read.Made);
        Assert.Equal(s_profile.StandardUncertainties, read.StandardUncertainties);
        Assert.Equal((s_profile.Name, s_profile.LensDoubtPx, s_profile.ResidualPx, s_profile.Views), (read.Name, read.LensDoubtPx, read.ResidualPx, read.Views));
    }

    [Theory]
    [InlineData("name", "\"\"")]
    [InlineData("name", "\"a\\u0007b\"")]
    [InlineData("made", "\"yesterday\"")]
    [InlineData("parameters", "[]")]
    [InlineData("name", "null")]
    [InlineData("parameters", "\"none\"")]
    [InlineData("photo", "{\"width\": 1e9, \"height\": 3024}")]
    [InlineData("photo", "{\"width\": 4032}")]
    [InlineData("photo", "7")]
    [InlineData("lensDoubtPx", "-1")]
    [InlineData("residualPx", "null")]
    [InlineData("views", "0")]
    public void A_field_that_no_profile_has_is_refused(string field, string value)
    {
        JsonObject json = JsonNode.Parse(CameraProfileFile.Write(s_profile))!.AsObject();
        json[field] = JsonNode.Parse(value);

        Assert.False(CameraProfileFile.Read(Encoding.UTF8.GetBytes(json.ToJsonString())).TryGet(out _, out Failure? failure));
        Assert.Equal(CameraFailures.Unreadable, failure.Code);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0, -3000)]
    [InlineData(2, 9000)]
    [InlineData(4, 1e9)]
    public void A_value_that_no_camera_has_is_refused(int parameter, double value)
    {
        JsonObject json = JsonNode.Parse(CameraProfileFile.Write(s_profile))!.AsObject();
        json["parameters"]![parameter]!["value"] = value;

        Assert.False(CameraProfileFile.Read(Encoding.UTF8.GetBytes(json.ToJsonString())).TryGet(out _, out Failure? failure));
        Assert.Equal(CameraFailures.Unreadable, failure.Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[1, 2]")]
    [InlineData("{ \"width\": 2000, \"height\": 1500, \"focalLength\": 1600 }")]
    [InlineData("\u00ff\u00d8 no JSON")]
    public void What_is_something_else_is_called_no_profile(string text) => Assert.Equal("this file is no camera profile", Refused(Encoding.UTF8.GetBytes(text)).Message);

    [Fact]
    public void A_profile_that_is_cut_off_says_where_and_a_large_file_is_none()
    {
        Assert.Contains("not JSON at line 1", Refused("{ \"name\": "u8.ToArray()).Message, StringComparison.Ordinal);
        Assert.Equal("this file is no camera profile", Refused(new byte[CameraProfileFile.MostBytes + 1]).Message);
    }

    private static Failure Refused(byte[] bytes)
    {
        Assert.False(CameraProfileFile.Read(bytes).TryGet(out _, out Failure? failure));
        Assert.Equal(CameraFailures.Unreadable, failure.Code);
        return failure;
    }
}
