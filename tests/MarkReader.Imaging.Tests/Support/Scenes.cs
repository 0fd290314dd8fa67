using MarkReader.Quantities;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Imaging.Tests.Support;

/// <summary>Small rendered photos: 1200 × 900 px, about 14 px/mm, so that a test renders in a second.</summary>
internal static class Scenes
{
    public static readonly BurnSpec Left = new(-4.2, 1.3);

    public static readonly BurnSpec Right = new(3.7, -2.4);

    public static SceneSpec Small(int seed) => new("test", seed)
    {
        Camera = new(1200, 900, 1000),
        Pose = new(14, 12, 40, 7),
        Burns = [Left, Right],
        Tapes = [new(TapeMaterial.WhitePaper, 0, 0, 27, 24, 90)],
    };

    public static byte[] Photo(this SceneSpec spec) => Scene.Render(spec).Photo;

    public static IReadOnlyList<CardPoint> Marks(this SceneSpec spec) => [.. spec.Burns.Select(b => new CardPoint(b.U, b.V))];
}
