using MarkReader.Rendering;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Scenes.Fixtures;

/// <summary>A photo of the fixtures: its name, its scene, and what else its truth file says.</summary>
/// <param name="Role">near, far or both, with a round.</param>
/// <param name="First">With role both: which mark is the near one.</param>
/// <param name="Refusal">The refusal that is right, or null.</param>
internal sealed record Fixture(string Name, SceneSpec Spec, LegRound? Round = null, string Role = "", string? First = null, string? Refusal = null)
{
    public string FileName => Name + PhotoFiles.Extension(Spec.Output.Format);

    public Scene Render()
    {
        Scene scene = Scene.Render(Spec);
        SceneTruth truth = scene.Truth with
        {
            Leg = Round?.Truth(Role, Spec, SceneRenderer.CameraOf(Spec), First),
            Expected = Refusal is null ? null : new(Refusal),
        };
        return scene with { Truth = truth };
    }
}
