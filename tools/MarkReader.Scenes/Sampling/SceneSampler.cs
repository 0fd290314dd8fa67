using MarkReader.Scenes.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Draws random scenes by kind; equal kind and seed give equal scenes.</summary>
public static class SceneSampler
{
    /// <summary>The kinds of scene, tidy first.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["tidy", "tilt"];

    public static SceneSpec Draw(string kind, int seed)
    {
        Random random = new(seed);
        return new SceneSpec(kind, seed)
        {
            Pose = new(random.Between(25, 45), random.Between(3, 18), random.Between(0, 360), random.Between(-15, 15), random.Between(0.45, 0.55), random.Between(0.45, 0.55)),
            Tapes = [new(TapeMaterial.CreamTape, 0, 0, 27, 19, 90)],
            Burns = [new(random.Between(-6, 6), random.Between(-8, 0)), new(random.Between(-6, 6), random.Between(4, 8))],
        };
    }

    internal static double Between(this Random random, double low, double high) => low + ((high - low) * random.NextDouble());
}
