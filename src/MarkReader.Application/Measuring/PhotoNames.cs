namespace MarkReader.Application.Measuring;

/// <summary>By which endings photos are found in a folder.</summary>
internal static class PhotoNames
{
    public static IReadOnlyList<string> Endings { get; } = [".jpg", ".jpeg", ".png", ".webp"];

    public static bool IsPhoto(string file) => Endings.Contains(Path.GetExtension(file).ToLowerInvariant());
}
