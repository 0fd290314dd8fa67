using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>The larger card on the bed.</summary>
internal static class BedScene
{
    public static SceneSpec Turn(SceneSpec s, Random r)
    {
        TapeSpec tape = new(r.Pick(TapeMaterial.CreamTape, TapeMaterial.Cardboard, TapeMaterial.WhitePaper), 0, 0, r.Between(70, 78), r.Between(48, 60), r.Pick(0, 90) + r.Between(-2, 2));
        return s with
        {
            Card = s.Card! with { Kind = "bed", InkSoftness = 0.05 },
            Target = new(r.Pick(TargetMaterial.Wood, TargetMaterial.BrushedMetal, TargetMaterial.PaintedMetal)),
            Tapes = [tape],
            Burns = [.. Enumerable.Range(0, r.Pick(1, 2, 3)).Select(i => TidyScene.Burn(r, (i * 14) - 14 + r.Between(-4, 4), r.Between(-18, 18)))],
            Pose = s.Pose with { PixelsPerMm = s.Pose.PixelsPerMm * 0.36 },
        };
    }
}
