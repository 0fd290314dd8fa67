using MarkReader.Rendering.Exposure;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Tests;

public class SceneRendererTests
{
    private static readonly SceneSpec s_spec = TidyScene.Draw(new(3)).Shrunk(0.1);

    [Fact]
    public void Equal_scenes_give_equal_pictures_and_other_noise_another_one()
    {
        LinearImage first = SceneRenderer.Render(s_spec);
        LinearImage second = SceneRenderer.Render(s_spec);
        LinearImage noisy = SceneRenderer.Render(s_spec with { NoiseSeed = 77 });
        Assert.Equal(3, first.Planes.Length);
        Assert.All([0, 1, 2], p => Assert.Equal(first.Planes[p], second.Planes[p]));
        Assert.All([0, 1, 2], p => Assert.NotEqual(first.Planes[p], noisy.Planes[p]));
    }

    [Fact]
    public void A_picture_has_the_camera_s_size()
    {
        LinearImage image = SceneRenderer.Render(s_spec);
        Assert.Equal((s_spec.Camera.Width, s_spec.Camera.Height), (image.Width, image.Height));
        Assert.All(image.Planes, p => Assert.Equal(image.Width * image.Height, p.Length));
    }
}
