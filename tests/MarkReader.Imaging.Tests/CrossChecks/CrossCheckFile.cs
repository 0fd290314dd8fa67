using System.Security.Cryptography;
using System.Text.Json;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>Values that another library found in the fixture photos (tools/crosscheck); each file says how it was made.</summary>
/// <param name="folder">Where in the repository's fixtures the photos are.</param>
internal sealed class CrossCheckFile(string name, string folder = "photos")
{
    private readonly JsonElement _root = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "fixtures", "crosscheck", name))).RootElement;

    /// <summary>How the values were made, with those that belong to no single photo.</summary>
    public JsonElement Made => _root.GetProperty("made");

    /// <summary>The photos with their values, without those in which nothing was found.</summary>
    public IReadOnlyList<(string Photo, JsonElement Values)> Photos =>
        [.. _root.GetProperty("photos").EnumerateObject().Where(p => p.Value.ValueKind != JsonValueKind.Null).Select(p => (p.Name, p.Value))];

    /// <summary>Whether the values were taken from the photo as it is now.</summary>
    public bool IsOf(string photo) =>
        Made.GetProperty("sha256").GetProperty(photo).GetString() ==
        Convert.ToHexStringLower(SHA256.HashData(Bytes(photo)));

    public byte[] Bytes(string photo) => File.ReadAllBytes(Path.Combine(Repository.Root, "fixtures", folder, photo));

    public static CardPoint Card(JsonElement point) => new(point.GetProperty("u").GetDouble(), point.GetProperty("v").GetDouble());

    public static PixelPoint Pixel(JsonElement point) => new(point.GetProperty("x").GetDouble(), point.GetProperty("y").GetDouble());
}
