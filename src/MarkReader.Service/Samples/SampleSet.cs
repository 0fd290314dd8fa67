using System.Text.Json;

namespace MarkReader.Service.Samples;

/// <summary>The sample photos that lie beside the program: NAME-near.jpg and NAME-far.jpg with what is true of them in NAME-far.truth.json.</summary>
internal sealed class SampleSet
{
    private const string FarTruth = "-far.truth.json";
    private readonly Dictionary<string, string> _files;

    private SampleSet(IReadOnlyList<SamplePair> pairs, Dictionary<string, string> files) => (Pairs, _files) = (pairs, files);

    public IReadOnlyList<SamplePair> Pairs { get; }

    public static SampleSet Read(string folder)
    {
        List<SamplePair> pairs = [];
        Dictionary<string, string> files = [];
        foreach (string truth in Directory.Exists(folder) ? Directory.GetFiles(folder, "*" + FarTruth).Order(StringComparer.Ordinal) : Enumerable.Empty<string>())
        {
            string name = Path.GetFileName(truth)[..^FarTruth.Length];
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(truth));
            JsonElement leg = document.RootElement.GetProperty("leg");
            pairs.Add(new(name, Address(name, "near"), Address(name, "far"), leg.GetProperty("nearPath").GetDouble(), leg.GetProperty("farPath").GetDouble()));
            foreach (string role in (string[])["near", "far"])
                files[$"{name}-{role}.jpg"] = Path.Combine(folder, $"{name}-{role}.jpg");
        }
        return new(pairs, files);
    }

    /// <summary>The photo's path, or null when there is none of this name.</summary>
    public string? PathOf(string file) => _files.GetValueOrDefault(file);

    private static string Address(string name, string role) => $"/api/samples/{name}-{role}.jpg";
}
