using System.Security.Cryptography;
using System.Text.Json;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>Values that another library found in the fixture photos (tools/crosscheck); each file says how it was made.</summary>
internal sealed class CrossCheckFile(string name)
{
    private readonly JsonElement _root = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "fixtures", "crosscheck", name))).RootElement;

    /// <summary>The photos with their values, without those in which nothing was found.</summary>
    public IReadOnlyList<(string Photo, JsonElement Values)> Photos =>
        [.. _root.GetProperty("photos").EnumerateObject().Where(p => p.Value.ValueKind != JsonValueKind.Null).Select(p => (p.Name, p.Value))];

    /// <summary>Whether the values were taken from the photo as it is now.</summary>
    public bool IsOf(string photo) =>
        _root.GetProperty("made").GetProperty("sha256").GetProperty(photo).GetString() ==
        Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(Repository.Fixtures, photo))));

    public static CardPoint Card(JsonElement point) => new(point.GetProperty("u").GetDouble(), point.GetProperty("v").GetDouble());

    public static PixelPoint Pixel(JsonElement point) => new(point.GetProperty("x").GetDouble(), point.GetProperty("y").GetDouble());
}
