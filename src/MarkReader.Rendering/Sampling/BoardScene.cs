using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Sampling;

/// <summary>Random cameras and photos of the calibration board by them.</summary>
public static class BoardScene
{
    /// <summary>A phone's camera whose lens nothing corrected, from slight to wide.</summary>
    /// <param name="width">Width of its photos, px; 4 : 3.</param>
    public static CameraSpec Camera(Random random, int width)
    {
        double focal = width * random.Between(0.66, 0.9);
        return new(width, width * 3 / 4, focal, width * random.Between(-0.008, 0.008), width * random.Between(-0.008, 0.008), random.Between(-0.11, 0.05), random.Between(-0.03, 0.03))
        {
            K3 = random.Chance(0.5) ? 0 : random.Between(-0.02, 0.02),
            P1 = random.Between(-0.001, 0.001),
            P2 = random.Between(-0.001, 0.001),
        };
    }

    /// <summary>Photos as the instructions ask for them: straight, tilted to all sides by 15° to 45°, turned by a quarter, nearer and farther, into the corners.</summary>
    public static IReadOnlyList<SceneSpec> Views(CameraSpec camera, Random random, int count)
    {
        double softness = random.Between(0.06, 0.12);
        CardSpec board = new("board", random.Between(-0.02, 0.04), softness, CutMargin: 6, InkAlbedo: random.Between(0.03, 0.07));
        SensorSpec sensor = TidyScene.Sensor(random);
        LightSpec light = TidyScene.Light(random);
        LensSpec lens = new("demo", 4 * camera.FocalLength / camera.Width, (int)Math.Round(36 * camera.FocalLength / camera.Width));
        return [.. Enumerable.Range(0, count).Select(i => new SceneSpec("board", random.Next())
        {
            Camera = camera,
            Card = board,
            // The board is 250 mm tall and stands upright, or lies, in every second photo.
            Pose = new(
                camera.Width * random.Between(0.0026, 0.0036),
                i == 0 ? random.Between(0, 6) : random.Between(15, 45),
                (90 * (i % 4)) + random.Between(-35, 35),
                (i / 2 % 2 == 0 ? 90 : 0) + random.Between(-12, 12),
                random.Between(0.38, 0.62),
                random.Between(0.38, 0.62)),
            Target = new(TargetMaterial.Wood, 400, 400),
            Light = light,
            Sensor = sensor,
            Output = new(Quality: 92) { Lens = lens },
        })];
    }
}
