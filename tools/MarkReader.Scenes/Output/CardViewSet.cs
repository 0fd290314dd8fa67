using System.Globalization;
using System.Text.Json;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Output;

/// <summary>Photos of one printed card from several sides, by the camera of a set of the board's photos.</summary>
internal static class CardViewSet
{
    /// <param name="camera">camera.json, as the board's set has it.</param>
    /// <returns>The names of the files written.</returns>
    public static IEnumerable<string> Write(string folder, string camera, CardSpec card, int count, int seed)
    {
        Directory.CreateDirectory(folder);
        CameraSpec spec = JsonSerializer.Deserialize<CameraSpec>(File.ReadAllText(camera), JsonSerializerOptions.Web)!;
        LensSpec lens = new("demo", 4 * spec.FocalLength / spec.Width, (int)Math.Round(36 * spec.FocalLength / spec.Width));
        IReadOnlyList<SceneSpec> views = CardViews.Of(spec, card, lens, new Random(seed), count);
        for (int i = 0; i < views.Count; i++)
        {
            string name = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"view-{i + 1}.jpg"));
            File.WriteAllBytes(name, Scene.Render(views[i]).Photo);
            yield return name;
        }
    }
}
