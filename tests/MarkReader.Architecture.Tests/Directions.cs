namespace MarkReader.Architecture.Tests;

/// <summary>The directions of dependency, as DEVELOPERS.md draws them: a project may use those below it, never one beside or above it.</summary>
internal static class Directions
{
    private static readonly string[][] s_layers =
    [
        ["Quantities"],
        ["Cards"],
        ["Cameras"],
        ["Imaging", "Alignment", "Metrology", "Drawing", "Rendering", "Practice"],
        ["Application"],
        ["CommandLine", "Service"],
    ];

    /// <summary>Libraries that belong to one place; the beginning of an assembly's or package's name, and the projects that may use it.</summary>
    private static readonly (string Library, string[] Projects)[] s_owned =
    [
        ("OpenCvSharp", ["Imaging"]),
        ("MetadataExtractor", ["Imaging"]),
        ("SkiaSharp", ["Drawing"]),
        ("ScottPlot", ["Drawing"]),
        ("MathNet", ["Cameras", "Imaging", "Alignment", "Metrology", "Practice"]),
        ("Dapper", ["Application"]),
        ("dbup", ["Application"]),
        ("Microsoft.Data.Sqlite", ["Application"]),
        ("SQLitePCL", ["Application"]),
        ("System.CommandLine", ["CommandLine"]),
        ("Microsoft.AspNetCore", ["Service"]),
        ("Serilog", ["Service"]),
        ("QRCoder", ["Service"]),
        ("SixLabors", []),
        ("BitMiracle", []),
    ];

    public static IReadOnlyList<string> Projects { get; } = [.. s_layers.SelectMany(layer => layer)];

    public static bool Allows(string user, string used)
    {
        // The mathematics of legs is about millimetres on any target: it knows no card. Nor does the practice machine.
        if (user is "Cameras" or "Alignment" or "Metrology" or "Practice" && used == "Cards")
            return false;
        return Layer(used) < Layer(user);
    }

    public static bool AllowsLibrary(string project, string library) =>
        s_owned.All(o => !library.StartsWith(o.Library, StringComparison.OrdinalIgnoreCase) || o.Projects.Contains(project));

    private static int Layer(string project)
    {
        int layer = Array.FindIndex(s_layers, names => names.Contains(project));
        return layer >= 0 ? layer : throw new ArgumentException($"{project} has no place among the directions; give it one.", nameof(project));
    }
}
