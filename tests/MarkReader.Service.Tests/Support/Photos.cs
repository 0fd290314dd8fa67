using System.Text.Json;

namespace MarkReader.Service.Tests.Support;

/// <summary>Photos of the fixtures, and files that are none.</summary>
internal static class Photos
{
    public static string Folder => Repository.Fixtures;

    public static string NearPath => Path.Combine(Folder, "leg1-first-near.jpg");

    public static string FarPath => Path.Combine(Folder, "leg1-first-far.jpg");

    public static byte[] Near { get; } = File.ReadAllBytes(NearPath);

    public static byte[] Far { get; } = File.ReadAllBytes(FarPath);

    /// <summary>The true aim point of the near and far photo, mm.</summary>
    public static (double U, double V) Aim { get; } = TrueAim("leg1-first-far");

    public static byte[] Named(string name) => File.ReadAllBytes(Path.Combine(Folder, name));

    /// <summary>The same picture in other bytes: whatever follows the end of a JPEG is ignored.</summary>
    public static byte[] Variant(byte[] photo, int number) => [.. photo, .. BitConverter.GetBytes(number)];

    private static (double U, double V) TrueAim(string name)
    {
        using JsonDocument truth = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, name + ".truth.json")));
        JsonElement aim = truth.RootElement.GetProperty("leg").GetProperty("aim");
        return (aim.GetProperty("u").GetDouble(), aim.GetProperty("v").GetDouble());
    }
}
