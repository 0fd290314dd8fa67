using MarkReader.Cards;
using MarkReader.Quantities;
using MarkReader.Rendering;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Scenes.Tests.Sampling;

public class SceneSamplerTests
{
    public static TheoryData<string> EveryKind => [.. SceneSampler.Kinds.Concat(SceneSampler.Refusals)];

    public static TheoryData<string> MeasurableKinds => [.. SceneSampler.Kinds];

    [Theory]
    [MemberData(nameof(EveryKind))]
    public void Every_kind_renders(string kind)
    {
        SceneSpec spec = SceneSampler.Draw(kind, 1).Shrunk(0.08);
        Scene scene = Scene.Render(spec);
        Assert.True(scene.Photo.Length > 1000);
        Assert.Equal(spec.Burns.Count, scene.Truth.Marks.Count);
    }

    [Theory]
    [MemberData(nameof(MeasurableKinds))]
    public void Every_mark_of_every_kind_lies_in_the_free_zone_and_the_zone_in_the_photo(string kind)
    {
        for (int seed = 0; seed < 50; seed++)
        {
            SceneSpec spec = SceneSampler.Draw(kind, seed);
            Camera camera = SceneRenderer.CameraOf(spec);
            double half = CardKinds.Find(spec.Card!.Kind)!.ZoneSide / 2;
            Assert.NotEmpty(spec.Burns);
            Assert.All(spec.Burns, b => Assert.InRange(Math.Max(Math.Abs(b.U), Math.Abs(b.V)), 0, half - b.Radius));
            foreach (CardPoint corner in (CardPoint[])[new(-half, -half), new(half, -half), new(half, half), new(-half, half)])
            {
                PixelPoint at = camera.ToPhoto(corner);
                Assert.InRange(at.X, 0, spec.Camera.Width - 1);
                Assert.InRange(at.Y, 0, spec.Camera.Height - 1);
            }
        }
    }

    [Fact]
    public void An_unknown_kind_is_refused_with_the_names_of_the_kinds()
    {
        ArgumentException fault = Assert.Throws<ArgumentException>(() => SceneSampler.Draw("sunset", 1));
        Assert.Contains("tidy", fault.Message, StringComparison.Ordinal);
    }
}
