using System.Globalization;
using MarkReader.Cards;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Fixtures;
using MarkReader.Scenes.Output;
using MarkReader.Scenes.Sampling;

const string Usage = """
    make --out FOLDER [--kind NAME,NAME|all] [--count N] [--seed N] [--shrink FACTOR]   draw scenes and write NAME.jpg and NAME.truth.json
    fixtures [--out FOLDER] [--only TEXT]                                              write the photos of fixtures/photos
    board --out FOLDER [--count N] [--seed N] [--width PX]                             write photos of the calibration board by one random camera, two of a card by it, and camera.json
    cardviews --out FOLDER [--camera FILE] [--count N] [--seed N] [--kind NAME] [--scale-u X] [--sag MM] [--curve DEGREES]   write photos of one card from several sides by the camera of camera.json
    kinds                                                                              list the kinds of scene
    """;

if (args.Any(a => a is "--help" or "-h" or "-?"))
{
    Console.WriteLine(Usage);
    return 0;
}

Dictionary<string, string> options = [];
for (int i = 1; i + 1 < args.Length; i += 2)
    options[args[i]] = args[i + 1];
int Number(string name, int fallback) => int.Parse(Option(name, fallback.ToString(CultureInfo.InvariantCulture)), CultureInfo.InvariantCulture);
double Decimal(string name, double fallback) => double.Parse(Option(name, fallback.ToString(CultureInfo.InvariantCulture)), CultureInfo.InvariantCulture);
string Option(string name, string fallback) => options.GetValueOrDefault(name, fallback);

switch (args.FirstOrDefault())
{
    case "make":
        string[] kinds = Option("--kind", "tidy") is var named && named == "all" ? [.. SceneSampler.Kinds] : named.Split(',');
        if (Unknown(kinds, [.. SceneSampler.Kinds, .. SceneSampler.Refusals]))
            return 2;
        Make(kinds);
        return 0;
    case "fixtures":
        foreach ((string file, int bytes) in FixtureSet.Write(Option("--out", "fixtures/photos"), Option("--only", "")))
            Console.WriteLine($"{file}: {bytes / 1024} KB");
        return 0;
    case "board":
        foreach (string file in BoardSet.Write(Option("--out", "board"), Number("--count", 12), Number("--seed", 1), Number("--width", 2000)))
            Console.WriteLine(file);
        return 0;
    case "cardviews":
        CardSpec card = new(Option("--kind", "plate"), PrintScaleU: Decimal("--scale-u", 1), CurveDegrees: Decimal("--curve", 0));
        if (Unknown([card.Kind], [.. CardKinds.All.Select(k => k.Name)]))
            return 2;
        string cameraFile = Option("--camera", "fixtures/camera/camera.json");
        if (!File.Exists(cameraFile))
        {
            Console.Error.WriteLine($"There is no file '{cameraFile}'. Give --camera FILE, the camera.json that 'board' writes, or call it in the repository's folder.");
            return 2;
        }

        double half = card.Kind == "bed" ? 75 : 25;
        foreach (string file in CardViewSet.Write(Option("--out", "cardviews"), cameraFile, card with { Curvature = 2 * Decimal("--sag", 0) / (half * half) }, Number("--count", 5), Number("--seed", 1)))
            Console.WriteLine(file);
        return 0;
    case "kinds":
        Console.WriteLine(string.Join('\n', SceneSampler.Kinds.Concat(SceneSampler.Refusals)));
        return 0;
    default:
        Console.Error.WriteLine(Usage);
        return 2;
}

static bool Unknown(string[] kinds, string[] known)
{
    string? unknown = kinds.FirstOrDefault(k => !known.Contains(k));
    if (unknown is not null)
        Console.Error.WriteLine($"There is no kind '{unknown}'. Kinds: {string.Join(", ", known)}.");
    return unknown is not null;
}

void Make(string[] kinds)
{
    string folder = Option("--out", "scenes");
    int count = int.Parse(Option("--count", "1"), CultureInfo.InvariantCulture);
    int first = int.Parse(Option("--seed", "1"), CultureInfo.InvariantCulture);
    double shrink = double.Parse(Option("--shrink", "1"), CultureInfo.InvariantCulture);
    Directory.CreateDirectory(folder);
    foreach (string kind in kinds)
    {
        for (int seed = first; seed < first + count; seed++)
        {
            SceneSpec spec = SceneSampler.Draw(kind, seed);
            Scene scene = Scene.Render(shrink == 1 ? spec : spec.Shrunk(shrink));
            string name = Path.Combine(folder, $"{kind}-{seed}");
            File.WriteAllBytes(name + PhotoFiles.Extension(spec.Output.Format), scene.Photo);
            File.WriteAllText(name + ".truth.json", scene.Truth.ToJson());
            Console.WriteLine($"{name}: {scene.Photo.Length / 1024} KB");
        }
    }
}
