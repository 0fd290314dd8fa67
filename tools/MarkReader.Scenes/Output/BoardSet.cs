using System.Text.Json;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Scenes.Output;

/// <summary>Photos of the calibration board by one camera, with photos of a card by the same.</summary>
internal static class BoardSet
{
    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>The files written.</summary>
    public static IEnumerable<string> Write(string folder, int count, int seed, int width)
    {
        Random random = new(seed);
        CameraSpec camera = BoardScene.Camera(random, width);
        SceneSpec[] views = [.. BoardScene.Views(camera, random, count)];
        Directory.CreateDirectory(folder);
        for (int i = 0; i < views.Length; i++)
        {
            string file = Path.Combine(folder, $"board-{i + 1:00}.jpg");
            File.WriteAllBytes(file, Scene.Render(views[i]).Photo);
            yield return file;
        }

        for (int i = 1; i <= 2; i++)
        {
            SceneSpec tidy = SceneSampler.Draw("tidy", seed + i);
            double scale = (double)width / Math.Max(tidy.Camera.Width, tidy.Camera.Height);
            SceneSpec card = tidy with
            {
                Camera = camera,
                Pose = tidy.Pose with { PixelsPerMm = tidy.Pose.PixelsPerMm * scale * 0.75 },
                Output = tidy.Output with { Format = PhotoFormat.Jpeg, Orientation = 1, Lens = views[0].Output.Lens },
            };
            Scene scene = Scene.Render(card);
            string file = Path.Combine(folder, $"card-{i}.jpg");
            File.WriteAllBytes(file, scene.Photo);
            File.WriteAllText(Path.Combine(folder, $"card-{i}.truth.json"), scene.Truth.ToJson());
            yield return file;
        }

        string truth = Path.Combine(folder, "camera.json");
        File.WriteAllText(truth, JsonSerializer.Serialize(camera, s_json));
        yield return truth;
    }
}
