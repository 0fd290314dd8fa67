using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Sampling;

/// <summary>Photos of one printed card from several sides, for a check of the card.</summary>
public static class CardViews
{
    /// <summary>From straight above, then from all sides in turn, tilted by 25° to 35°, the card filling most of the photo's height.</summary>
    public static IReadOnlyList<SceneSpec> Of(CameraSpec camera, CardSpec card, LensSpec? lens, Random random, int count)
    {
        SensorSpec sensor = TidyScene.Sensor(random);
        LightSpec light = TidyScene.Light(random);
        double side = card.Kind == "bed" ? 150 : 50;
        return [.. Enumerable.Range(0, count).Select(i => new SceneSpec("cardview", random.Next())
        {
            Camera = camera,
            Card = card,
            Pose = new(
                camera.Height * random.Between(0.68, 0.76) / side,
                i == 0 ? random.Between(0, 4) : random.Between(25, 35),
                (90 * (i % 4)) + random.Between(-20, 20),
                random.Between(-10, 10),
                random.Between(0.47, 0.53),
                random.Between(0.47, 0.53)),
            Light = light,
            Sensor = sensor,
            Output = new(Quality: 92) { Lens = lens },
        })];
    }
}
