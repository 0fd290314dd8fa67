using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Scenes.Tests.Sampling;

public class DeterminismTests
{
    [Fact]
    public void Equal_kind_and_seed_give_equal_bytes()
    {
        byte[] first = Scene.Render(SceneSampler.Draw("workshop", 5).Shrunk(0.15)).Photo;
        byte[] second = Scene.Render(SceneSampler.Draw("workshop", 5).Shrunk(0.15)).Photo;
        Assert.Equal(first, second);
    }

    [Fact]
    public void Another_seed_gives_another_scene()
    {
        SceneSpec first = SceneSampler.Draw("tidy", 5);
        SceneSpec second = SceneSampler.Draw("tidy", 6);
        Assert.NotEqual(first.Pose, second.Pose);
        Assert.NotEqual(first.Burns[0], second.Burns[0]);
    }

    [Fact]
    public void Another_noise_seed_changes_the_noise_but_not_the_truth()
    {
        SceneSpec spec = SceneSampler.Draw("tidy", 5).Shrunk(0.15);
        Scene first = Scene.Render(spec);
        Scene second = Scene.Render(spec with { NoiseSeed = 77 });
        Assert.NotEqual(first.Photo, second.Photo);
        Assert.Equal(first.Truth.Marks, second.Truth.Marks);
    }
}
