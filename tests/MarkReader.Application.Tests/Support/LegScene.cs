using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Application.Tests.Support;

/// <summary>Small rendered photos of one target: a card with burn marks at known places.</summary>
internal static class LegScene
{
    public static byte[] Photo(int seed, params (double U, double V)[] marks) => Photo(seed, "plate", marks);

    public static byte[] Photo(int seed, string card, params (double U, double V)[] marks) => Scene.Render(new("leg", seed)
    {
        Camera = new(1000, 1000, 1100),
        Pose = new(card == "plate" ? 16 : 7, 4 + (seed % 9), 40 * seed, (seed % 5) - 2),
        Card = new(card),
        Tapes = [new(TapeMaterial.CreamTape, 0, 0, 25, 24, 0)],
        Burns = [.. marks.Select(m => new BurnSpec(m.U, m.V, 0.9, 0.12, 2.6, 1.4, 0.4))],
    }).Photo;
}
