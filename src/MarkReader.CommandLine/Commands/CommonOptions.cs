using System.CommandLine;

namespace MarkReader.CommandLine.Commands;

/// <summary>Options that several commands share.</summary>
internal static class CommonOptions
{
    public const string JsonName = "--json";

    public static Option<bool> Json() => new(JsonName) { Description = "Print the result as JSON" };

    public static Option<string> DebugDir() => new("--debug-dir")
    {
        Description = "Write every stage's picture into this folder",
        HelpName = "FOLDER",
    };

    public static Option<string> Overlay(string what) => new("--overlay")
    {
        Description = $"Write the photo with {what} drawn on it: .png or .jpg; .svg is the drawing alone",
        HelpName = "FILE",
    };

    public static Option<string> Place(string name, string description) => new(name) { Description = description, HelpName = "X,Y" };

    public static Option<string> Stock() => new("--stock")
    {
        Description = "Washers and sheets you have: thicknesses in mm, each with a count if it is limited, like 0.5,0.8x3,1.0 (default: ISO 7089 washers)",
        HelpName = "LIST",
    };

    public static Option<string> Number(string name, string description, string helpName = "MM") => new(name) { Description = description, HelpName = helpName };
}
