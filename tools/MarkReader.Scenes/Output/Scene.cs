using MarkReader.Rendering;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Output;

/// <summary>A rendered photo: its file's bytes and what is true about it.</summary>
public sealed record Scene(SceneSpec Spec, byte[] Photo, SceneTruth Truth)
{
    public static Scene Render(SceneSpec spec) =>
        new(spec, PhotoEncoder.Encode(SceneRenderer.Render(spec), spec.Output, spec.Sensor.Tone), SceneTruth.Of(spec, SceneRenderer.CameraOf(spec)));
}
