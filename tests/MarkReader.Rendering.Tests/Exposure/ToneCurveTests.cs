using MarkReader.Rendering.Exposure;

namespace MarkReader.Rendering.Tests.Exposure;

public class ToneCurveTests
{
    /// <summary>IEC 61966-2-1: 0.2140 of the light is displayed as one half, 0.0031308 on the straight part as 12.92 times that.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.0031308, 0.04045)]
    [InlineData(0.21404, 0.5)]
    [InlineData(1, 1)]
    [InlineData(1.7, 1)]
    [InlineData(-0.1, 0)]
    public void Without_its_s_shape_it_is_that_of_sRGB(double linear, double display) =>
        Assert.Equal(display, new ToneCurve(0).At((float)linear) / 65535.0, 1e-4);

    [Fact]
    public void The_s_shape_darkens_the_dark_and_lightens_the_light()
    {
        Assert.True(new ToneCurve(0.3).At(0.05f) < new ToneCurve(0).At(0.05f));
        Assert.True(new ToneCurve(0.3).At(0.6f) > new ToneCurve(0).At(0.6f));
    }

    [Fact]
    public void Pixels_come_row_after_row_as_red_green_blue()
    {
        LinearImage image = new(2, 2);
        image.Planes[0][1] = 1;
        image.Planes[1][2] = 1;
        image.Planes[2][3] = 1;
        Assert.Equal([0, 0, 0, 255, 0, 0, 0, 255, 0, 0, 0, 255], new ToneCurve(0.2).ToRgb(image));
    }
}
