using System.Diagnostics;
using System.Globalization;
using MarkReader.Scenes.Output;
using MarkReader.Scenes.Rendering;
using MarkReader.Scenes.Sampling;

// make --kind NAME --count N --seed N --out DIR
Dictionary<string, string> options = [];
for (int i = 1; i + 1 < args.Length; i += 2)
    options[args[i]] = args[i + 1];
string Option(string name, string fallback) => options.GetValueOrDefault(name, fallback);

string folder = Option("--out", "scenes");
int count = int.Parse(Option("--count", "1"), CultureInfo.InvariantCulture);
int seed = int.Parse(Option("--seed", "1"), CultureInfo.InvariantCulture);
string kinds = Option("--kind", "tidy");
Directory.CreateDirectory(folder);
foreach (string kind in kinds == "all" ? SceneSampler.Kinds : kinds.Split(','))
{
    for (int i = 0; i < count; i++)
    {
        long start = Stopwatch.GetTimestamp();
        Scene scene = SceneRenderer.Render(SceneSampler.Draw(kind, seed + i));
        string name = $"{kind}-{seed + i}";
        await File.WriteAllBytesAsync(Path.Combine(folder, name + PhotoFiles.Extension(scene.Spec.Output.Format)), scene.Photo);
        await File.WriteAllTextAsync(Path.Combine(folder, name + ".truth.json"), scene.Truth.ToJson());
        Console.WriteLine($"{name}: {scene.Photo.Length / 1024} KB, {Stopwatch.GetElapsedTime(start).TotalSeconds:0.0} s");
    }
}
